"""packgen: one study file becomes printable packs for every child, and a guide for the parent."""

__version__ = "0.1.0"
