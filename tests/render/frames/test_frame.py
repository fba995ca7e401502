from __future__ import annotations

from service.render.frames.frame import (
    Look,
    MarkLook,
    Mould,
    PictureLook,
    ShapeLook,
    SymbolLook,
    TextLook,
)


def test_looks_of_one_purpose_are_told_apart() -> None:
    """A mould is found by its look, whatever else has the same purpose."""
    looks: list[Look] = [
        TextLook("x", "black"),
        TextLook("x", "grey"),
        PictureLook("x", is_empty=True),
        PictureLook("x", is_empty=False),
        ShapeLook("x", "", has_outline=False, is_dashed=False),
        ShapeLook("x", "", has_outline=True, is_dashed=False),
        SymbolLook("x"),
        MarkLook("x"),
    ]
    moulds = {look: Mould(line_mm=float(number)) for number, look in enumerate(looks)}
    assert [moulds[look].line_mm for look in looks] == list(range(8))
