"""Static ink: what a template draws on an empty page, made ready to stand under a plate's slots."""

from __future__ import annotations

import re
import struct
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import pikepdf
from pikepdf import Dictionary, Name

from service.render.frames.frame import StaticInk
from service.render.frames.measure.ink import read_ink
from service.render.frames.measure.moulds import UnkeepableInkError
from service.render.plates.plate import FontUse
from service.render.reading.fonts import FontInFile

_CODE_TEXT = re.compile(rb"<([0-9a-fA-F]{4})>\s*<([0-9a-fA-F]*)>")
_DROPPED = frozenset({"gs", "BMC", "BDC", "EMC"})
"""What says nothing once all ink is known to be opaque and no part of it is tagged."""


@dataclass(slots=True)
class _UsedFont:
    """A font of the page: its number among those shipped, and the glyphs shown so far."""

    number: int
    texts: Mapping[int, str]
    glyphs: set[int] = field(default_factory=set)

    def use(self) -> FontUse:
        glyphs = sorted(self.glyphs)
        packed = struct.pack(f"<{len(glyphs)}H", *glyphs)
        return FontUse(self.number, packed, tuple(self.texts.get(one, "") for one in glyphs))


def read_static(page: pikepdf.Page, shipped: Iterable[str]) -> StaticInk:
    """Give the ink of an empty page; `shipped` are the names of our fonts in their order.

    Raises:
        UnkeepableInkError: When it could not be repeated by a plate.
    """
    marks = read_ink(page)
    for mark in marks:
        if mark.reason or mark.manner == "picture":
            raise UnkeepableInkError(mark.reason or "a picture stands where no slot is")
    if not marks:
        return StaticInk(b"", ())
    fonts = _fonts_of(page, list(shipped))
    body = b"\n".join(_operators(page, fonts))
    uses = sorted((font.use() for font in fonts.values() if font.glyphs), key=lambda use: use.font)
    return StaticInk(b"q\n" + body + b"\nQ\n", tuple(uses))


def _operators(page: pikepdf.Page, fonts: Mapping[str, _UsedFont]) -> Iterator[bytes]:
    """Give the content line by line, fonts by their shipped numbers and codes in hexadecimals."""
    current: _UsedFont | None = None
    for instruction in pikepdf.parse_content_stream(page):
        operator = str(instruction.operator)
        operands = list(instruction.operands)
        if operator in _DROPPED:
            continue
        if operator == "Tf":
            current = fonts[str(operands[0])]
            yield b"/F%d %s Tf" % (current.number, str(operands[1]).encode())
            continue
        if operator in {"Tj", "TJ"} and current is not None:
            current.glyphs.update(_glyphs_in(operands[0]))
        yield b" ".join([*map(_written, operands), operator.encode()])


def _written(operand: object) -> bytes:
    if isinstance(operand, pikepdf.String):
        return b"<%s>" % bytes(operand).hex().encode()
    if isinstance(operand, pikepdf.Array):
        return b"[%s]" % b" ".join(map(_written, operand.as_list()))
    return str(operand).encode("ascii")


def _glyphs_in(shown: object) -> Iterator[int]:
    parts = shown.as_list() if isinstance(shown, pikepdf.Array) else [shown]
    for part in parts:
        if isinstance(part, pikepdf.String):
            codes = bytes(part)
            yield from struct.unpack(f">{len(codes) // 2}H", codes)


def _fonts_of(page: pikepdf.Page, shipped: Sequence[str]) -> dict[str, _UsedFont]:
    wanted = {
        str(instruction.operands[0]) for instruction in pikepdf.parse_content_stream(page, "Tf")
    }
    entries = page.obj.get(Name.Resources, Dictionary()).get(Name.Font, Dictionary())
    return {name: _used_font(entries[Name(name)], shipped) for name in sorted(wanted)}


def _used_font(entry: pikepdf.Object, shipped: Sequence[str]) -> _UsedFont:
    font = FontInFile(entry)
    if font.name not in shipped:
        message = f"fixed words are set in {font.name}, which is not shipped"
        raise UnkeepableInkError(message)
    if entry.get(Name.Encoding) != Name("/Identity-H") or not font.is_by_glyph:
        message = "fixed words hold a sign that is not one glyph of its font"
        raise UnkeepableInkError(message)
    pairs = _CODE_TEXT.findall(entry.ToUnicode.read_bytes()) if Name.ToUnicode in entry else []
    texts = {
        int(code, 16): bytes.fromhex(text.decode()).decode("utf-16-be") for code, text in pairs
    }
    return _UsedFont(shipped.index(font.name), texts)
