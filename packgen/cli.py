"""The command line: reads arguments, calls one function, speaks. Nothing else in packgen prints or ends the program."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn, TypeVar

import click

from packgen import __version__
from packgen.faults import Fault, InputFaults, PackgenError, Severity, nearest

if TYPE_CHECKING:
    from packgen.folding.slots import Sides

F = TypeVar("F", bound=Callable[..., Any])

_PAPERS = {"a4": "A4", "letter": "Letter", "us letter": "Letter", "us-letter": "Letter"}


class _Papers(click.ParamType[str]):
    """A paper by name, in any case."""

    name = "A4|Letter"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The paper's proper name; a usage error (exit code 2) for any other."""
        found = _PAPERS.get(str(value).strip().lower())
        if not found:
            self.fail(f'"{value}" is no paper packgen knows. Write A4 or Letter.', param, ctx)
        return found


class _Commands(click.Group):
    """A group that suggests the nearest command for a misspelt one."""

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        """The command, or a usage error that names the nearest."""
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError as error:
            near = nearest(args[0], self.list_commands(ctx))
            hint = f' Did you mean "{near}"?' if near else ""
            raise click.UsageError(error.message + hint, ctx) from error


def _study_options(function: F) -> F:
    """The arguments shared by the commands that read a study."""
    options = (
        click.argument("study", type=click.Path(path_type=Path), metavar="STUDY.yaml"),
        click.option("--family", type=click.Path(path_type=Path), metavar="FAMILY.yaml",
                     help="The family file: children, printer, paper, term. Without it, a younger and an older pack."),
        click.option("--pack", "packs", multiple=True, metavar="NAME",
                     help="Only this pack: a child's name, or the name of a recipe. May be given again."),
        click.option("--only", multiple=True, metavar="SHEET",
                     help="Only this kind of sheet (see `packgen catalogue`). May be given again."),
        click.option("--paper", type=_Papers(), help="The paper, instead of the family file's."),
        click.option("--jobs", type=click.IntRange(1), metavar="N",
                     help="How many processes share the packs. Left out: all cores, if there are many children."),
    )  # fmt: skip
    for option in reversed(options):
        function = option(function)
    return function


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="packgen")
def packgen() -> None:
    """Make printable packs for every child of a family, and a guide for the parent, from one study file.

    A study file tells of one artist or inventor: the book you read, the works you look at, the challenges you build. A
    family file tells who the children are, what the printer can do and when the term runs. Start with:

    \b
      packgen new my-study --who "Name of the artist or inventor"
      packgen build my-study/study.yaml
    """


@packgen.command()
@_study_options
@click.option("--out", type=click.Path(path_type=Path), default=Path("out"), show_default=True, metavar="DIR",
              help="Where to write. A folder named after the study is made in it.")  # fmt: skip
def build(study: Path, family: Path | None, packs: tuple[str, ...], only: tuple[str, ...], paper: str | None,
          jobs: int | None, out: Path) -> None:  # fmt: skip
    """Build every pack of the family: a folder of PDFs for each child, and the parent's guide.

    Each file is one print run: print it as it is, at 100 %, on the paper its name says.
    """
    from packgen import build as work

    order = work.Order(study, family, packs, only, paper)
    with _Progress() as progress:
        made = work.build(order, out, progress.show, jobs)
    _tell(made.faults)
    for file in made.files:
        click.echo(f"{made.folder / file.path}  ({_count(file.pages, 'page')}, {file.stock}, {file.sides})")
    for other in made.others:
        click.echo(f"{made.folder / other}")


@packgen.command()
@_study_options
def check(study: Path, family: Path | None, packs: tuple[str, ...], only: tuple[str, ...], paper: str | None,
          jobs: int | None) -> None:  # fmt: skip
    """Read everything and report every fault and warning, with file, line and what to write instead.

    Builds nothing. Exit code 0 if the study builds (warnings are told), 2 if there are faults.
    """
    from packgen import checking as work

    faults = work.check(work.Order(study, family, packs, only, paper), jobs)
    _tell(faults, err=False)
    wrong = sum(f.severity is Severity.FAULT for f in faults)
    told = len(faults) - wrong
    click.echo(f"{_count(wrong, 'fault')}, {_count(told, 'warning')}." if faults else "No faults.")
    if wrong:
        sys.exit(InputFaults.exit_code)


@packgen.command()
@_study_options
@click.option("--out", type=click.Path(path_type=Path), default=Path("out"), show_default=True, metavar="DIR",
              help="Where to write the pictures.")  # fmt: skip
