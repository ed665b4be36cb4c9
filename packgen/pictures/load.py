"""Pictures checked, and made ready for paper: upright, right colours, no more pixels than the print needs.

`check_picture` is for reading a study; a `Store` makes the files that go into a PDF, each once for its content and
options, so that a picture used on ten sheets is decoded once and embedded once in a file.
"""

from __future__ import annotations

import hashlib
import math
import os
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from PIL import Image, ImageChops

from packgen.faults import NOWHERE, Fault, Place, warning
from packgen.pictures.cellar import Cellar
from packgen.pictures.colours import Colour, palette_of
from packgen.pictures.jpeg import picture_only
from packgen.pictures.opening import PictureError, PictureInfo, has_own_profile, info_of, opened, sniff, upright
from packgen.pictures.svg import read_svg
from packgen.pictures.svg_pixels import drawn
from packgen.units import MM_PER_INCH

__all__ = ["GOOD_DPI", "PictureError", "PictureInfo", "PreparedPicture", "Store", "aspect", "check_picture",
           "crop_for", "picture_info"]  # fmt: skip

Crop = tuple[float, float, float, float]  # left, top, width, height as fractions of the upright picture
WHOLE: Crop = (0.0, 0.0, 1.0, 1.0)
GOOD_DPI = 150  # below this a print at reading distance looks coarse (common practice, no source)
_TINY_PX = 64
_QUALITY = 88
_SLACK = 1.25  # a JPEG up to this much finer than asked is not worth coding again
_FLAT_COLOURS = 256
_PLAIN = 10  # a picture whose greys lie nearer together than this is plain, and is left so
_MIDDLE = 0.55  # where the middle tone of a faint copy lies
_FLAT_GREYS = 12  # a drawing's paper and ink cover nearly all of it


@dataclass(frozen=True, slots=True)
class PreparedPicture:
    """A file that goes onto paper as it is: RGB or grey, JPEG or PNG, upright.

    `dpi` is the resolution of the original at the size asked for (of a vector picture: of the drawn pixels);
    `good_width` and `good_height` are the largest size in mm at which it still has GOOD_DPI.
    """

    source: Path
    width_px: int
    height_px: int
    dpi: float
    good_width: float
    good_height: float

    @property
    def coarse(self) -> bool:
        """Whether the original has too few pixels for the size asked for."""
        return self.dpi < GOOD_DPI - 1

    def warning(self, name: str, at: Place = NOWHERE) -> Fault | None:
        """The warning a coarse picture deserves, or None."""
        if not self.coarse:
            return None
        return warning(
            at,
            f"{name} will look coarse: it has {self.dpi:.0f} pixels an inch at the size it is printed",
            f"Its largest good size is {self.good_width:.0f} × {self.good_height:.0f} mm. A larger copy of the "
            "picture prints sharper.",
        )


@dataclass(frozen=True, slots=True)
class _Wish:
    width: float
    height: float
    dpi: float
    grey: bool
    crop: Crop
    lighten: float
    fade: Crop | None


def picture_info(path: Path) -> PictureInfo:
    """What a picture file is, without decoding its pixels. Raises PictureError."""
    if sniff(path) == "SVG":
        vector = read_svg(path)
        return PictureInfo(max(1, round(vector.width)), max(1, round(vector.height)), "SVG")
    with opened(path) as image:
        return info_of(image)


def aspect(path: Path) -> float:
    """Width over height of the upright picture. Raises PictureError."""
    if sniff(path) == "SVG":
        vector = read_svg(path)
        return vector.width / vector.height
    return picture_info(path).aspect


def check_picture(path: Path, at: Place) -> tuple[PictureInfo | None, tuple[Fault, ...]]:
    """What the picture is, decoded once to see that it is whole, and what is wrong with it (faults and warnings)."""
    try:
        info = picture_info(path)
        if info.vector:
            faults = [warning(at, f"{path.name}: {message}", "") for message in read_svg(path).left_out]
            return info, tuple(faults)
        with opened(path) as image:
            image.draft(image.mode, (1, 1))  # a JPEG shows that it is whole at an eighth of its size too
            image.load()
    except PictureError as error:
        return None, (Fault(at, error.message, error.instead),)
    said: list[Fault] = []
    if info.frames > 1 and info.format != "JPEG":
        said.append(warning(at, f"{path.name} has {info.frames} pictures in it; the first is used"))
    if min(info.width_px, info.height_px) < _TINY_PX:
        size = f"{info.width_px} × {info.height_px} pixels"
        said.append(warning(at, f"{path.name} is only {size} and will show little", "Use a larger copy of it."))
    return info, tuple(said)


