"""The commands as a parent types them: exit codes, help, what is said on which channel, and what is written."""

from __future__ import annotations

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import click
import pytest
from PIL import Image

from packgen import __version__, sheets
from packgen.cli import main
from packgen.cli import packgen as group
from packgen.folding import schemes
from packgen.nets.catalogue import catalogue as solids
from packgen.trials.catalogue import catalogue as challenge_models

ROOT = Path(__file__).resolve().parents[1]
COMMANDS = ("build", "check", "preview", "fold", "printer-page", "new", "catalogue", "schema")
STUDY = """
study: Oda Brann
kind: inventor
in_short: Invented, as everyone here.
born: 1834
died: 1902
life: {younger: She made lamps. She sold lamps., older: She made lamps and charted the tides of a whole coast.}
timeline: [{when: 1834, what: Oda is born}, {when: 1851, what: Her first lamp}, {when: 1902, what: Oda dies}]
words: [{word: ebb, means: the tide going out}]
"""


def run(capsys: pytest.CaptureFixture[str], *args: object) -> tuple[int, str, str]:
    """The exit code of a command, and what it said on both channels."""
    with pytest.raises(SystemExit) as stop:
        main([str(arg) for arg in args])
    said = capsys.readouterr()
    assert isinstance(stop.value.code, int)
    return stop.value.code, said.out, said.err


@pytest.fixture
def study(tmp_path: Path) -> Path:
    path = tmp_path / "study.yaml"
    path.write_text(STUDY, encoding="utf-8")
    return path


# Help


@pytest.mark.parametrize("command", COMMANDS)
def test_help_says_what_a_command_does_and_what_each_option_means(
    capsys: pytest.CaptureFixture[str], command: str
) -> None:
    code, out, err = run(capsys, command, "--help")
    assert code == 0 and not err
    assert out.startswith(f"Usage: packgen {command}")
    flat = " ".join(out.split())
    for param in group.commands[command].params:
        if isinstance(param, click.Option):
            assert param.help and param.help.split(".")[0] in flat, param.name


def test_the_first_page_of_help_lists_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "--help")
    assert code == 0
    assert all(f"\n  {command} " in out for command in COMMANDS)
    assert "packgen new my-study" in out


def test_the_version_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "--version")[1].strip() == f"packgen, version {__version__}"


@pytest.mark.parametrize(
    ("args", "word"),
    [
        (("biuld",), 'Did you mean "build"?'),
        (("build",), "STUDY.yaml"),
        (("build", "x.yaml", "--papre", "A4"), "--paper"),
        (("new", "somewhere"), "--who"),
        (("fold", "a.pdf", "--scheme", "slit"), "--out"),
    ],
)
def test_a_slip_in_the_command_is_a_usage_error_with_a_hint(
    capsys: pytest.CaptureFixture[str], args: tuple[str, ...], word: str
) -> None:
    code, out, err = run(capsys, *args)
    assert code == 2 and word in err and not out


# build, check, preview