def preview(study: Path, family: Path | None, packs: tuple[str, ...], only: tuple[str, ...], paper: str | None,
            jobs: int | None, out: Path) -> None:  # fmt: skip
    """Write the same pages as PNG contact sheets, to look them over before printing."""
    from packgen import build as work

    order = work.Order(study, family, packs, only, paper)
    with _Progress() as progress:
        made = work.preview(order, out, progress.show, jobs)
    _tell(made.faults)
    for path in made.paths:
        click.echo(str(path))


@packgen.command()
@click.argument("pages", type=click.Path(path_type=Path), metavar="PAGES.pdf")
@click.option("--scheme", required=True, help="The fold scheme, see `packgen catalogue`.")
@click.option("--paper", type=_Papers(), default="A4", show_default=True, help="The paper to print on.")
@click.option("--sides", type=click.Choice(["one-sided", "two-sided-long-edge", "two-sided-short-edge"]),
              help="What the printer does (RFC 8011). Left out: the setting that suits the scheme.")  # fmt: skip
@click.option("--caliper", default="0.10 mm", show_default=True, metavar="MM", help="How thick one sheet is.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="FILE", help="The PDF to write.")
def fold(pages: Path, scheme: str, paper: str, sides: Sides | None, caliper: str, out: Path) -> None:
    """Impose the pages of any PDF for a fold: print, fold, and it reads in order."""
    from packgen import fold_command

    for line in fold_command.run(pages, scheme, paper, sides, caliper, out):
        click.echo(line)


@packgen.command("printer-page")
@click.option("--paper", type=_Papers(), default="A4", show_default=True, help="The paper to print on.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="FILE", help="The PDF to write.")
def printer_page(paper: str, out: Path) -> None:
    """Make one duplex page that shows a printer's scale, margins and front-to-back shift."""
    from packgen import fold_command

    fold_command.printer_page(paper, out)
    click.echo(str(out))


@packgen.command()
@click.argument("folder", type=click.Path(path_type=Path), metavar="DIR")
@click.option("--who", required=True, help="The artist or inventor the study is about.")
@click.option("--kind", type=click.Choice(["artist", "inventor", "both"]), default="artist", show_default=True,
              help="What the study mostly looks at.")  # fmt: skip
def new(folder: Path, who: str, kind: str) -> None:
    """Write a commented study to fill in, which already builds."""
    from packgen import starter

    for path in starter.new_study(folder, who, kind):
        click.echo(str(path))


@packgen.command()
def catalogue() -> None:
    """List every sheet, fold scheme, solid and challenge model, with its options."""
    from packgen import catalogue as listing

    click.echo_via_pager(listing.text()) if sys.stdout.isatty() else click.echo(listing.text())


@packgen.command()
@click.option("--out", type=click.Path(path_type=Path), default=Path("schema"), show_default=True, metavar="DIR",
              help="The folder to write to.")  # fmt: skip
def schema(out: Path) -> None:
    """Write the JSON Schemas of the study, family and recipe files, for an editor to complete and check them."""
    from packgen.reading.schema import write_schemas

    for path in write_schemas(out):
        click.echo(str(path))


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"


def _tell(faults: Sequence[Fault], *, err: bool = True) -> None:
    for fault in faults:
        click.echo(str(fault), err=err)


class _Progress:
    """A progress bar on a terminal; nothing in a pipe."""

    def __init__(self) -> None:
        self._bar: Any = None

    def __enter__(self) -> _Progress:
        return self

    def __exit__(self, *trouble: object) -> None:
        if self._bar:
            self._bar.__exit__(*trouble)

    def show(self, words: str, done: int, of: int) -> None:
        """Tell that `done` of `of` steps are finished, and what comes next."""
        if not sys.stderr.isatty():
            return
        if self._bar is None:
            self._bar = click.progressbar(length=max(1, of), file=sys.stderr, item_show_func=lambda item: item or "",
                                          width=30)  # fmt: skip
            self._bar.__enter__()
        self._bar.update(done - self._bar.pos, words)


def main(args: Sequence[str] | None = None) -> NoReturn:
    """Run the command line and end the program with its exit code."""
    try:
        packgen.main(list(args) if args is not None else None, prog_name="packgen", standalone_mode=False)
    except click.ClickException as error:
        error.show()
        sys.exit(2)
    except click.Abort:
        click.echo("Stopped.", err=True)
        sys.exit(1)
    except PackgenError as error:
        click.echo(str(error), err=True)
        sys.exit(error.exit_code)
    sys.exit(0)
