"""The marks of warnings as drawings within a page, the same that stand on the card."""

from __future__ import annotations

from functools import cache

from markupsafe import Markup

from service.render.task import TEMPLATES

_FOLDER = TEMPLATES / "pictograms"


@cache
def draw_mark(code: str) -> Markup:
    """Give the drawing of a mark; its words stand beside it, so it is hidden from readers aloud."""
    names = {path.stem: path for path in _FOLDER.glob("*.svg")}
    if code not in names:
        return Markup()
    drawing = names[code].read_text(encoding="utf-8").strip()
    # The drawings are our own files, no words of anybody.
    return Markup(drawing.replace("<svg ", '<svg class="mark" aria-hidden="true" ', 1))  # noqa: S704
