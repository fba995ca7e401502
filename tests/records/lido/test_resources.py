from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import Element, read_blocks
from service.records.lido.resources import read_photos, read_sides

Maker = Callable[[str], Element]


def resource(*links: tuple[str, str]) -> str:
    """Give a resource with addresses, each with the kind of its representation."""
    inner = "".join(
        f'<_resourceRepresentation _type="{kind}"><_linkResource>{link}</_linkResource>'
        "</_resourceRepresentation>"
        for kind, link in links
    )
    return f"<_resourceSet>{inner}</_resourceSet>"


@pytest.mark.parametrize(
    ("inner", "names", "unnamed"),
    [
        (resource(("", "https://x/a/1.jpg")), ("1.jpg",), ()),
        (resource(("image_thumb", "s/1_t.jpg"), ("image_master", "l/1.jpg")), ("1.jpg",), ()),
        (resource(("image_thumb", "s/1_t.jpg")), ("1_t.jpg",), ()),
        (resource(("", "a/1.jpg")) + resource(("", "b/1.jpg")), ("1.jpg",), ()),
        (resource(("", "1.jpg")) + resource(("", "2.jpg")), ("1.jpg", "2.jpg"), ()),
        (resource(("", "https://x/image?id=1")), (), ("https://x/image?id=1",)),
        (resource(("", "../../../etc/passwd")), (), ("../../../etc/passwd",)),
        (resource(), (), ()),
    ],
    ids=["address", "master", "only small", "same", "two", "no name", "path", "none"],
)
def test_photos(
    make_record: Maker, inner: str, names: tuple[str, ...], unnamed: tuple[str, ...]
) -> None:
    """A resource gives the name of one file, never a path or an address."""
    record = make_record(
        f"<_administrativeMetadata><_resourceWrap>{inner}</_resourceWrap></_administrativeMetadata>"
    )
    assert read_photos(read_blocks(record, "administrativeMetadata")) == (names, unnamed)


@pytest.mark.parametrize(
    ("word", "expected"),
    [("back", {"1.jpg": "back"}), ("Front view", {"1.jpg": "front"}), ("from above", {})],
)
def test_sides(make_record: Maker, word: str, expected: dict[str, str]) -> None:
    """A perspective counts where it is one of the sides that photos have."""
    perspective = f"<_resourcePerspective><_term>{word}</_term></_resourcePerspective>"
    inner = resource(("", "a/1.jpg")).replace("</_resourceSet>", f"{perspective}</_resourceSet>")
    record = make_record(
        f"<_administrativeMetadata><_resourceWrap>{inner}</_resourceWrap></_administrativeMetadata>"
    )
    assert read_sides(read_blocks(record, "administrativeMetadata")) == expected
