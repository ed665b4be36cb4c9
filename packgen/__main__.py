"""Run packgen as `python -m packgen`."""

from packgen.cli import main

main()
