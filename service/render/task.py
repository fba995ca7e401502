"""What a process that draws is given: its task, and its environment before it starts.

Apart from the drawing itself, because the layout engine looks at its fonts as soon as it is
imported, and only a child has the environment that names ours.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from service.pages.page import Page
from service.render.context import Picture

TEMPLATES = Path(__file__).parents[2] / "templates"
FONTS_CONF = TEMPLATES / "fonts" / "fonts.conf"
SOURCE_DATE_EPOCH = "1767225600"
"""1 January 2026: one constant, so that equal pages give equal bytes."""
ENVIRONMENT = {"FONTCONFIG_FILE": str(FONTS_CONF), "SOURCE_DATE_EPOCH": SOURCE_DATE_EPOCH}
"""What a process that draws must have in its environment before it starts."""


@dataclass(frozen=True, slots=True)
class DrawTask:
    """Pages of one size to draw, with the pictures they name, by the templates of a folder."""

    pages: tuple[Page, ...]
    pictures: Mapping[str, Picture]
    templates: Path = TEMPLATES
