"""What the fuzz targets are fed with: files that are nearly right, spoilt a little or a lot."""

from __future__ import annotations

import io
import random
from functools import cache
from pathlib import Path

from hypothesis import strategies as st
from PIL import Image

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "examples"

SMALL = """\
study: Isaure Quenby
kind: both
in_short: Lamp-maker who measured the tides.
born: 1834
died: 1902
place: {name: Saltmere, lat: 50.4, lon: -4.9}
book:
  title: The Lamp on the Quay
  chapters:
    - A cold harbour
    - {title: The first lamp, pages: 11-19, works: [harbour]}
life: {younger: Isaure lived by the sea., older: Isaure Quenby was born in 1834 above a shop.}
timeline:
  - {when: c. 1851, what: Makes her first lamp, short: First lamp}
  - {when: 1862-1865, what: Charts the tides of the whole coast}
works:
  - id: harbour
    title: The Harbour at Dusk
    when: 1861
    size: 420 x 310 mm
    image: harbour.png
    link: https://example.org/harbour
    look: [Where does the light come from?]
obstacles: [Her lamps cracked in the cold]
facts: [She kept bees.]
words: [{word: ebb, means: the tide going out}]
challenges:
  - title: A wheel the stream can turn
    brief: Build a wheel that lifts a paper clip on a thread.
    model: wheel
    given: {wheel radius: 60 mm, axle radius: 4 mm}
    change: number of blades
    measure: {what: time to lift, unit: s}
    trials: 4
    materials: [{item: card, amount: 2, unit: sheet}, {item: thread, amount: 1.2, unit: m, shared: true}]
    caution: [water]
models:
  - {title: The lamp house, solid: prism, given: {sides: 8, across: 5.2 m, height: 6.1 m}, scale: auto}
"""

FAMILY = """\
family: Ferrar
paper: A4
printer: {sides: two-sided-long-edge, margin: 6 mm, colour: false, duplex shift: [0.5 mm, -1 mm]}
children:
  - {name: Juno, age: 11, pack: older}
  - {name: Bram, age: 8, pack: younger, leave_out: [enlarging-grid], extra: {design-draft: 3}}
  - {name: Wilf, age: 4, pack: first}
term: {starts: 2027-02-03, weeks: 9, on: Wednesday, away: [2027-03-17], minutes: 10}
goals:
  - {id: make-1, text: Plans and makes a thing to a brief, met_by: [challenge, model]}
results:
  - {challenge: A wheel the stream can turn, child: Juno, trials: {"6": [7.1, 7.4, "-"]}}
"""

# Text that has broken readers of such files before, here and elsewhere.
SPOILS = (
    "", " ", "\t", "\n", "- ", ": ", "{", "}", "[", "]", "[]", "{}", "&a ", "*a", "<<: *a", "!!python/object:os.system",
    "| ", "> ", "'", '"', "#", "---\n", "...\n", "%YAML 9.9\n", "? ", "\x00", "\x07", "\u200f", "\ufeff", "\u2028", "é",
    "日本", "שלום", "\U0001f600", "e\u0301", "{{ 7 * 7 }}", "{% for x in y %}", "<b>", "</para>", "<script>", "../",
    "/",
    "file:///etc/passwd", "javascript:alert(1)", "C:\\", "~", "null", "yes", "010", "1e999", "-1e999", "1e-320", "nan",
    ".inf", "0", "-1", "99999999999999999999", "1" * 400, "0 mm", "-5 mm", "1e30 m", "1/0 in", "3 1/4 in",
    "8 cm x 0 cm",
    "44 BC", "0000", "186X", "../1900", "1900/..", "2027-02-30", "32 May 1900", "c. ?", "999999-01-01", "a" * 3000,
    "wort " * 600, "[" * 30 + "]" * 30, "1:1000000", "1000:1", "fit", "true", "90 deg", "sphere", "wheel", "pendulum",
    "launched-ball", "paper-beam", "prism", "cone", "tower", "mesh", "wound-strip", "first", "upper", "parent",
)  # fmt: skip


@st.composite
def spoilt_text(draw: st.DrawFn, texts: tuple[str, ...]) -> str:
    """One of the texts after up to eight edits: letters cut, doubled, moved, put in; values and lines changed."""
    text = draw(st.sampled_from(texts))
    for _ in range(draw(st.integers(0, 8))):
        text = _edited(draw, text)
    return text


def _edited(draw: st.DrawFn, text: str) -> str:
    kind = draw(st.sampled_from(("put in", "cut", "double", "value", "value", "value", "line", "indent", "swap")))
    spoil = draw(st.sampled_from(SPOILS) | st.text(max_size=12))
    if kind in ("put in", "cut", "double"):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 40)))
        middle = {"put in": spoil + text[start:end], "cut": "", "double": text[start:end] * 2}[kind]
        return text[:start] + middle + text[end:]
    lines = text.split("\n")
    at = draw(st.integers(0, len(lines) - 1))
    if kind == "value":
        colons = [k for k, letter in enumerate(lines[at]) if letter == ":"]
        if colons:
            colon = draw(st.sampled_from(colons))
            stops = [k for k in range(colon + 1, len(lines[at])) if lines[at][k] in ",}]"] or [len(lines[at])]
            lines[at] = f"{lines[at][: colon + 1]} {spoil}{lines[at][draw(st.sampled_from(stops)) :]}"
    elif kind == "line":
        lines[at : at + 1] = draw(st.sampled_from(([], [lines[at]] * 2, [lines[at], spoil])))
    elif kind == "indent":
        lines[at] = " " * draw(st.integers(0, 9)) + lines[at].lstrip()
    else:
        other = draw(st.integers(0, len(lines) - 1))
        lines[at], lines[other] = lines[other], lines[at]
    return "\n".join(lines)


