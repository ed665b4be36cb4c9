import io
import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image, ImageCms

from packgen.pictures.opening import MAX_PIXELS, PictureError, info_of, opened, sniff, upright


def shown(path: Path) -> Image.Image:
    with opened(path) as image:
        return upright(image)


def refusal(path: Path) -> str:
    with pytest.raises(PictureError) as caught:
        sniff(path)
        shown(path)
    assert caught.value.instead
    return caught.value.message


def header_only_png(path: Path, width: int, height: int) -> Path:
    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    body = chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 100)) + chunk(b"IEND", b"")
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + body)
    return path


@pytest.mark.parametrize(("width", "height"), [(10_000, 10_000), (60_000, 60_000), (1, MAX_PIXELS + 1)])
def test_a_picture_of_too_many_pixels_is_refused_before_it_is_decoded(tmp_path: Path, width: int, height: int) -> None:
    assert "million pixels" in refusal(header_only_png(tmp_path / "large.png", width, height))


def test_a_hundred_megapixels_in_a_few_kilobytes_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "bomb.png"
    Image.new("1", (10_400, 10_400)).save(path)
    assert path.stat().st_size < 50_000
    assert "108 million pixels" in refusal(path)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP", "GIF"])
def test_a_truncated_file_is_told_in_words(tmp_path: Path, kind: str) -> None:
    noisy = Image.effect_noise((200, 200), 80).convert("RGB")
    held = io.BytesIO()
    noisy.save(held, kind)
    path = tmp_path / "cut"
    path.write_bytes(held.getvalue()[: len(held.getvalue()) // 2])
    assert "damaged" in refusal(path) or "not a picture" in refusal(path)


@pytest.mark.parametrize(
    ("start", "word"),
    [
        (b"\0\0\0\x18ftypheic\0\0\0\0", "HEIC"), (b"%PDF-1.7", "PDF"), (b"%!PS-Adobe-3.0 EPSF", "PostScript"),
        (b"PK\x03\x04", "archive"), (b"hello", "not a picture"), (b"", "empty"), (b"\x1f\x8b\x08", "compressed"),
    ],
)  # fmt: skip
def test_what_is_no_picture_is_named(tmp_path: Path, start: bytes, word: str) -> None:
    path = tmp_path / "thing.jpg"
    path.write_bytes(start and start + b"\0" * 300)
    assert word in refusal(path)


def test_a_missing_file_and_a_folder_are_told_apart(tmp_path: Path) -> None:
    assert "not there" in refusal(tmp_path / "none.png")
    assert "folder" in refusal(tmp_path)


def test_a_wrong_extension_does_not_matter(tmp_path: Path) -> None:
    path = tmp_path / "really-a-png.jpg"
    Image.new("RGB", (30, 20), (10, 200, 30)).save(path, "PNG")
    assert shown(path).getpixel((5, 5)) == (10, 200, 30)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_exif_orientation_comes_out_upright(tmp_path: Path, orientation: int) -> None:
    # CIPA DC-008 (Exif 2.32), tag 274: where row 0 and column 0 of the stored picture lie when it is seen upright.
    want = Image.new("RGB", (40, 20), (255, 255, 255))
    want.paste((255, 0, 0), (0, 0, 10, 10))
    undo = {
        1: None, 2: Image.Transpose.FLIP_LEFT_RIGHT, 3: Image.Transpose.ROTATE_180, 4: Image.Transpose.FLIP_TOP_BOTTOM,
        5: Image.Transpose.TRANSPOSE, 6: Image.Transpose.ROTATE_90, 7: Image.Transpose.TRANSVERSE,
        8: Image.Transpose.ROTATE_270,
    }[orientation]  # fmt: skip
    stored = want if undo is None else want.transpose(undo)
    exif = Image.Exif()
    exif[274] = orientation
    path = tmp_path / "turned.png"
    stored.save(path, exif=exif)
    with opened(path) as image:
        assert (info_of(image).width_px, info_of(image).height_px) == (40, 20)
    assert shown(path).tobytes() == want.tobytes()


def test_sixteen_bit_grey_is_not_clipped_to_white(tmp_path: Path) -> None:
    path = tmp_path / "deep.png"
    Image.new("I;16", (8, 8), 40_000).save(path)
    # 40000 of 65535 is 155.6 of 255.
    assert shown(path).getpixel((4, 4)) in (155, 156)


def test_cmyk_becomes_the_colour_the_inks_make(tmp_path: Path) -> None:
    path = tmp_path / "inks.tif"
    Image.new("CMYK", (8, 8), (0, 255, 255, 0)).save(path)
    red, green, blue = shown(path).getpixel((2, 2))
    assert red > 200 and green < 60 and blue < 60


@pytest.mark.parametrize("mode", ["RGBA", "LA", "P"])
def test_transparency_is_laid_over_white(tmp_path: Path, mode: str) -> None:
    path = tmp_path / "clear.png"
    half = Image.new("RGBA", (10, 10), (0, 0, 0, 0))
    half.paste((0, 0, 0, 255), (0, 0, 5, 10))
    half.convert(mode).save(path)
    picture = shown(path).convert("RGB")
    assert picture.getpixel((8, 5)) == (255, 255, 255)
    assert picture.getpixel((2, 5)) == (0, 0, 0)


def test_a_colour_profile_is_worked_in(tmp_path: Path) -> None:
    # A profile whose red and blue primaries are those of sRGB changed over: its full red looks blue.
    data = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    data = bytearray(bytes(data).replace(b"s\0R\0G\0B", b"x\0R\0G\0B"))
    red, blue = data.index(b"rXYZ"), data.index(b"bXYZ")
    data[red : red + 4], data[blue : blue + 4] = b"bXYZ", b"rXYZ"
    path = tmp_path / "profiled.png"
    Image.new("RGB", (8, 8), (255, 0, 0)).save(path, icc_profile=bytes(data))
    got = shown(path).getpixel((2, 2))
    assert got[2] > 240 and got[0] < 20


def test_a_broken_profile_changes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "broken-profile.png"
    Image.new("RGB", (8, 8), (200, 30, 60)).save(path, icc_profile=b"not a profile at all")
    assert shown(path).getpixel((2, 2)) == (200, 30, 60)


def test_an_animation_gives_its_first_frame(tmp_path: Path) -> None:
    frames = [Image.new("RGB", (20, 20), colour) for colour in ((200, 0, 0), (0, 200, 0))]
    path = tmp_path / "moves.gif"
    frames[0].save(path, save_all=True, append_images=frames[1:])
    with opened(path) as image:
        assert info_of(image).frames == 2
    assert shown(path).convert("RGB").getpixel((3, 3)) == (200, 0, 0)


def test_one_pixel_is_a_picture(tmp_path: Path) -> None:
    path = tmp_path / "dot.png"
    Image.new("RGB", (1, 1), (1, 2, 3)).save(path)
    assert shown(path).size == (1, 1)


def test_a_large_jpeg_is_decoded_small_when_little_is_asked(tmp_path: Path) -> None:
    path = tmp_path / "photo.jpg"
    Image.new("RGB", (1600, 1200), (90, 120, 150)).save(path)
    with opened(path) as image:
        small = upright(image, (200, 150))
    assert small.size == (200, 150)


def test_a_broken_stream_is_not_hidden_by_a_look_at_the_orientation(tmp_path: Path) -> None:
    path = tmp_path / "spoilt.png"
    Image.effect_noise((40, 30), 60).save(path)
    data = bytearray(path.read_bytes())
    data[data.index(b"IDAT") + 4] = 0  # no zlib stream begins so
    path.write_bytes(data)
    assert "damaged" in refusal(path)
