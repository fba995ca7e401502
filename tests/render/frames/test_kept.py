from __future__ import annotations

import json
from dataclasses import replace

import pytest

from service.geometry import Size
from service.render.frames.frame import Frame, Mould, StaticInk
from service.render.frames.kept import (
    frame_from_json,
    frame_to_json,
    marks_from_json,
    marks_to_json,
)
from service.render.plates.plate import FontUse
from tests.render.frames import made

FRAME = Frame(
    made.KIND,
    "ab" * 32,
    {
        **{look: Mould() for look in made.LOOKS},
        made.TITLE: Mould(ink=(0.1, 0.2, 0.3)),
        made.PHOTO: Mould(line=(0.466667, 0.0, 1.0), line_mm=0.15),
    },
    {
        Size(148.5, 105.0): StaticInk(b"", ()),
        Size(60.0, 30.0): StaticInk(
            b"q [<0001> 5 <ffff>] TJ Q", (FontUse(3, b"\x01\x00\xff\xff", ("A", "é")),)
        ),
    },
)


def test_a_frame_comes_back_as_it_was() -> None:
    """Every look, mould, size and font survives being written and read."""
    assert frame_from_json(frame_to_json(FRAME)) == FRAME


def test_equal_frames_give_equal_texts() -> None:
    """The order in which looks were met is not written."""
    turned = replace(FRAME, moulds=dict(reversed(list(FRAME.moulds.items()))))
    assert frame_to_json(turned) == frame_to_json(FRAME)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "{}",
        frame_to_json(FRAME)[:-40],
        json.dumps({"kind": "a", "sha256": "b", "moulds": [{"look": "NoLook"}], "statics": []}),
        frame_to_json(FRAME).replace("65535", "65536"),
        frame_to_json(FRAME).replace('"is_empty"', '"is_full"'),
    ],
    ids=["nothing", "list", "no-keys", "cut", "no-such-look", "glyph-too-large", "other-field"],
)
def test_a_damaged_text_is_told(text: str) -> None:
    """What is no frame is never taken for one."""
    with pytest.raises(ValueError, match=r"."):
        frame_from_json(text)


def test_marks_come_back_as_they_were() -> None:
    """Operators survive being written and read."""
    forms = {"fragile": b"0 g 0 0 m f", "gloves": b""}
    assert marks_from_json(marks_to_json(forms)) == forms


@pytest.mark.parametrize("text", ["", "[]", '{"a": 1}', '{"a": "\u00e9"}'])
def test_damaged_marks_are_told(text: str) -> None:
    """What holds no operators is never taken for marks."""
    with pytest.raises(ValueError, match=r"."):
        marks_from_json(text)
