from __future__ import annotations

import pytest

from service.render.frames.frame import Look
from service.render.frames.measure.properties import is_beyond_around, is_beyond_slot
from tests.render.frames import made

CASES: dict[str, tuple[str, str, Look, bool]] = {
    "colour": ("color", "#00f", made.TITLE, False),
    "place": ("left", "3mm", made.TITLE, False),
    "nothing-asked": ("letter-spacing", "normal", made.TITLE, False),
    "no-margin": ("margin", "0", made.TITLE, False),
    "margin": ("margin", "1mm", made.TITLE, True),
    "our-face": ("font-family", "atkinson hyperlegible next", made.TITLE, False),
    "other-face": ("font-family", "serif", made.TITLE, True),
    "figures": ("font-feature-settings", "tnum 1", made.TITLE, False),
    "hyphens-by-hand": ("hyphens", "manual", made.TITLE, False),
    "hyphens": ("hyphens", "auto", made.TITLE, True),
    "text-background": ("background", "#eee", made.TITLE, True),
    "shape-background": ("background", "#eee", made.PANEL, False),
    "shape-outline": ("outline", "1mm solid #000", made.PANEL, True),
    "picture-outline": ("outline", "1mm solid #000", made.PHOTO, False),
    "mark-border": ("border", "1mm solid #000", made.MARK, True),
    "unknown": ("no-such-property", "1mm", made.TITLE, True),
    "pseudo": ("::before", "none", made.TITLE, True),
}


@pytest.mark.parametrize(("name", "value", "look", "is_beyond"), CASES.values(), ids=CASES)
def test_what_a_slot_may_be_told(name: str, value: str, look: Look, *, is_beyond: bool) -> None:
    """Colours, outlines and what the page decides anyway; nothing else."""
    assert is_beyond_slot(name, value, look) is is_beyond


@pytest.mark.parametrize(
    ("name", "value", "is_beyond"),
    [
        ("letter-spacing", "1px", True),
        ("opacity", "0.5", True),
        ("opacity", "1", False),
        ("background", "#eee", False),
        ("padding", "5mm", False),
    ],
)
def test_what_reaches_in_from_around(name: str, value: str, *, is_beyond: bool) -> None:
    """What a slot inherits or is drawn through; the ground and edges around it are static ink."""
    assert is_beyond_around(name, value) is is_beyond