def crop_for(picture_aspect: float, box_aspect: float, focus: tuple[float, float] = (0.5, 0.5)) -> Crop:
    """The largest crop of that picture with the box's aspect (width over height), as near to `focus` as it can lie."""
    width, height = min(1.0, box_aspect / picture_aspect), min(1.0, picture_aspect / box_aspect)
    left = min(max(focus[0] - width / 2, 0.0), 1.0 - width)
    top = min(max(focus[1] - height / 2, 0.0), 1.0 - height)
    return left, top, width, height


def _as_it_is(thing: Any) -> Any:
    return thing


class Store:
    """A folder of prepared pictures. Every result is made once for its content and options; bytes are always the same.

    The caller owns the folder and removes it when the files that use the pictures are written. Without a folder
    pictures are only measured: sizes and warnings are those of the real ones, but there are no files. What takes long
    is kept in a cellar, if there is one, for the next build.
    """

    def __init__(self, folder: Path | None, cellar: Cellar | None = None) -> None:
        self.folder = folder
        self._cellar = cellar or Cellar(None)
        self._kept: dict[Hashable, Any] = {}
        self._decoded: tuple[Hashable, Image.Image] | None = None

    @property
    def measuring(self) -> bool:
        """True if pictures are only measured: what is drawn from them may be left out."""
        return self.folder is None

    def content(self, path: Path) -> str:
        """A name for what is in the file, the same wherever it lies. Raises PictureError."""
        sniff(path)
        try:
            state = path.stat()
            return _digest(path, state.st_size, state.st_mtime_ns)
        except OSError as error:
            raise PictureError(f"{path.name} cannot be read ({error.strerror})", "Look whether it is there.") from None

    def keep(self, path: Path, key: Hashable, make: Callable[[], Any]) -> Any:
        """What `make` gives for that file's content and key, made once."""
        whole = (self.content(path), key)
        if whole not in self._kept:
            self._kept[whole] = make()
        return self._kept[whole]

    def keep_long(self, path: Path, key: Hashable, make: Callable[[], Any], pack: Callable[[Any], object] = _as_it_is,
                  unpack: Callable[[Any], Any] = _as_it_is) -> Any:  # fmt: skip
        """Like `keep`, and from build to build. `pack` makes tuples, numbers and texts of it, `unpack` the thing."""

        def made() -> Any:
            of = (self.content(path), key)
            known = self._cellar.value(*of)
            if known is not None:
                return unpack(known)
            thing = make()
            self._cellar.keep_value(pack(thing), *of)
            return thing

        return self.keep(path, key, made)

    def prepared(
        self, path: Path, width: float, height: float, *, dpi: float = 300, grey: bool = False,
        crop: Crop | None = None, lighten: float = 0.0, fade: Crop | None = None,
    ) -> PreparedPicture:  # fmt: skip
        """The picture, or that part of it, for a rectangle of width x height mm, at no more than `dpi`.

        `lighten` 0..1 brings it nearer to white; outside `fade` (a part of what is shown) it fades to white.
        The caller keeps the aspect: nothing is cut away but by `crop`. Raises PictureError if it cannot be used.
        """
        if width <= 0 or height <= 0:
            raise ValueError("a picture needs a width and a height in mm")
        wish = _Wish(round(width, 3), round(height, 3), dpi, grey, crop or WHOLE, lighten, fade)
        made: PreparedPicture = self.keep(path, wish, lambda: self._prepare(path, wish))
        return made

    def pixels(self, path: Path, least: int, *, grey: bool = False) -> Image.Image:
        """The upright picture as RGB or L, its long side `least` px or as near below as the original has."""
        whole = self._upright(path, _fit(picture_info(path), least))
        if max(whole.size) > least:
            scale = least / max(whole.size)
            size = (max(1, round(whole.width * scale)), max(1, round(whole.height * scale)))
            whole = whole.resize(size, Image.Resampling.LANCZOS)
        return whole.convert("L" if grey else "RGB")

    def average_colour(self, path: Path, crop: Crop | None = None) -> Colour:
        """The mean colour of the picture or that part of it, red, green, blue of 0..1."""
        part = _cut(self.pixels(path, 256), crop or WHOLE)
        red, green, blue = part.resize((1, 1), Image.Resampling.BOX).getpixel((0, 0))  # type: ignore[misc]
        return red / 255, green / 255, blue / 255

    def palette(self, path: Path, count: int) -> tuple[Colour, ...]:
        """The picture's main colours, at most that many, the one that covers most first."""
        found: tuple[Colour, ...] = self.keep(
            path, ("palette", count), lambda: palette_of(self.pixels(path, 256), count)
        )
        return found

    def _prepare(self, path: Path, wish: _Wish) -> PreparedPicture:
        vector = sniff(path) == "SVG"
        wanted = (wish.width / MM_PER_INCH * wish.dpi, wish.height / MM_PER_INCH * wish.dpi)
        whole_wanted = (max(1, round(wanted[0] / wish.crop[2])), max(1, round(wanted[1] / wish.crop[3])))
        info = picture_info(path)
        have = whole_wanted if vector else (info.width_px, info.height_px)
        across = (max(1.0, have[0] * wish.crop[2]), max(1.0, have[1] * wish.crop[3]))
        dpi = min(across[0] / wish.width, across[1] / wish.height) * MM_PER_INCH
        dpi = max(dpi, GOOD_DPI) if vector else dpi
        scale = min(1.0, max(wanted[0] / across[0], wanted[1] / across[1]))
        name = hashlib.sha256(repr((self.content(path), wish)).encode()).hexdigest()[:32]
        least = (max(1, round(have[0] * scale)), max(1, round(have[1] * scale)))
        made = None
        if self.folder is None:
            made = Path(name), round(least[0] * wish.crop[2]), round(least[1] * wish.crop[3])
        elif not vector and scale * _SLACK >= 1:
            made = self._passed_through(path, info, wish, name)
        if made is None:
            made = self._fetched(name)
        if made is None:
            made = self._drawn(path, wish, least, name)
            self._cellar.keep_data(made[0].read_bytes(), name)
            self._cellar.keep_value((made[0].suffix, *made[1:]), name)
        good = GOOD_DPI / MM_PER_INCH
        return PreparedPicture(*made, dpi, across[0] / good, across[1] / good)

    def _passed_through(self, path: Path, info: PictureInfo, wish: _Wish, name: str) -> tuple[Path, int, int] | None:
        """The JPEG's own coded picture, if nothing has to be done to it."""
        if info.format != "JPEG" or info.orientation != 1 or wish.crop != WHOLE or wish.lighten or wish.fade:
            return None
        with opened(path) as image:
            fits = image.mode == "L" or (image.mode == "RGB" and not wish.grey and not has_own_profile(image))
            image.draft(image.mode, (1, 1))
            image.load()  # a truncated one must not get into the PDF unseen
        data = picture_only(path.read_bytes()) if fits else None
        if data is None:
            return None
        return self._saved(name + ".jpg", lambda place: place.write_bytes(data)), info.width_px, info.height_px

    def _drawn(self, path: Path, wish: _Wish, least: tuple[int, int], name: str) -> tuple[Path, int, int]:
        whole = self._upright(path, least)
        part = _cut(whole, wish.crop)
        size = (max(1, round(least[0] * wish.crop[2])), max(1, round(least[1] * wish.crop[3])))
        flat = _is_flat(part)
        if size[0] < part.width or size[1] < part.height:
            part = part.resize(size, Image.Resampling.LANCZOS)
        if wish.grey:
            part = part.convert("L")
        if wish.grey and wish.lighten:
            part = part.point(_evened(whole))
        if wish.lighten:
            part = part.point(lambda value: round(value + (255 - value) * wish.lighten))
        if wish.fade:
            part, flat = faded(part, wish.fade), False
        if flat:
            target = self._saved(name + ".png", lambda place: part.save(place, "PNG"))
        else:
            target = self._saved(name + ".jpg", lambda place: part.save(place, "JPEG", quality=_QUALITY))
        return target, part.width, part.height

    def _fetched(self, name: str) -> tuple[Path, int, int] | None:
        """The picture as it was prepared in an earlier build, if it was."""
        facts, data = self._cellar.value(name), self._cellar.data(name)
        if facts is None or data is None:
            return None
        return self._saved(name + facts[0], lambda place: place.write_bytes(data)), facts[1], facts[2]

    def _saved(self, name: str, save: Callable[[Path], Any]) -> Path:
        """A file of the folder, written whole; helpers of one build may write the same one at once."""
        assert self.folder is not None, "only measured pictures have no folder"
        target = self.folder / name
        beside = target.with_suffix(f".{os.getpid()}.part")
        try:
            save(beside)
            os.replace(beside, target)
        except OSError as error:
            raise _not_written(self.folder, error) from None
        return target

    def _upright(self, path: Path, least: tuple[int, int]) -> Image.Image:
        """The whole picture upright, at least that large if it has the pixels; the last one decoded is kept."""
        vector = sniff(path) == "SVG"
        key = (self.content(path), least if vector or picture_info(path).format == "JPEG" else None)
        if self._decoded is None or self._decoded[0] != key:
            if vector:
                self._decoded = key, drawn(read_svg(path), *least)
            else:
                with opened(path) as image:
                    self._decoded = key, upright(image, least)
        return self._decoded[1]


