"""The floor of a build: its pages' strings, lines, paths and pictures, drawn by reportlab alone.

`floor.py record STUDY FAMILY FOLDER` builds and writes down what is drawn; `floor.py draw FOLDER` draws it, and imports
nothing of packgen.
"""

from __future__ import annotations

import marshal
import sys
from pathlib import Path
from typing import Any

PT = 72 / 25.4


def record(study: Path, family: Path, folder: Path) -> None:
    """Write down every file's marks, in points, and keep the pictures they show."""
    import shutil

    from packgen import making
    from packgen.making import make
    from packgen.workshop import Order, open_workshop

    (folder / "pictures").mkdir(parents=True)
    shop = open_workshop(Order(study, family), folder / "pictures")
    files: list[Any] = []
    written = making.pdf_bytes

    def noted(document: Any) -> bytes:
        files.append([(page.width * PT, page.height * PT, _marks(page.marks)) for page in document.pages])
        return written(document)

    making.pdf_bytes = noted
    runs: tuple[Any, ...] = ()
    for pack in shop.packs:
        runs += make(shop, pack, runs, lambda path, data: None, lambda words: None).runs
    faces = {run[0] for pages in files for page in pages for run in _strings(page[2])}
    for face in faces:
        shutil.copy(_file_of(face), folder / f"{face}.ttf")
    (folder / "marks").write_bytes(marshal.dumps(files))


def _file_of(face: str) -> str:
    from packgen.page.type import font

    return str(font(face).face.filename)


def _strings(marks: list[Any]) -> list[Any]:
    found = []
    for mark in marks:
        if mark[0] == "text":
            found.append((mark[1],))
        elif mark[0] == "group":
            found += _strings(mark[3])
    return found


def _marks(marks: Any) -> list[Any]:
    from packgen.page.marks import Group, Line, Path_, Picture, Text

    out: list[Any] = []
    for mark in marks:
        match mark:
            case Text():
                out.append(("text", mark.face, mark.size * PT, mark.x * PT, mark.y * PT, mark.text, mark.angle))
            case Line():
                out.append(("line", mark.stroke.width * PT, *(v * PT for v in (mark.x1, mark.y1, mark.x2, mark.y2))))
            case Path_():
                steps = [(s[0], *(float(v) * PT for v in s[1:])) for s in mark.steps]
                out.append(("path", steps, mark.stroke is not None, mark.fill is not None))
            case Picture():
                box = [v * PT for v in (mark.x, mark.y, mark.width, mark.height)]
                out.append(("picture", mark.source.name, *box))
            case Group():
                a, b, c, d, e, f = mark.matrix
                out.append(("group", (a, b, c, d, e * PT, f * PT), bool(mark.clip), _marks(mark.marks)))
    return out


def draw(folder: Path) -> None:
    """Draw every file from what was written down."""
    from reportlab import rl_config
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

    rl_config.useA85 = 0
    for path in folder.glob("*.ttf"):
        pdfmetrics.registerFont(TTFont(path.stem, str(path)))
    (folder / "drawn").mkdir(exist_ok=True)
    files = marshal.loads((folder / "marks").read_bytes())
    for number, pages in enumerate(files):
        canvas = Canvas(str(folder / "drawn" / f"{number}.pdf"), invariant=1, pageCompression=1)
        for width, height, marks in pages:
            canvas.setPageSize((width, height))
            _draw(canvas, marks, folder / "pictures")
            canvas.showPage()
        canvas.save()


def _draw(canvas: Any, marks: list[Any], pictures: Path) -> None:
    for mark in marks:
        if mark[0] == "text":
            _, face, size, x, y, text, angle = mark
            canvas.setFont(face, size)
            if angle:
                canvas.saveState()
                canvas.translate(x, y)
                canvas.rotate(angle)
                canvas.drawString(0, 0, text)
                canvas.restoreState()
            else:
                canvas.drawString(x, y, text)
        elif mark[0] == "line":
            canvas.setLineWidth(mark[1])
            canvas.line(*mark[2:])
        elif mark[0] == "path":
            _path(canvas, *mark[1:])
        elif mark[0] == "picture":
            canvas.drawImage(str(pictures / mark[1]), *mark[2:])
        else:
            canvas.saveState()
            canvas.transform(*mark[1])
            _draw(canvas, mark[3], pictures)
            canvas.restoreState()


def _path(canvas: Any, steps: list[Any], stroke: bool, fill: bool) -> None:
    shape = canvas.beginPath()
    draws = {"m": shape.moveTo, "l": shape.lineTo, "c": shape.curveTo, "z": shape.close}
    for kind, *numbers in steps:
        draws[kind](*numbers)
    canvas.drawPath(shape, stroke=int(stroke), fill=int(fill), fillMode=0)


if __name__ == "__main__":
    if sys.argv[1] == "record":
        record(*(Path(word).resolve() for word in sys.argv[2:5]))
    else:
        draw(Path(sys.argv[2]))