@st.composite
def spoilt_bytes(draw: st.DrawFn, files: tuple[bytes, ...], most: int = 12) -> bytes:
    """One of the files after some edits of its bytes, most of them near its head, where the sizes stand."""
    data = bytearray(draw(st.sampled_from(files)))
    for _ in range(draw(st.integers(0, most))):
        end = min(len(data), 200) if draw(st.booleans()) else len(data)
        at = draw(st.integers(0, max(0, end - 1)))
        kind = draw(st.sampled_from(("set", "set", "word", "cut", "end", "put in")))
        if kind == "set" and data:
            data[at] = draw(st.integers(0, 255))
        elif kind == "word":
            data[at : at + 4] = draw(st.sampled_from((b"\xff" * 4, b"\0" * 4, b"\x7f\xff\xff\xff", b"\0\0\xff\xff")))
        elif kind == "cut":
            del data[at : at + draw(st.integers(1, 60))]
        elif kind == "end":
            del data[at:]
        else:
            data[at:at] = draw(st.binary(max_size=20))
    return bytes(data)


@cache
def picture_files() -> tuple[bytes, ...]:
    """Small pictures of every format that is taken, plain and odd: palettes, 16 bits, CMYK, frames, orientation."""
    noise = Image.frombytes("RGB", (40, 30), random.Random(7).randbytes(3600))
    kinds: list[tuple[Image.Image, str, dict[str, object]]] = [
        (noise, "PNG", {}), (noise.convert("P"), "PNG", {"transparency": 3}), (noise.convert("I;16"), "PNG", {}),
        (noise.convert("RGBA"), "PNG", {}), (noise, "JPEG", {}), (noise.convert("CMYK"), "JPEG", {}),
        (noise, "JPEG", {"progressive": True}), (noise.convert("L"), "JPEG", {}), (noise, "GIF", {}),
        (noise, "GIF", {"save_all": True, "append_images": [noise.rotate(90)]}), (noise, "BMP", {}),
        (noise, "TIFF", {}), (noise, "TIFF", {"compression": "tiff_lzw"}), (noise.convert("F"), "TIFF", {}),
        (noise, "WEBP", {}), (noise, "WEBP", {"lossless": True}),
    ]  # fmt: skip
    turned = Image.Exif()
    turned[0x0112] = 6
    kinds.append((noise, "JPEG", {"exif": turned.tobytes()}))
    files = []
    for image, kind, how in kinds:
        out = io.BytesIO()
        image.save(out, kind, **how)
        files.append(out.getvalue())
    return tuple(files)


SVGS = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 80"><rect x="5" y="5" width="40" height="30" rx="4" '
    'fill="#c40"/><circle cx="60" cy="40" r="20" style="fill:none;stroke:blue;stroke-width:2"/><path d="M10 10 L20 20 '
    'C30 30 40 30 50 20 S70 0 80 10 Q85 20 90 10 T95 5 A5 5 0 0 1 90 15 Z" transform="rotate(10 5 5) scale(2)"/></svg>',
    '<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY ns "http://x">]><svg width="4cm" height="30mm"><style>.a{fill:red} '
    '#b{stroke:rgb(10%,20%,30%)}</style><defs><g id="g"><polygon class="a" points="0,0 10,0 10,10"/></g></defs>'
    '<use href="#g" x="3"/><g opacity=".5" transform="matrix(1 0 0 1 2 3)"><ellipse id="b" cx="9" cy="9" rx="4" '
    'ry="2"/><line x1="0" y1="0" x2="9" y2="9" stroke="black"/><polyline points="1 1 2 2 3 1"/></g></svg>',
)  # fmt: skip

MESHES = (
    "v 0 0 0\nv 40 0 0\nv 40 40 0\nv 0 40 0\nv 20 20 50\nf 1 4 3 2\nf 1 2 5\nf 2 3 5\nf 3 4 5\nf 4 1 5\n",
    "# a box\no box\nv 0 0 0\nv 30 0 0\nv 30 20 0\nv 0 20 0\nv 0 0 25\nv 30 0 25\nv 30 20 25\nv 0 20 25\ng floor\n"
    "f 1 4 3 2\ng roof\nf 5 6 7 8\ng wall\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n",
    "OFF\n4 4 6\n0 0 0\n30 0 0\n0 30 0\n0 0 30\n3 0 2 1\n3 0 1 3\n3 1 2 3\n3 2 0 3\n",
)


@cache
def pdf_files() -> tuple[bytes, ...]:
    """Small PDFs to be folded: of several pages and sizes, turned, with a form drawn in them."""
    from pypdf import PdfWriter
    from reportlab.pdfgen.canvas import Canvas

    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(200, 300), invariant=1, pageCompression=0)
    for page in range(5):
        canvas.drawString(20, 20, f"Page {page + 1}")
        canvas.linkURL("https://example.org", (0, 0, 50, 50))
        canvas.showPage()
    canvas.save()
    writer = PdfWriter()
    writer.add_blank_page(100, 100).rotate(90)
    writer.add_blank_page(300, 100)
    other = io.BytesIO()
    writer.write(other)
    return out.getvalue(), other.getvalue()
