"""Frames and marks as JSON, so that they outlive the process that measured them.

Operators are bytes of ASCII and glyphs are counted numbers, so that a file can be read by eye.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Callable, Mapping
from typing import TypeAlias, cast

from service.geometry import Size
from service.render.frames.frame import (
    Colour,
    Frame,
    Look,
    MarkLook,
    Mould,
    PictureLook,
    ShapeLook,
    StaticInk,
    SymbolLook,
    TextLook,
)
from service.render.plates.plate import FontUse

Json: TypeAlias = "dict[str, Json] | list[Json] | str | float | bool | None"

_KINDS: dict[str, Callable[..., Look]] = {
    kind.__name__: kind for kind in (TextLook, PictureLook, ShapeLook, SymbolLook, MarkLook)
}
_GLYPH = struct.Struct("<H")


def frame_to_json(frame: Frame) -> str:
    """Write a frame as text; equal frames give equal texts."""
    moulds = [_mould_to(look, mould) for look, mould in frame.moulds.items()]
    statics = [_static_to(size, ink) for size, ink in frame.statics.items()]
    whole: Json = {
        "kind": frame.kind,
        "sha256": frame.sha256,
        "moulds": sorted(moulds, key=json.dumps),
        "statics": sorted(statics, key=json.dumps),
    }
    return json.dumps(whole, indent=1)


def frame_from_json(text: str) -> Frame:
    """Read a frame back.

    Raises:
        ValueError: When the text is none that `frame_to_json` wrote.
    """
    try:
        whole = json.loads(text)
        return Frame(
            kind=str(whole["kind"]),
            sha256=str(whole["sha256"]),
            moulds=dict(_mould_from(entry) for entry in whole["moulds"]),
            statics=dict(_static_from(entry) for entry in whole["statics"]),
        )
    except (KeyError, TypeError, AttributeError, struct.error) as error:
        message = f"this is no frame: {error!r}"
        raise ValueError(message) from error


def marks_to_json(forms: Mapping[str, bytes]) -> str:
    """Write the operators of marks as text."""
    texts = {code: form.decode("ascii") for code, form in forms.items()}
    return json.dumps(texts, indent=1, sort_keys=True)


def marks_from_json(text: str) -> dict[str, bytes]:
    """Read the operators of marks back.

    Raises:
        ValueError: When the text is none that `marks_to_json` wrote.
    """
    forms = json.loads(text)
    if not isinstance(forms, dict) or not all(isinstance(form, str) for form in forms.values()):
        message = "these are no marks"
        raise ValueError(message)
    return {str(code): form.encode("ascii") for code, form in forms.items()}


def _mould_to(look: Look, mould: Mould) -> Json:
    return {
        "look": type(look).__name__,
        "says": {name: getattr(look, name) for name in look.__slots__},
        "ink": _colour_to(mould.ink),
        "line": _colour_to(mould.line),
        "line_mm": mould.line_mm,
    }


def _mould_from(entry: dict[str, Json]) -> tuple[Look, Mould]:
    look = _KINDS[str(entry["look"])](**cast("dict[str, str | bool]", entry["says"]))
    ink, line = _colour_from(entry["ink"]), _colour_from(entry["line"])
    return look, Mould(ink, line, float(cast("float", entry["line_mm"])))


def _colour_to(colour: Colour | None) -> Json:
    return None if colour is None else list(colour)


def _colour_from(entry: Json) -> Colour | None:
    if entry is None:
        return None
    red, green, blue = cast("list[float]", entry)
    return float(red), float(green), float(blue)


def _static_to(size: Size, ink: StaticInk) -> Json:
    return {
        "size_mm": [size.width_mm, size.height_mm],
        "operators": ink.operators.decode("ascii"),
        "fonts": [_font_to(use) for use in ink.fonts],
    }


def _static_from(entry: dict[str, Json]) -> tuple[Size, StaticInk]:
    width_mm, height_mm = cast("list[float]", entry["size_mm"])
    fonts = cast("list[dict[str, Json]]", entry["fonts"])
    operators = str(entry["operators"]).encode("ascii")
    return Size(float(width_mm), float(height_mm)), StaticInk(
        operators, tuple(_font_from(font) for font in fonts)
    )


def _font_to(use: FontUse) -> Json:
    glyphs: list[Json] = [number for (number,) in _GLYPH.iter_unpack(use.glyphs)]
    return {"font": use.font, "glyphs": glyphs, "texts": list(use.texts)}


def _font_from(entry: dict[str, Json]) -> FontUse:
    glyphs = b"".join(_GLYPH.pack(number) for number in cast("list[int]", entry["glyphs"]))
    texts = tuple(str(text) for text in cast("list[str]", entry["texts"]))
    return FontUse(int(cast("float", entry["font"])), glyphs, texts)
