import io

from PIL import Image

from packgen.pictures.jpeg import picture_only


def coded(**options: object) -> bytes:
    held = io.BytesIO()
    Image.effect_noise((64, 48), 90).convert("RGB").save(held, "JPEG", **options)
    return held.getvalue()


def pixels(data: bytes) -> bytes:
    return Image.open(io.BytesIO(data)).tobytes()


def test_the_coded_picture_is_kept_and_the_camera_notes_are_not() -> None:
    exif = Image.Exif()
    exif[0x010F] = "A camera of Saltmere"
    data = coded(exif=exif, comment=b"taken at home")
    kept = picture_only(data)
    assert kept is not None
    assert b"Saltmere" not in kept and b"taken at home" not in kept
    assert pixels(kept) == pixels(data)


def test_progressive_pictures_and_restarts_are_followed_to_the_end() -> None:
    for options in ({"progressive": True}, {"restart_marker_rows": 1}):
        data = coded(**options)
        kept = picture_only(data)
        assert kept is not None and pixels(kept) == pixels(data)


def test_what_a_phone_appends_after_the_picture_is_dropped() -> None:
    data = coded()
    assert picture_only(data + b"\0ftypmp42 a short film") == picture_only(data)


def test_what_is_no_jpeg_is_none() -> None:
    assert picture_only(b"\x89PNG") is None
    assert picture_only(b"\xff\xd8 nonsense") is None
    assert picture_only(coded()[:300]) is None
