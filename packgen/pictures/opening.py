"""Opening a picture file that may be anything: what it is, how large it is, and its pixels upright in right colours.

Nothing is decoded before its size is known and allowed. Only the formats named here are ever handed to the decoder, so
that a file cannot start an outside program (as PostScript would) by carrying a friendly name.
"""

from __future__ import annotations

import io
import struct
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageCms, ImageFile, UnidentifiedImageError

from packgen.faults import WorkFailed

MAX_PIXELS = 40_000_000
MAX_BYTES = 200_000_000
FORMATS = ("JPEG", "PNG", "TIFF", "WEBP", "GIF", "BMP", "AVIF")
TAKEN = "PNG, JPEG, TIFF, WebP, GIF or SVG"
_ORIENTATION = 0x0112
_TURNED = (5, 6, 7, 8)  # EXIF orientations that swap width and height
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT, 3: Image.Transpose.ROTATE_180, 4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE, 6: Image.Transpose.ROTATE_270, 7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}  # fmt: skip
# What a damaged file has been seen to raise from the decoders, besides OSError.
_DAMAGE = (OSError, SyntaxError, ValueError, TypeError, EOFError, IndexError, KeyError, OverflowError, struct.error,
           ZeroDivisionError)  # fmt: skip


class PictureError(WorkFailed):
    """A picture that cannot be used: `message` says why, `instead` what to do about it."""

    def __init__(self, message: str, instead: str) -> None:
        self.message, self.instead = message, instead
        super().__init__(f"{message}. {instead}")


@dataclass(frozen=True, slots=True)
class PictureInfo:
    """What a picture file is: its upright size in px (for a vector picture, its own units), format and frames."""

    width_px: int
    height_px: int
    format: str
    frames: int = 1
    orientation: int = 1

    @property
    def vector(self) -> bool:
        """Whether the picture is made of shapes rather than pixels."""
        return self.format == "SVG"

    @property
    def aspect(self) -> float:
        """Width over height."""
        return self.width_px / self.height_px


def sniff(path: Path) -> str:
    """What the first bytes say the file is: "SVG", "" for something to try, else raises PictureError.

    Raises PictureError for a file that is missing, no file, empty, too large, or of a known sort that is not taken.
    """
    try:
        if not path.is_file():
            what = "is a folder" if path.is_dir() else "is not there"
            raise PictureError(f"{path.name} {what}", "Give the name of a picture file in the study's folder.")
        if path.stat().st_size > MAX_BYTES:
            raise PictureError(f"{path.name} is larger than {MAX_BYTES // 1_000_000} MB", "Save it smaller.")
        with path.open("rb") as file:
            head = file.read(1024)
    except OSError as error:
        raise PictureError(f"{path.name} cannot be read ({error.strerror})", "Check that you may open it.") from None
    if not head:
        raise PictureError(f"{path.name} is empty", "Save or copy the picture again.")
    refused = _refused(head)
    if refused:
        raise PictureError(f"{path.name} is {refused}", f"Save it as {TAKEN} and name that file.")
    text = head.lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    return "SVG" if text.startswith((b"<?xml", b"<svg", b"<!doctype svg", b"<!--")) else ""


def _refused(head: bytes) -> str:
    """The sort of a file that parents do have but that is not taken, or ""."""
    if head[4:8] == b"ftyp" and head[8:12] in (b"heic", b"heix", b"hevc", b"mif1", b"heim"):
        return "a HEIC photo, as some phones make"
    starts = ((b"%PDF", "a PDF"), (b"%!PS", "a PostScript file"), (b"8BPS", "a layered file of a paint program"),
              (b"\x1f\x8b", "a compressed file"), (b"PK\x03\x04", "an archive or office document"))  # fmt: skip
    return next((what for start, what in starts if head.startswith(start)), "")


