"""The template compiler: a frame, measured from what the layout engine makes of specimens.

The fit decides every place, size, weight and alignment; a template decides only looks. So one run
of the engine over a page for each look says all there is to say of a template.
"""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import pikepdf

from service.errors import SlotRefusedError
from service.geometry import Size
from service.pages.page import Page
from service.render.frames.frame import (
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
from service.render.frames.looks import has_picture, look_of
from service.render.frames.marks import draw_forms
from service.render.frames.measure.ink import Inked, read_ink
from service.render.frames.measure.moulds import UnkeepableInkError, ink_of_block, mould_of
from service.render.frames.measure.oracle import Difference, differences
from service.render.frames.measure.plated import plated_pages
from service.render.frames.measure.specimen import (
    SPECIMEN_MARK,
    Specimen,
    make_crowd,
    make_specimens,
    specimen_pages,
    specimen_pictures,
)
from service.render.frames.measure.statics import read_static
from service.render.frames.measure.styles import StyleReader
from service.render.frames.versions import frames_sha256
from service.render.reading.fonts import shipped_fonts
from service.render.reading.shaping import Shaper
from service.render.task import FONTS_CONF, TEMPLATES, DrawTask

_WORDS: dict[type[Look], str] = {
    TextLook: "text",
    PictureLook: "picture",
    ShapeLook: "shape",
    SymbolLook: "symbol",
    MarkLook: "mark",
}


@dataclass(frozen=True, slots=True)
class FrameTask:
    """What to measure: the looks of one card kind, on a face of one size, and moulds known before.

    Looks that have a mould are not measured again, but drawn among the others, to see whether it
    still holds.
    """

    kind: str
    size: Size
    looks: frozenset[Look]
    known: Mapping[Look, Mould] = field(default_factory=dict)
    templates: Path = TEMPLATES


def compile_frame(task: FrameTask) -> Frame:
    """Measure a frame; runs in a child process, which has the environment of `task.py`.

    Raises:
        SlotRefusedError: When the template asks a slot for more than a mould can keep.
        TemplateError: When a template asks for what its context does not hold.
        AssetError: When a template asks for anything but our own files.
        EngineComplaintError: When the engine logs anything.
    """
    # The engine looks at its fonts when it is imported, which only the child's environment names.
    from service.render.draw import draw_html, fill_templates, parse_html  # noqa: PLC0415

    looks = sorted(task.looks | task.known.keys(), key=_rank)
    specimens = make_specimens([look for look in looks if look not in task.known], task.size)
    pages = specimen_pages(task.kind, task.size, specimens, make_crowd(looks, task.size))
    html = fill_templates(DrawTask(pages, specimen_pictures(), task.templates))
    styles = StyleReader(parse_html(html), task.templates, page_count=len(pages))
    _refuse_by_name(task, specimens, styles)
    pdf = draw_html(html, specimen_pictures(), task.templates)
    frame = _measure(task, specimens, pdf)
    _refuse_by_ink(task, pages, pdf, frame)
    return frame


def _rank(look: Look) -> tuple[int, str]:
    """Put texts first: what is said of a whole card is named by one of them."""
    return list(_WORDS).index(type(look)), repr(look)


def _refuse_by_name(task: FrameTask, specimens: Sequence[Specimen], styles: StyleReader) -> None:
    for number, specimen in enumerate(specimens, start=1):
        asked = styles.asked(number, specimen.look)
        if asked:
            raise _refusal(task, specimen.look, "a slot keeps colours and outlines alone", asked)


def _refuse_by_ink(task: FrameTask, pages: Sequence[Page], pdf: bytes, frame: Frame) -> None:
    # The frame is filled with the very pages it was measured from.
    plated = plated_pages(pages, frame, draw_forms(task.templates, [SPECIMEN_MARK]))
    shaper = Shaper(shipped_fonts(FONTS_CONF.parent))
    for found in differences(pdf, plated, pages, shaper):
        reason = f"the template draws it otherwise than a slot can: {found.words}"
        raise _refusal(task, _look_at(found), reason)


def _look_at(found: Difference) -> Look | None:
    if found.block is None:
        return None
    return look_of(found.block, has_picture=has_picture(found.block, specimen_pictures()))


def _measure(task: FrameTask, specimens: Sequence[Specimen], pdf: bytes) -> Frame:
    with pikepdf.open(io.BytesIO(pdf)) as drawn:
        # One page more than specimens at either end: the empty one and the crowd.
        if len(drawn.pages) != len(specimens) + 2:
            reason = "what it draws does not stay on its page"
            raise _refusal(task, None, reason)
        inks = [read_ink(page) for page in drawn.pages]
        static = _static_of(task, drawn.pages[0])
    moulds = dict(task.known)
    for specimen, ink in zip(specimens, inks[1:-1], strict=True):
        mould = _mould_of(task, specimen, ink_of_block(ink, inks[0]))
        if moulds.setdefault(specimen.look, mould) != mould:
            raise _refusal(task, specimen.look, "two of one look are inked differently")
    sha256 = frames_sha256(task.templates)
    return Frame(task.kind, sha256, moulds, {task.size: static})


def _static_of(task: FrameTask, page: pikepdf.Page) -> StaticInk:
    try:
        return read_static(page, shipped_fonts(FONTS_CONF.parent))
    except UnkeepableInkError as error:
        raise _refusal(task, None, str(error)) from None


def _mould_of(task: FrameTask, specimen: Specimen, ink: Sequence[Inked]) -> Mould:
    try:
        return mould_of(specimen, ink)
    except UnkeepableInkError as error:
        raise _refusal(task, specimen.look, str(error)) from None


def _refusal(
    task: FrameTask, look: Look | None, reason: str, property_name: str = ""
) -> SlotRefusedError:
    element = f"{_WORDS[type(look)]} {look.purpose!r}" if look else "fixed part"
    template = f"{task.kind}/card.html"
    return SlotRefusedError(template, element=element, property_name=property_name, reason=reason)
