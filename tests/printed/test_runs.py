"""Print runs: one file for each paper and setting, in the order to print, in two halves for a one-sided printer."""

from packgen.page.desk import Fold, Laid
from packgen.page.marks import Line, Page, Stroke, Text
from packgen.page.type import Faces
from packgen.printed.runs import print_runs, with_numbers
from packgen.reading.models import Printer

A4 = (210.0, 297.0)
LONG, SHORT, ONE = "two-sided-long-edge", "two-sided-short-edge", "one-sided"


def page(number: int = 0) -> Page:
    return Page(*A4, (Line(0, number, 1, number, Stroke(0.2)),))


LAIDS = (
    Laid("model", "Model", (page(),), "card", week=1),
    Laid("fold-book", "Book", tuple(Page(148.5, 210.0, ()) for _ in range(4)), fold=Fold("stitched"), sides=SHORT),
    Laid("words", "Words", (page(1), page(2)), week=2),
    Laid("biography", "Life", (page(3), page(4), page(5)), sides=LONG, week=1),
)


def names(printer: str) -> list[str]:
    return [run.name for run in print_runs(LAIDS, A4, Printer(printer))]


def test_files_are_numbered_plain_first_then_books_then_card() -> None:
    assert sorted(names(LONG)) == names(LONG)
    assert {name.split("-", 1)[1] for name in names(LONG)[:2]} == {f"plain-{ONE}.pdf", f"plain-{LONG}.pdf"}
    assert names(LONG)[2:] == [f"3-fold-book-{SHORT}.pdf", f"4-card-{ONE}.pdf"]


def test_a_one_sided_printer_gets_fronts_and_backs_in_their_own_files() -> None:
    runs = {run.name.split("-", 1)[1]: run for run in print_runs(LAIDS, A4, Printer(ONE))}
    fronts, backs = runs["plain-fronts.pdf"], runs["plain-backs.pdf"]
    assert fronts.pages == (page(3), page(5)) and backs.pages[0] == page(4) and not backs.pages[1].marks
    assert (fronts.sides, fronts.flip, fronts.half) == (ONE, LONG, "fronts")
    assert fronts.sheets[0].first == 1 and fronts.sheets[0].last == 2
    assert all(run.sides == ONE for run in runs.values())


def test_sheets_know_their_pages_in_the_file() -> None:
    more = (*LAIDS, Laid("timeline", "Time", (page(6),), week=3))
    run = next(r for r in print_runs(more, A4, Printer()) if r.name.endswith(f"plain-{ONE}.pdf"))
    assert [(s.laid.kind, s.first, s.last) for s in run.sheets] == [("words", 1, 2), ("timeline", 3, 3)]
    assert run.pages == (page(1), page(2), page(6))


def test_sheets_stand_in_the_order_of_their_weeks() -> None:
    laids = [Laid("words", f"week {week}", (page(),), week=week) for week in (3, 1, 2)]
    (run,) = print_runs(laids, A4, Printer())
    assert [s.laid.title for s in run.sheets] == ["week 1", "week 2", "week 3"]


def test_paper_is_counted_in_sheets() -> None:
    counts = {run.name.split("-", 1)[1]: run.paper_sheets for run in print_runs(LAIDS, A4, Printer())}
    assert counts == {f"plain-{LONG}.pdf": 2, f"plain-{ONE}.pdf": 2, f"fold-book-{SHORT}.pdf": 1, f"card-{ONE}.pdf": 1}


def test_a_guide_is_one_file_by_its_own_name() -> None:
    laids = (Laid("guide", "Guide", (page(), page()), sides=LONG), Laid("record", "Record", (page(),), sides=LONG))
    assert [run.name for run in print_runs(laids, A4, Printer(), name="guide")] == ["guide.pdf"]
    assert [run.name for run in print_runs(laids, A4, Printer(ONE), name="guide")] == [
        "guide-fronts.pdf", "guide-backs.pdf",
    ]  # fmt: skip


def tagged(kind: str, week: int | None, **more: object) -> Laid:
    mark = Text(170.0, 12.0, "Juno", "text-bold", 3.0, role="sheet-number")
    return Laid(kind, kind, (Page(*A4, (mark,)), Page(*A4, (mark,))), week=week, **more)  # type: ignore[arg-type]


def test_sheets_are_numbered_in_the_order_they_are_handed_out_whatever_run_prints_them() -> None:
    laids = [tagged("model", 3, stock="card"), tagged("words", 2), Laid("fold-book", "Book", (page(),), week=1),
             tagged("telling", None), tagged("biography", 2)]  # fmt: skip
    made = with_numbers(laids, Faces(), "text-bold")
    assert [(laid.kind, laid.number) for laid in made] == [
        ("telling", 1), ("fold-book", None), ("words", 2), ("biography", 3), ("model", 4),
    ]  # fmt: skip
    shown = [[mark.text for mark in p.marks if isinstance(mark, Text)] for p in made[-1].pages]
    assert shown == [["Juno 4"], ["Juno 4"]]