@lru_cache(maxsize=512)
def _digest(path: Path, size: int, changed_ns: int) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _not_written(folder: Path, error: OSError) -> PictureError:
    return PictureError(f"no picture can be written to {folder} ({error.strerror})", "Is the disk full?")


def _fit(info: PictureInfo, least: int) -> tuple[int, int]:
    scale = least / max(info.width_px, info.height_px)
    scale = scale if info.vector else min(1.0, scale)
    return max(1, round(info.width_px * scale)), max(1, round(info.height_px * scale))


def _cut(image: Image.Image, crop: Crop) -> Image.Image:
    if crop == WHOLE:
        return image
    left, top = round(crop[0] * image.width), round(crop[1] * image.height)
    right, low = round((crop[0] + crop[2]) * image.width), round((crop[1] + crop[3]) * image.height)
    left, top = min(left, image.width - 1), min(top, image.height - 1)
    return image.crop((left, top, max(left + 1, min(right, image.width)), max(top + 1, min(low, image.height))))


def _evened(image: Image.Image) -> list[int]:
    """A curve of 256 greys that spreads a picture's tones from black to white, its middle one to a middle grey.

    A faint copy of a dark picture would be one grey without it.
    """
    small = image.convert("L")
    small.thumbnail((256, 256))
    histogram = small.histogram()
    low, middle, high = (_at_share(histogram, share) for share in (0.01, 0.5, 0.99))
    if high - low < _PLAIN:
        return list(range(256))
    tone = min(0.9, max(0.05, (middle - low) / (high - low)))
    bend = min(1.4, max(0.45, math.log(_MIDDLE) / math.log(tone)))
    return [round(255 * min(1.0, max(0.0, (v - low) / (high - low))) ** bend) for v in range(256)]