@contextmanager
def opened(path: Path) -> Iterator[ImageFile.ImageFile]:
    """The picture's first frame, its header read and its size allowed, its pixels not yet decoded.

    Raises PictureError for whatever goes wrong inside the block too, so that a truncated file is told in words.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # the limit here is stricter than the library's warning
            with Image.open(path, formats=FORMATS) as image:
                allow_size(path, *image.size)
                yield image
    except Image.DecompressionBombError:
        raise PictureError(*_too_large(path, "hundreds of")) from None
    except UnidentifiedImageError:
        raise PictureError(f"{path.name} is not a picture", f"Use a {TAKEN} file.") from None
    except MemoryError:
        raise PictureError(f"{path.name} needs more memory than there is", "Save it smaller.") from None
    except _DAMAGE:
        raise PictureError(
            f"{path.name} is damaged: part of the picture is missing", "Save or copy the picture again."
        ) from None


def allow_size(path: Path, width_px: float, height_px: float) -> None:
    """Raise PictureError if a picture of that size would be too large to decode, or has no size."""
    if width_px < 1 or height_px < 1:
        raise PictureError(f"{path.name} has no size", "Save or copy the picture again.")
    if width_px * height_px > MAX_PIXELS:
        raise PictureError(*_too_large(path, f"{width_px * height_px / 1e6:.0f}"))


def _too_large(path: Path, megapixels: str) -> tuple[str, str]:
    most = MAX_PIXELS // 1_000_000
    return (f"{path.name} has {megapixels} million pixels; the most taken is {most} million",
            "Save it smaller: 5000 pixels along the long side fill the largest page.")  # fmt: skip


def orientation_of(image: Image.Image) -> int:
    """The EXIF orientation 1..8 (CIPA DC-008, tag 274); 1 if there is none or it makes no sense."""
    try:
        found = image.getexif().get(_ORIENTATION, 1)
    except _DAMAGE:
        return 1
    return found if isinstance(found, int) and 1 <= found <= 8 else 1


def info_of(image: ImageFile.ImageFile) -> PictureInfo:
    """What an opened picture is, from its header alone."""
    width, height = image.size
    turn = orientation_of(image)
    if turn in _TURNED:
        width, height = height, width
    name = "JPEG" if image.format == "MPO" else image.format or ""
    return PictureInfo(width, height, name, int(getattr(image, "n_frames", 1)), turn)


def upright(image: ImageFile.ImageFile, least: tuple[int, int] | None = None) -> Image.Image:
    """The pixels turned upright, as RGB or L (grey), with right colours. `least` (upright px) lets a JPEG decode small.

    CMYK, 16-bit, palette, Lab and profiled pictures are brought to sRGB; transparency is laid over white.
    """
    if image.format not in ("JPEG", "MPO"):
        image.load()  # looking for an orientation first would hide that the pixels are damaged
    turn = orientation_of(image)
    if least is not None and image.format in ("JPEG", "MPO"):
        image.draft(image.mode, least[::-1] if turn in _TURNED else least)
    image.load()
    plain = _right_colours(image)
    return plain.transpose(_TURNS[turn]) if turn in _TURNS else plain


def _right_colours(image: Image.Image) -> Image.Image:
    profile = image.info.get("icc_profile")
    if image.mode.startswith("I") or image.mode == "F":
        return _eight_bit(image)
    if image.mode in ("1", "L") and not _see_through(image):
        return _profiled(image.convert("L"), profile)
    if _see_through(image):
        clear = image.convert("RGBA")
        over = Image.new("RGB", image.size, (255, 255, 255))
        over.paste(_profiled(clear.convert("RGB"), profile), mask=clear.getchannel("A"))
        return over
    if image.mode in ("CMYK", "RGB"):
        return _profiled(image, profile).convert("RGB")
    return image.convert("RGB")


def _see_through(image: Image.Image) -> bool:
    return image.mode in ("RGBA", "LA", "PA", "La", "RGBa") or "transparency" in image.info


def _eight_bit(image: Image.Image) -> Image.Image:
    """Grey of more than 8 bits as L. The library's own conversion clips everything above 255 to white."""
    low, high = _span(image)
    if image.mode.startswith("I;16"):
        low, high = 0.0, 65535.0
    elif image.mode == "I" and low >= 0 and high <= 65535:
        low, high = 0.0, 65535.0 if high > 255 else 255.0
    elif low >= 0 and high <= 1:
        low, high = 0.0, 1.0
    scale = 255.0 / max(high - low, 1e-12)
    wide = image.convert("F")
    return wide.point(lambda value: value * scale + (0.5 - low * scale)).convert("L")


def _span(image: Image.Image) -> tuple[float, float]:
    found = image.getextrema()
    low, high = found if isinstance(found[0], (int, float)) else found[0]
    return float(low), float(high)


def has_own_profile(image: Image.Image) -> bool:
    """Whether the picture carries a colour profile that is not sRGB, so that its numbers mean other colours."""
    profile = image.info.get("icc_profile")
    return profile is not None and image.mode in ("RGB", "CMYK") and not _is_srgb(profile)


def _is_srgb(profile: bytes) -> bool:
    try:
        name = ImageCms.getProfileDescription(ImageCms.ImageCmsProfile(io.BytesIO(profile)))
    except (ImageCms.PyCMSError, OSError, TypeError):
        return True  # a broken profile says nothing: take the numbers as they are
    return "srgb" in name.lower()


def _profiled(image: Image.Image, profile: bytes | None) -> Image.Image:
    """The picture with its own colour profile worked in; unchanged if it has none, or one that does not fit it."""
    if not profile or image.mode == "L" or _is_srgb(profile):
        return image
    try:
        own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        done = ImageCms.profileToProfile(image, own, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, TypeError, ValueError):
        return image
    return image if done is None else done
