"""Faces on sheets: the finished PDF.

Every face is drawn once and placed by an exact matrix, however often it is printed. What stands in
the face's file beside its ink (links, actions, attachments, scripts, dates) is left behind: only
the ink is taken over. The same faces on the same sheets give the same bytes.
"""

from __future__ import annotations

import io
from collections.abc import Collection, Mapping, Sequence
from contextlib import ExitStack
from dataclasses import dataclass

import pikepdf
from pikepdf import Dictionary

from service.render.compose.place import box_pt, placed_matrix, stroke, written
from service.render.compose.share import share_pictures
from service.render.compose.tags import Figure, TagTree, describe_document
from service.sheets.impose import Placement, Sheet
from service.sheets.marks import MARK_WIDTH_MM
from service.units import points_from_mm


@dataclass(frozen=True, slots=True)
class DrawnFaces:
    """Faces as they were drawn: each page of `pdfs`, one file after another, is one face.

    `keys` names the faces in that order, as the placements do; `alts` gives the words of each, for
    whoever cannot see the page.
    """

    pdfs: tuple[bytes, ...]
    keys: tuple[str, ...]
    alts: tuple[str, ...]


def compose_sheets(faces: DrawnFaces, sheets: Sequence[Sheet], *, title: str) -> bytes:
    """Put faces on sheets and give the PDF, one page a sheet.

    Raises:
        KeyError: A placement names a face that was not drawn.
    """
    alts = dict(zip(faces.keys, faces.alts, strict=True))
    with ExitStack() as stack:
        out = stack.enter_context(pikepdf.new())
        forms = _take_faces(out, faces, _keys_on(sheets), stack)
        tags = TagTree(out)
        for sheet in sheets:
            page = _add_page(out, sheet, forms)
            tags.add_page(page, [_figure(placed, sheet, alts) for placed in sheet.placements])
        tags.write()
        share_pictures(forms.values())
        describe_document(out, title=title)
        return _saved(out)


def _keys_on(sheets: Sequence[Sheet]) -> set[str]:
    return {placement.key for sheet in sheets for placement in sheet.placements}


def _figure(placement: Placement, sheet: Sheet, alts: Mapping[str, str]) -> Figure:
    return Figure(alts[placement.key], box_pt(placement.rect, page=sheet.stock.page))


def _take_faces(
    out: pikepdf.Pdf, faces: DrawnFaces, wanted: Collection[str], stack: ExitStack
) -> dict[str, pikepdf.Object]:
    """Copy the ink of each wanted face, without what only its neighbours use.

    The sources stay open as long as `stack`: what was copied is read from them when it is saved.
    """
    forms: dict[str, pikepdf.Object] = {}
    keys = iter(faces.keys)
    for data in faces.pdfs:
        source = stack.enter_context(pikepdf.open(io.BytesIO(data)))
        source.remove_unreferenced_resources()
        for page, key in zip(source.pages, keys, strict=False):
            if key in wanted:
                forms[key] = out.copy_foreign(page.as_form_xobject())
    return forms


def _add_page(out: pikepdf.Pdf, sheet: Sheet, forms: Mapping[str, pikepdf.Object]) -> pikepdf.Page:
    size = sheet.stock.page
    page = out.add_blank_page(
        page_size=(points_from_mm(size.width_mm), points_from_mm(size.height_mm))
    )
    names = {key: f"F{number}" for number, key in enumerate(sorted(_keys_on([sheet])))}
    page.obj.Contents = out.make_stream(_content(sheet, names).encode("ascii"))
    page.obj.Resources = Dictionary(
        XObject=Dictionary({f"/{name}": forms[key] for key, name in names.items()})
    )
    return page


def _content(sheet: Sheet, names: Mapping[str, str]) -> str:
    """Write the page: each face in marked content of its own, then the marks."""
    page = sheet.stock.page
    lines: list[str] = []
    for number, placement in enumerate(sheet.placements):
        matrix = placed_matrix(placement.rect, page=page, turned_deg=placement.turned_deg)
        draw = f"q {written(matrix)} cm /{names[placement.key]} Do Q"
        lines.append(f"/Figure <</MCID {number}>> BDC\n{draw}\nEMC")
    if sheet.marks:
        strokes = "\n".join(stroke(mark.start, mark.end, page=page) for mark in sheet.marks)
        width = written([points_from_mm(MARK_WIDTH_MM)])
        lines.append(f"/Artifact BMC\nq {width} w 0 G\n{strokes}\nS Q\nEMC")
    return "\n".join(lines)


def _saved(out: pikepdf.Pdf) -> bytes:
    data = io.BytesIO()
    out.save(
        data,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        compress_streams=True,
    )
    return data.getvalue()
