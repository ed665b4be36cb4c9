"""Careless and hostile input: a message with its place and what to write instead, exit code 2, nothing written."""

from __future__ import annotations

import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image

from packgen.cli import main

HEAD = "study: Oda Brann\nkind: artist\nin_short: Invented, as everyone here.\n"


def told(capsys: pytest.CaptureFixture[str], *args: object) -> tuple[int, str, str]:
    """The exit code of a command, and what it said on both channels."""
    with pytest.raises(SystemExit) as stop:
        main([str(arg) for arg in args])
    said = capsys.readouterr()
    assert isinstance(stop.value.code, int)
    return stop.value.code, said.out, said.err


def work(image: str) -> str:
    return HEAD + f"works:\n  - {{id: w, title: A work, image: {image}}}\n"


def png_of(width: int, height: int, body: bytes = b"") -> bytes:
    """A PNG whose head claims that size (ISO/IEC 15948); without a body it is a head alone."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(body)) + chunk(b"IEND", b"")


REFUSED = {
    # name: (study, where the fault stands, a word of the message)
    "an empty study": ("", "1:1", "empty"),
    "only a comment": ("# nothing yet\n", "", "empty"),
    "no name": ("kind: artist\nin_short: X.\n", "", "study"),
    "a picture that is not there": (work("pictures/none.png"), "5:35", "no file"),
    "a picture outside the folder": (work("../../../etc/hostname"), "5:35", "outside"),
    "a picture at an absolute path": (work("/etc/hostname"), "5:35", ""),
    "a picture that is a link to outside": (work("link.png"), "5:35", "outside"),
    "a picture that is no picture": (work("words.png"), "5:35", "words.png"),
    "a picture that breaks off": (work("half.png"), "5:35", "half.png"),
    "a picture of enormous size": (work("bomb.png"), "5:35", "bomb.png"),
    "a picture that is a folder": (work("folder.png"), "5:35", "folder.png"),
    "Hebrew": (HEAD.replace("Oda Brann", "שרה"), "1:8", "right to left"),
    "Devanagari": (HEAD + "facts: [सूरज]\n", "4:9", "Devanagari"),
    "a tab for spaces": (HEAD + "book:\n\ttitle: The Lamp\n", "5:1", "tab"),
    "a misspelt key": (HEAD + "timelin: []\n", "4:1", "timeline"),
    "an unknown solid": (HEAD + "models:\n  - {title: M, solid: cubiod, given: {edge: 3 cm}}\n", "5:23", "cuboid"),
    "an unknown model": (HEAD + "challenges:\n  - {title: C, brief: B., model: pendulun}\n", "5:34", "pendulum"),
    "an unquoted colon": (HEAD + "note: this: that\n", "4:", ""),
}  # fmt: skip


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A study's folder with all sorts of pictures in it."""
    folder = tmp_path / "home"
    folder.mkdir()
    outside = tmp_path / "outside.png"
    Image.new("RGB", (300, 200), "teal").save(outside)
    (folder / "link.png").symlink_to(outside)
    (folder / "words.png").write_text("These are words.", encoding="utf-8")
    Image.new("RGB", (300, 200), "teal").save(folder / "good.png")
    whole = (folder / "good.png").read_bytes()
    (folder / "half.png").write_bytes(whole[: len(whole) // 2])
    (folder / "bomb.png").write_bytes(png_of(60_000, 60_000))
    (folder / "folder.png").mkdir()
    return folder


@pytest.mark.parametrize("name", REFUSED)
@pytest.mark.parametrize("command", ["build", "check"])
def test_a_bad_study_is_refused_with_its_place_and_what_to_write(
    capsys: pytest.CaptureFixture[str], home: Path, tmp_path: Path, name: str, command: str
) -> None:
    text, place, word = REFUSED[name]
    study = home / "study.yaml"
    study.write_text(text, encoding="utf-8")
    out = ["--out", tmp_path / "out"] if command == "build" else []
    code, said, err = told(capsys, command, study, *out)
    assert code == 2
    message = err if command == "build" else said
    assert f"study.yaml:{place}" in message and word in message and "fault: " in message
    assert "\n    " in message, "it says nothing of what to write instead"
    assert "Traceback" not in said + err
    assert not (tmp_path / "out").exists()


def test_a_bomb_is_refused_without_being_opened(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """60 000 x 60 000 pixels of 3 bytes would take 10.8 GB of memory."""
    import resource

    (home / "study.yaml").write_text(work("bomb.png"), encoding="utf-8")
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    code, _, err = told(capsys, "build", home / "study.yaml", "--out", home / "out")
    assert code == 2 and "pixels" in err
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 200_000  # KiB


def test_all_faults_are_told_in_one_go_in_the_order_of_the_file(
    capsys: pytest.CaptureFixture[str], home: Path, tmp_path: Path
) -> None:
    lines = [
        "study: Oda Brann",
        "kind: artist",
        "in_short: Invented.",
        "born: a while ago",
        "timeline:",
        "  - {when: soon, what: Something}",
        "works:",
        "  - {title: One, image: none.png}",
        "  - {title: Two, image: words.png}",
        "facts: [שלום]",
        "wrods: []",
    ]
    (home / "study.yaml").write_text("\n".join(lines) + "\n", encoding="utf-8")
    (home / "family.yaml").write_text("family: F\npaper: A5\nchildren: [{name: Juno, age: eleven}]\n", encoding="utf-8")
    code, _, err = told(
        capsys, "build", home / "study.yaml", "--family", home / "family.yaml", "--out", tmp_path / "out"
    )
    assert code == 2
    places = [line for line in err.splitlines() if ": fault: " in line]
    numbers = [int(line.split("study.yaml:")[1].split(":")[0]) for line in places if "study.yaml" in line]
    assert numbers == [4, 6, 8, 9, 10, 11]
    assert sum("family.yaml" in line for line in places) == 2
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("args", "word"),
    [
        (("--pack", "yonger"), '"younger"'),
        (("--only", "biografy"), '"biography"'),
        (("--paper", "A5"), "A4 or Letter"),
        (("--family", "nowhere.yaml"), "nowhere.yaml"),
    ],
)
def test_a_slip_on_the_command_line_is_answered_with_what_there_is(
    capsys: pytest.CaptureFixture[str], home: Path, tmp_path: Path, args: tuple[str, str], word: str
) -> None:
    (home / "study.yaml").write_text(HEAD, encoding="utf-8")
    code, said, err = told(capsys, "build", home / "study.yaml", *args, "--out", tmp_path / "out")
    assert code == 2 and word in err and not said
    assert not (tmp_path / "out").exists()


def test_an_unknown_fold_scheme_is_answered_with_the_nearest(
    capsys: pytest.CaptureFixture[str], home: Path, tmp_path: Path
) -> None:
    (home / "study.yaml").write_text(HEAD, encoding="utf-8")
    (home / "family.yaml").write_text("family: F\nchildren: [{name: Juno, age: 11, book: octavio}]\n", encoding="utf-8")
    code, _, err = told(
        capsys, "build", home / "study.yaml", "--family", home / "family.yaml", "--out", tmp_path / "out"
    )
    assert code == 2 and "octavo" in err and "family.yaml:2:" in err
    assert not (tmp_path / "out").exists()


def built(capsys: pytest.CaptureFixture[str], home: Path, text: str, *args: object) -> tuple[str, list[Path]]:
    """A study that must build: what was told on the way, and the files."""
    (home / "study.yaml").write_text(text, encoding="utf-8")
    code, _, err = told(capsys, "build", home / "study.yaml", "--out", home / "out", *args)
    assert code == 0, err
    return err, sorted((home / "out").rglob("*.pdf"), key=lambda path: path.stat().st_mtime_ns)


EVENTS = "".join(
    f"  - {{when: {1600 + k}, what: Event number {k} with a few more words to it, short: Event {k}}}\n"
    for k in range(200)
)
LONG = "Wilhelmina Bartholomea Featherstonehaugh-Cholmondeley-Marjor"


def texts_of(files: list[Path]) -> str:
    from paper import PaperFile

    return "".join(page.text for path in files for page in PaperFile(path).pages)


def test_the_smallest_study_builds(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    err, files = built(capsys, home, HEAD)
    assert not err and len(files) >= 3


def test_a_study_of_one_event_builds(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    _, files = built(capsys, home, HEAD + "timeline: [{when: 44 BC, what: The only event}]\n", "--only", "timeline")
    text = texts_of(files)
    assert text.count("Theonlyevent") >= 2 and "44BC" in text


def test_two_hundred_events_all_find_their_place(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    (home / "packs").mkdir()
    recipe = "pack: older\nlevel: older\nsheets: [{sheet: timeline, events: all}]\n"
    (home / "packs" / "older.yaml").write_text(recipe, encoding="utf-8")
    (home / "family.yaml").write_text("family: F\nchildren: [{name: Juno, age: 11}]\n", encoding="utf-8")
    _, files = built(capsys, home, HEAD + "timeline:\n" + EVENTS, "--family", home / "family.yaml", "--pack", "Juno")
    text = texts_of(files)
    assert all(f"Eventnumber{k}withafewmorewordstoit" in text for k in range(200))


def test_a_name_of_sixty_letters_is_set_whole(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    assert len(LONG) == 60
    (home / "family.yaml").write_text(
        f"family: F\nchildren:\n  - {{name: {LONG}, age: 11}}\n  - {{name: {LONG[::-1].title()}, age: 4}}\n",
        encoding="utf-8",
    )
    _, files = built(
        capsys, home, HEAD.replace("Oda Brann", LONG), "--family", home / "family.yaml", "--only", "biography",
        "--only", "fold-book",
    )  # fmt: skip
    assert LONG.replace(" ", "") in texts_of(files)
    assert len({path.parent.name for path in files}) == 2


def test_names_in_other_scripts_are_set_in_a_face_that_has_them(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    for name in ("陈小月", "田中一村", "Nguyễn Thị Ánh", "Ελένη Μαρή", "Анна Лисицына"):
        _, files = built(capsys, home, HEAD.replace("Oda Brann", f'"{name}"'), "--only", "biography")
        shown = texts_of(files)
        assert name.replace(" ", "") in shown, name


def test_text_of_a_study_is_never_markup_or_template(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    evil = [
        "{{ 7 * 7 }}",
        "{% raw %}x",
        "<b>bold</b>",
        "<img src='file:///etc/hostname'/>",
        "$(touch /tmp/owned)",
        "%s %d",
    ]
    quoted = "\n".join(f'  - "{text}"' for text in evil)
    words = "\n".join(f'  - {{word: "w{k}", means: "{text}"}}' for k, text in enumerate(evil))
    _, files = built(capsys, home, f"{HEAD}facts:\n{quoted}\nwords:\n{words}\n", "--only", "words")
    shown = texts_of(files)
    for text in evil:
        assert "".join(text.split()) in shown, text
