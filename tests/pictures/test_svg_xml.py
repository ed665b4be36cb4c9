import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.pictures.svg_xml import SvgError, declarations, parsed, styler, walk

SVG = b'<svg xmlns="http://www.w3.org/2000/svg">%s</svg>'


def test_names_come_without_their_namespace() -> None:
    root = parsed(b'<s:svg xmlns:s="http://www.w3.org/2000/svg" xmlns:x="urn:x"><s:path x:href="#a" d="M0 0"/></s:svg>')
    assert [node.tag for node in walk(root)] == ["svg", "path"]
    assert root.children[0].attributes == {"href": "#a", "d": "M0 0"}


@pytest.mark.parametrize(
    "head",
    [
        '<!DOCTYPE svg [<!ENTITY a "x"><!ENTITY b "&a;&a;&a;">]>',
        '<!DOCTYPE svg [<!ENTITY far SYSTEM "file:///etc/hostname">]>',
        '<!DOCTYPE svg [<!ENTITY % p "x">]>',
    ],
)
def test_entities_that_multiply_or_reach_out_are_refused(head: str) -> None:
    with pytest.raises(SvgError, match="entity"):
        parsed(head.encode() + SVG % b"")


def test_short_plain_entities_and_an_outside_definition_do_no_harm() -> None:
    text = b'<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "none.dtd" [<!ENTITY ns "http://www.w3.org/2000/svg">]>'
    assert parsed(text + b'<svg xmlns="&ns;"/>').tag == "svg"


@pytest.mark.parametrize("body", [b"<g>" * 200 + b"</g>" * 200, b"<g/>" * 70_000])
def test_depth_and_number_of_parts_are_limited(body: bytes) -> None:
    with pytest.raises(SvgError, match="more parts"):
        parsed(SVG % body)


@pytest.mark.parametrize("text", [b"<svg", b"<html/>", b"", b"\xff\xfe\x00", b"<svg></g>"])
def test_what_is_no_drawing_is_refused_in_words(text: bytes) -> None:
    with pytest.raises(SvgError):
        parsed(text)


def test_style_goes_from_attribute_over_rule_to_own_style() -> None:
    root = parsed(
        SVG % b"<style>path{fill:red} .a{fill:blue;stroke:lime} #c{fill:#123} g path{fill:pink}</style>"
        b'<path fill="white"/><path class="x a"/><path class="a" id="c"/><path class="a" style="fill: none"/>'
    )
    style = styler(root)
    fills = [style(node)["fill"] for node in root.children[1:]]
    assert fills == ["red", "blue", "#123", "none"]


@given(st.text(max_size=40))
def test_declarations_never_fail(text: str) -> None:
    declarations(text)


@given(st.binary(max_size=60))
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    try:
        parsed(b"<svg>" + data + b"</svg>")
    except SvgError as error:
        assert str(error)
