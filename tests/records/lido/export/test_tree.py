from __future__ import annotations

import pytest

from service.records.lido.export.tree import add, set_language, start, to_bytes


def test_elements_stand_in_one_another() -> None:
    """A path makes its elements, and text, kind and language go to the innermost."""
    root = start("lido")
    set_language(add(root, "a/b", "1 < 2 & 3", kind='x"y'), "en")
    assert to_bytes(root) == (
        b'<lido:lido><lido:a><lido:b lido:type="x&quot;y" xml:lang="en">1 &lt; 2 &amp; 3'
        b"</lido:b></lido:a></lido:lido>"
    )


@pytest.mark.parametrize("character", ["\x00", "\x0b", "\ud800", "\ufffe"], ids=ascii)
def test_what_xml_cannot_hold_is_marked(character: str) -> None:
    """A character no XML file may hold is replaced by the one that says so."""
    root = start("a")
    add(root, "b", f"x{character}y")
    assert "x\ufffdy" in to_bytes(root).decode()
