"""Is a form of the file, byte for byte, the plate that was proved?"""

from __future__ import annotations

import hashlib
import re
from array import array
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from service.geometry import TOLERANCE_MM, Rect, Size
from service.render.plates.plate import PictureUse, Plate, ProvedPlate
from service.render.reading.objects import Ref, Value, refuse
from service.render.reading.pdf_file import PdfFile, Stream
from service.units import mm_from_points

_FORM_SAYS = {"/Type", "/Subtype", "/FormType", "/BBox", "/Matrix", "/Resources", "/Filter"}
_PICTURE_MAY_SAY = {"/Type", "/Interpolate"}
_AS_IT_IS = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0]
_UNIT_SQUARE = [0.0, 0.0, 1.0, 1.0]
_COLOURS = {b"\1": "/DeviceGray", b"\3": "/DeviceRGB"}
# The frame header of a baseline JPEG file (ITU-T T.81, B.2.2): height, width, components.
_JPEG_FRAME = re.compile(rb"\xff\xc0\x00[\x0b\x11]\x08(..)(..)([\x01\x03])", re.DOTALL)


class Parts(Protocol):
    """What plates are made of, as it was before it came into a file."""

    @property
    def marks(self) -> Callable[[str], bytes]:
        """Gives the operators of a mark in the unit square by its code."""
        ...

    @property
    def fonts(self) -> Sequence[tuple[str, Path]]:
        """Name and file of each shipped font, in the order in which plates number them."""
        ...


@dataclass(frozen=True, slots=True)
class _Kind:
    """What forms say of themselves: their box, fonts and what else they draw, by object."""

    first: Stream
    size: Size
    fonts: dict[int, int]
    drawn: dict[str, int]