def _at_share(histogram: list[int], share: float) -> int:
    """The level below which that share of all pixels lies."""
    wanted, seen = share * sum(histogram), 0
    for level, count in enumerate(histogram):
        seen += count
        if seen >= wanted:
            return level
    return 255


def faded(image: Image.Image, kept: Crop) -> Image.Image:
    """The picture on white, itself within the part kept, fading away from there to nothing at its edge."""
    across = _ramp(image.width, kept[0], kept[0] + kept[2])
    down = _ramp(image.height, kept[1], kept[1] + kept[3])
    shown = ImageChops.multiply(
        Image.frombytes("L", (image.width, 1), across).resize(image.size),
        Image.frombytes("L", (1, image.height), down).resize(image.size),
    )
    white = Image.new(image.mode, image.size, "white")
    white.paste(image, mask=shown)
    return white


def _ramp(length: int, start: float, end: float) -> bytes:
    """Bytes along a side: 255 from start to end (fractions), falling softly to 0 at both its ends."""
    places = ((i + 0.5) / length for i in range(length))
    out = []
    for at in places:
        t = at / start if at < start else (1 - at) / (1 - end) if at > end else 1.0
        out.append(round(255 * t * t * (3 - 2 * t)))
    return bytes(out)


def _is_flat(image: Image.Image) -> bool:
    """Whether the picture is of few plain colours, which JPEG would smear and PNG keeps small."""
    if image.mode == "L":
        commonest = sorted(image.histogram(), reverse=True)[:_FLAT_GREYS]
        return sum(commonest) > 0.8 * image.width * image.height
    small = image
    if max(image.size) > 512:
        scale = 512 / max(image.size)
        size = (max(1, round(image.width * scale)), max(1, round(image.height * scale)))
        small = image.resize(size, Image.Resampling.NEAREST)
    return small.getcolors(_FLAT_COLOURS) is not None