def test_build_lists_every_file_and_says_nothing_else(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    code, out, err = run(capsys, "build", study, "--out", tmp_path / "out")
    assert code == 0 and not err
    listed = {Path(line.split("  (")[0]).resolve() for line in out.splitlines()}
    files = {path.resolve() for path in (tmp_path / "out").rglob("*") if path.is_file()}
    assert listed == {path for path in files if path.name != "packgen.json"}
    assert any("two-sided-long-edge" in line and "plain" in line for line in out.splitlines())


@pytest.mark.parametrize("pack", ["younger", "older", "upper", "parent"])
def test_one_pack_can_be_asked_for(capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path, pack: str) -> None:
    assert run(capsys, "build", study, "--pack", pack, "--out", tmp_path / "out")[0] == 0
    assert {p.name for p in (tmp_path / "out" / "oda-brann").iterdir() if p.is_dir()} == {pack}


def test_a_childs_pack_can_be_asked_for_by_name(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    family = tmp_path / "family.yaml"
    family.write_text("family: F\nchildren: [{name: Juno, age: 11}, {name: Bram, age: 8}]\n", encoding="utf-8")
    for name in ("Juno", "juno"):
        out = tmp_path / name / "out"
        args = ("--family", family, "--pack", name, "--only", "words", "--out", out)
        assert run(capsys, "build", study, *args)[0] == 0
        assert [p.name for p in (out / "oda-brann").iterdir() if p.is_dir()] == ["juno"]


def test_only_some_sheets_and_another_paper_can_be_asked_for(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    args = ("--only", "timeline", "--only", "words", "--paper", "letter", "--out", tmp_path / "out")
    assert run(capsys, "build", study, *args)[0] == 0
    listing = json.loads((tmp_path / "out" / "oda-brann" / "packgen.json").read_text(encoding="utf-8"))
    assert listing["paper"] == "Letter"
    assert {sheet["kind"] for file in listing["files"] for sheet in file["sheets"]} == {"timeline", "words"}


def test_several_processes_make_the_same_bytes(capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path) -> None:
    family = tmp_path / "family.yaml"
    names = "".join(f"  - {{name: Child{k}, age: {5 + k}}}\n" for k in range(5))
    family.write_text(f"family: F\nchildren:\n{names}", encoding="utf-8")
    found = []
    for jobs in (1, 2):
        out = tmp_path / f"out{jobs}"
        assert run(capsys, "build", study, "--family", family, "--jobs", jobs, "--only", "words", "--out", out)[0] == 0
        found.append({p.relative_to(out): p.read_bytes() for p in out.rglob("*") if p.is_file()})
    assert found[0] == found[1]


def test_check_tells_warnings_and_exits_0_and_faults_and_exits_2(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    assert run(capsys, "check", study) == (0, "No faults.\n", "")
    study.write_text(STUDY + "fatcs: []\n", encoding="utf-8")
    code, out, err = run(capsys, "check", study)
    assert code == 2 and not err
    assert "fault: " in out and "`facts`" in out and out.splitlines()[-1] == "1 fault, 0 warnings."
    Image.new("RGB", (200, 150), "teal").save(tmp_path / "small.png")
    works = "works: [{title: A, image: small.png}]\n"
    study.write_text(STUDY + works, encoding="utf-8")
    code, out, _ = run(capsys, "check", study)
    assert code == 0 and "warning: " in out and "coarse" in out
    assert not list(tmp_path.glob("out*"))


def test_warnings_of_a_build_go_to_the_other_channel(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    Image.new("RGB", (200, 150), "teal").save(tmp_path / "small.png")
    study.write_text(STUDY + "works: [{title: A, image: small.png}]\n", encoding="utf-8")
    code, out, err = run(capsys, "build", study, "--only", "picture-study", "--out", tmp_path / "out")
    assert code == 0 and "warning: " in err and "warning: " not in out


def test_a_study_that_is_not_there_is_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    for command in ("build", "check", "preview"):
        code, out, err = run(capsys, command, tmp_path / "nowhere.yaml")
        assert code == 2 and "nowhere.yaml" in out + err


def test_preview_writes_pictures_of_the_pages(capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path) -> None:
    code, out, _ = run(capsys, "preview", study, "--only", "words", "--out", tmp_path / "out")
    assert code == 0
    paths = [Path(line) for line in out.splitlines()]
    assert len(paths) == 2
    for path in paths:
        with Image.open(path) as image:
            assert image.format == "PNG" and image.width >= 400
    assert not list((tmp_path / "out").rglob("*.pdf"))


def test_an_output_that_would_land_in_the_study_is_refused(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    home = tmp_path / "oda-brann"
    home.mkdir()
    (home / "study.yaml").write_text(STUDY, encoding="utf-8")
    code, _, err = run(capsys, "build", home / "study.yaml", "--out", tmp_path)
    assert code == 2 and "among the study's own files" in err
    assert [p.name for p in home.iterdir()] == ["study.yaml"]


def test_an_output_folder_that_cannot_be_written_is_told_with_exit_1(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    (tmp_path / "file").write_bytes(b"")
    code, out, err = run(capsys, "build", study, "--out", tmp_path / "file")
    assert code == 1 and not out and "cannot be" in err and "Traceback" not in err


def test_a_build_is_quiet_in_a_pipe_and_shows_its_progress_on_a_terminal(study: Path, tmp_path: Path) -> None:
    command = [sys.executable, "-m", "packgen", "build", str(study), "--only", "words", "--out", str(tmp_path / "out")]
    env = {**os.environ, "PYTHONPATH": str(ROOT), "TERM": "xterm"}
    piped = subprocess.run(command, capture_output=True, text=True, env=env, check=True)
    assert piped.stderr == ""
    ours, theirs = pty.openpty()
    shown = subprocess.run(command, stdout=subprocess.PIPE, stderr=theirs, text=True, env=env, check=True)
    os.close(theirs)
    said = b""
    while True:
        try:
            part = os.read(ours, 4096)
        except OSError:
            break
        if not part:
            break
        said += part
    os.close(ours)
    assert b"%" in said and shown.stdout == piped.stdout


def test_a_build_that_would_make_nothing_is_told_and_the_old_packs_stay(
    capsys: pytest.CaptureFixture[str], study: Path, tmp_path: Path
) -> None:
    run(capsys, "build", study, "--only", "words", "--out", tmp_path / "out")
    before = {path: path.read_bytes() for path in (tmp_path / "out").rglob("*") if path.is_file()}
    code, _, err = run(capsys, "build", study, "--only", "model", "--out", tmp_path / "out")
    assert code == 2 and "nothing to print" in err
    assert {path: path.read_bytes() for path in (tmp_path / "out").rglob("*") if path.is_file()} == before


# new


@pytest.mark.parametrize("kind", ["artist", "inventor", "both"])
@pytest.mark.parametrize("who", ["Oda Brann", 'O\'Hara & <Sons> "Ltd": {a} #1', "田中一村", "Čapek"])
def test_a_new_study_builds_at_once_without_a_warning(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, kind: str, who: str
) -> None:
    code, out, err = run(capsys, "new", tmp_path / "my", "--who", who, "--kind", kind)
    assert (code, err) == (0, "")
    assert len(out.splitlines()) == 3 and all(Path(line).is_file() for line in out.splitlines())
    args = (tmp_path / "my" / "study.yaml", "--family", tmp_path / "my" / "family.yaml")
    assert run(capsys, "check", *args) == (0, "No faults.\n", "")
    lines = (tmp_path / "my" / "study.yaml").read_text().splitlines()
    for name in ("study.yaml", "family.yaml"):
        told = (tmp_path / "my" / name).read_text().splitlines()
        for place, line in enumerate(told):  # a comment stands over or beside every key at the margin
            if line[:1].isalpha() and line.partition(":")[0] not in ("study", "in_short", "family", "died", "facts"):
                assert "#" in line or told[place - 1].startswith("#") or told[place - 1][:1].isalpha(), line
    assert sum(line.strip().startswith("#") for line in lines) >= 30


def test_new_writes_over_nothing(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    (tmp_path / "study.yaml").write_text("mine", encoding="utf-8")
    code, _, err = run(capsys, "new", tmp_path, "--who", "Oda Brann")
    assert code == 2 and "already there" in err
    assert (tmp_path / "study.yaml").read_text() == "mine" and not (tmp_path / "family.yaml").exists()


def test_new_wants_a_name(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert run(capsys, "new", tmp_path / "my", "--who", "  ")[0] == 2
    assert not (tmp_path / "my").exists()


# catalogue, schema, fold, printer-page


def test_the_catalogue_lists_everything_found_by_its_place(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "catalogue")
    assert code == 0
    headed = {line.strip() for line in out.splitlines() if line.startswith("  ") and not line.startswith("   ")}
    assert headed == {
        *sheets.kinds(), *schemes(), *(entry.name for entry in solids()), *(entry.key for entry in challenge_models()),
    }  # fmt: skip
    folders = {"sheets": sheets.kinds(), "folding/schemes": schemes(), "nets/solids": [e.name for e in solids()],
               "trials/models": [e.key for e in challenge_models()]}  # fmt: skip
    for folder, names in folders.items():
        files = {
            p.stem.replace("_", "-") for p in (ROOT / "packgen" / folder).glob("*.py") if not p.stem.startswith("_")
        }
        assert files == set(names), folder
    for kind in sheets.kinds():
        for option in sheets.about(kind).options:
            assert f"{option.name}:" in out and option.about


def test_schemas_are_those_that_ship(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    code, out, _ = run(capsys, "schema", "--out", tmp_path / "schema")
    assert code == 0
    for line in out.splitlines():
        path = Path(line)
        assert path.read_bytes() == (ROOT / "packgen" / "schema" / path.name).read_bytes()
    assert len(out.splitlines()) == len(list((ROOT / "packgen" / "schema").glob("*.json"))) >= 3


def test_a_printer_page_can_be_folded_like_any_pdf(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    page = tmp_path / "page.pdf"
    assert run(capsys, "printer-page", "--paper", "Letter", "--out", page) == (0, f"{page}\n", "")
    code, out, _ = run(capsys, "fold", page, "--scheme", "half", "--paper", "letter", "--out", tmp_path / "book.pdf")
    assert code == 0 and str(tmp_path / "book.pdf") in out and (tmp_path / "book.pdf").is_file()


@pytest.mark.parametrize(
    ("args", "code", "word"),
    [
        (("--scheme", "stiched"), 2, "stitched"),
        (("--scheme", "slit", "--caliper", "thick"), 2, "--caliper"),
        (("--scheme", "slit", "--sides", "both"), 2, "--sides"),
        (("--scheme", "slit", "--paper", "A3"), 2, "A4 or Letter"),
    ],
)
def test_fold_tells_what_is_wrong(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, args: tuple[str, ...], code: int, word: str
) -> None:
    run(capsys, "printer-page", "--out", tmp_path / "page.pdf")
    got, _, err = run(capsys, "fold", tmp_path / "page.pdf", *args, "--out", tmp_path / "book.pdf")
    assert got == code and word in err and not (tmp_path / "book.pdf").exists()


def test_fold_exits_1_if_its_file_cannot_be_written(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    run(capsys, "printer-page", "--out", tmp_path / "page.pdf")
    code, _, err = run(capsys, "fold", tmp_path / "page.pdf", "--scheme", "half", "--out", tmp_path / "no" / "b.pdf")
    assert code == 1 and "no such folder" in err
    assert run(capsys, "printer-page", "--out", tmp_path / "no" / "p.pdf")[0] == 1