class Forms:
    """The forms, pictures and marks of a file; each is looked at once."""

    def __init__(self, file: PdfFile, parts: Parts) -> None:
        """Look at nothing yet."""
        self._file = file
        self._parts = parts
        self._last: _Kind | None = None
        self._pictures: dict[int, PictureUse] = {}
        self._marks: dict[int, str] = {}
        # One picture of each size, with its frame header: the others are written alike.
        self._pictures_like: dict[tuple[int, int], tuple[Stream, bytes]] = {}
        self._glyphs: defaultdict[tuple[int, int], bytearray] = defaultdict(bytearray)

    def glyphs(self) -> Iterator[tuple[int, int, set[int]]]:
        """Give the object of each font, its number, and its glyphs in all forms looked at."""
        for (number, font), glyphs in self._glyphs.items():
            yield number, font, set(array("H", bytes(glyphs)))

    def faults(self, number: int, proved: ProvedPlate) -> Iterator[str]:
        """Say in what the form of this number is not the plate."""
        plate, kind = proved.plate, self._last
        if kind is None or not self._file.repeats(number, kind.first, plate.content):
            form = self._file.stream(number)
            if not form.holds(plate.content):
                yield "its instructions are others"
                return
            kind = self._last = self._kind(form)
        if not _is_same(kind.size, plate.size):
            yield f"it is {kind.size.width_mm:.2f} x {kind.size.height_mm:.2f} mm large"
        if _reaches_out(proved.proof.ink, plate.size):
            yield "its ink reaches out of it"
        for use in plate.fonts:
            font = kind.fonts.get(use.font)
            if font is None:
                yield f"it has no font {use.font}"
            else:
                self._glyphs[font, use.font] += use.glyphs
        if plate.pictures or plate.marks:
            yield from self._drawn_faults(kind, plate)

    def _drawn_faults(self, kind: _Kind, plate: Plate) -> Iterator[str]:
        for index, picture in enumerate(plate.pictures):
            number = kind.drawn.get(f"/P{index}", 0)
            if self._pictures.get(number) != picture:
                if not self._is_picture(number, picture):
                    yield f"its picture {index + 1} is another"
                else:
                    self._pictures[number] = picture
        for mark in plate.marks:
            number = kind.drawn.get(f"/M{mark}", 0)
            if self._marks.get(number) != mark:
                if not self._is_mark(number, mark):
                    yield f"its mark {mark} is another"
                else:
                    self._marks[number] = mark

    def _kind(self, form: Stream) -> _Kind:
        """Read what a form says of itself."""
        head = form.head
        if not head.keys() <= _FORM_SAYS or head.get("/Matrix", _AS_IT_IS) != _AS_IT_IS:
            refuse(f"a form says more than it should: {' '.join(head)}")
        if head.get("/Subtype") != "/Form" or head.get("/Filter") != "/FlateDecode":
            refuse("a form is of another kind, or packed otherwise")
        resources = self._file.dictionary(head.get("/Resources"))
        fonts = self._numbers(resources.get("/Font", {}))
        return _Kind(
            form,
            _size_of(head.get("/BBox")),
            {int(name[2:]): number for name, number in fonts.items()},
            self._numbers(resources.get("/XObject", {})),
        )

    def _numbers(self, named: Value) -> dict[str, int]:
        entries = self._file.dictionary(named).items()
        return {name: value.number for name, value in entries if isinstance(value, Ref)}

    def _is_picture(self, number: int, picture: PictureUse) -> bool:
        """Tell whether an object is this picture, said to be what its own bytes say.

        The bytes in the file are hashed, whatever they were copied from: the plate names the hash.
        """
        if not number:
            return False
        size_px = picture.width_px, picture.height_px
        like = self._pictures_like.get(size_px)
        stored = self._file.stored_like(number, like[0]) if like else None
        stream = None
        if stored is None:
            stream = self._file.stream(number)
            stored = stream.stored
        frame = _JPEG_FRAME.search(stored)
        if frame is None or hashlib.sha256(stored).hexdigest() != picture.sha256:
            return False
        if stream is None:
            return like is not None and frame[0] == like[1]
        if not _says(stream, frame, size_px):
            return False
        self._pictures_like[size_px] = stream, bytes(frame[0])
        return True

    def _is_mark(self, number: int, code: str) -> bool:
        if not number:
            return False
        form = self._file.stream(number)
        return (
            form.head.get("/Subtype") == "/Form"
            and form.head.keys() <= _FORM_SAYS
            and form.head.get("/Matrix", _AS_IT_IS) == _AS_IT_IS
            and form.head.get("/BBox") == _UNIT_SQUARE
            and form.content == self._parts.marks(code)
        )


def _says(stream: Stream, frame: re.Match[bytes], size_px: tuple[int, int]) -> bool:
    """Tell whether an object says of its JPEG what that says of itself, and nothing else."""
    height_px, width_px = (int.from_bytes(side, "big") for side in frame.group(1, 2))
    said = {name: value for name, value in stream.head.items() if name not in _PICTURE_MAY_SAY}
    return (width_px, height_px) == size_px and said == {
        "/Subtype": "/Image",
        "/Width": width_px,
        "/Height": height_px,
        "/BitsPerComponent": 8,
        "/ColorSpace": _COLOURS[bytes(frame[3])],
        "/Filter": "/DCTDecode",
    }


def _is_same(one: Size, other: Size) -> bool:
    return (
        abs(one.width_mm - other.width_mm) <= TOLERANCE_MM
        and abs(one.height_mm - other.height_mm) <= TOLERANCE_MM
    )


def _reaches_out(ink: Rect, size: Size) -> bool:
    return (
        min(ink.x_mm, ink.y_mm) < -TOLERANCE_MM
        or ink.x_mm + ink.width_mm > size.width_mm + TOLERANCE_MM
        or ink.y_mm + ink.height_mm > size.height_mm + TOLERANCE_MM
    )


def _size_of(box: Value) -> Size:
    match box:
        case [0.0, 0.0, float(width), float(height)]:
            size = Size(mm_from_points(width), mm_from_points(height))
        case _:
            refuse(f"a form has the box {box!r:.60}")
    return size
