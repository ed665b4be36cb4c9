"""Invented families for the tests that read finished packs: other papers, printers and children than the example's."""

from __future__ import annotations

LETTER_GREY = """
family: Sorrel
paper: Letter
printer: {sides: two-sided-long-edge, margin: 6 mm, colour: false}
children:
  - {name: Ada, age: 14, pack: upper, letters: cursive}
  - {name: Bo, age: 10, pack: older, left handed: true}
  - {name: Cy, age: 7, pack: younger, letters: cursive}
  - {name: Di, age: 4, pack: first}
place: {name: Saltmere, lat: 50.4, lon: -4.9}
"""

ONE_SIDED_WIDE_MARGIN = """
family: Tansy
paper: A4
printer: {sides: one-sided, margin: 12 mm, colour: true}
children:
  - {name: Eve, age: 11, pack: older}
  - {name: Fin, age: 7, pack: younger}
  - {name: Gus, age: 5, pack: first}
term: {starts: 2027-02-03, weeks: 9, on: Wednesday, minutes: 10}
"""

SHORT_EDGE = """
family: Yarrow
paper: Letter
units: customary
printer: {sides: two-sided-short-edge, margin: 1/4 in, colour: true, duplex shift: [-1 mm, 1.5 mm]}
children:
  - {name: Hal, age: 13, pack: upper, wider spacing: true}
  - {name: Ida, age: 9, pack: older, larger type: true, book: octavo}
  - {name: Kit, age: 8, pack: younger, larger type: true, book: concertina}
"""
