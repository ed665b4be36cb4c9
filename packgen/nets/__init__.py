"""Solids unfolded into nets with tabs, laid out on sheets at a scale: pure geometry, lengths in mm.

solid = build("prism", {"sides": 8, "across": 5200.0, "height": 6100.0})
sheets = lay_out(solid, 190.0, 277.0, "auto")
"""

from packgen.nets.catalogue import Entry, build, catalogue, entry
from packgen.nets.errors import NetError
from packgen.nets.given import Parameter
from packgen.nets.holes import Drilling
from packgen.nets.layout import NetSheet, NetSheets, Size, lay_out
from packgen.nets.net import MOUNTAIN, PRINTED_SIDE, VALLEY, Net, Part, Stage
from packgen.nets.solid import Solid
from packgen.nets.unfold import unfold

__all__ = [
    "MOUNTAIN",
    "PRINTED_SIDE",
    "VALLEY",
    "Drilling",
    "Entry",
    "Net",
    "NetError",
    "NetSheet",
    "NetSheets",
    "Parameter",
    "Part",
    "Size",
    "Solid",
    "Stage",
    "build",
    "catalogue",
    "entry",
    "lay_out",
    "unfold",
]
