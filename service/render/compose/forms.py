"""Plates as forms of a file: each once, however often it is placed (ISO 32000-1, 8.10)."""

from __future__ import annotations

from collections.abc import Callable

from service.render.compose.document import box_of
from service.render.compose.fonts import FontBook
from service.render.compose.pictures import PictureBook
from service.render.compose.writer import PdfWriter
from service.render.plates.plate import Plate

MarkSource = Callable[[str], bytes]
"""Gives the operators of a mark in the unit square by its code."""


class FormBook:
    """The forms of one file."""

    def __init__(
        self, writer: PdfWriter, fonts: FontBook, pictures: PictureBook, marks: MarkSource
    ) -> None:
        """Write forms that share the fonts, pictures and marks of the file."""
        self._writer = writer
        self._fonts = fonts
        self._pictures = pictures
        self._mark_source = marks
        self._marks: dict[str, int] = {}
        self._resources: dict[bytes, int] = {}

    def add(self, plate: Plate) -> int:
        """Write a plate, and whatever it needs that is not yet there; give its object."""
        for use in plate.fonts:
            self._fonts.note(use)
        entries = b"/Type/XObject/Subtype/Form/BBox[%b]/Resources %d 0 R/Filter/FlateDecode" % (
            box_of(plate.size),
            self._resources_of(plate),
        )
        return self._writer.add_stream(entries, plate.content)

    def _resources_of(self, plate: Plate) -> int:
        """Give the object that says what a plate's names mean; plates alike share it."""
        drawn = [
            b"/P%d %d 0 R" % (index, self._pictures.number(picture.sha256))
            for index, picture in enumerate(plate.pictures)
        ]
        drawn += [b"/M%b %d 0 R" % (code.encode(), self._mark(code)) for code in plate.marks]
        named = b"".join(drawn)
        number = self._resources.get(named)
        if number is None:
            objects = b"/XObject<<%b>>" % named if named else b""
            body = b"<</Font %d 0 R%b>>" % (self._fonts.dictionary, objects)
            number = self._resources[named] = self._writer.add(body)
        return number

    def _mark(self, code: str) -> int:
        number = self._marks.get(code)
        if number is None:
            entries = b"/Type/XObject/Subtype/Form/BBox[0 0 1 1]/Resources<<>>"
            number = self._writer.add_deflated(entries, self._mark_source(code))
            self._marks[code] = number
        return number
