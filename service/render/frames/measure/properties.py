"""Which CSS properties a template may give to a slot, and which reach a slot from around it."""

from __future__ import annotations

from service.render.frames.frame import Look, PictureLook, ShapeLook
from service.render.pango import FAMILY


def _names(text: str) -> frozenset[str]:
    return frozenset(text.split())


_PLACED = _names(
    "position left top right bottom width height display box-sizing overflow break-after"
    " break-before break-inside font-size line-height font-weight text-align white-space direction"
    " unicode-bidi color"
)
"""What the page decides, and the colour: a template may repeat it for any slot."""
_BORDER = _names("border border-color border-style border-width")
_MORE: dict[type[Look], frozenset[str]] = {
    PictureLook: _BORDER | _names("outline outline-color outline-style outline-width"),
    ShapeLook: _BORDER | _names("background background-color border-radius"),
}
_REACHING = _names(
    "letter-spacing word-spacing text-transform text-indent text-decoration text-decoration-line"
    " text-shadow font font-family font-style font-variant font-variant-caps font-variant-numeric"
    " font-variant-ligatures font-stretch font-kerning font-feature-settings hyphens visibility"
    " writing-mode opacity transform rotate scale filter mix-blend-mode clip clip-path mask columns"
    " column-count column-width zoom"
)
_NEUTRAL = _names("0 0px 0mm none normal auto initial unset visible 1 manual")
_VALUES = {
    "font-family": frozenset({FAMILY.lower()}),
    "font-feature-settings": frozenset({"tnum 1", "tnum", "tnum on"}),
}


def is_beyond_slot(name: str, value: str, look: Look) -> bool:
    """Tell whether a slot of this look cannot keep a declaration; names and values in lower case.

    A name that begins with two colons is a pseudo-element's, which no slot has.
    """
    allowed = _PLACED | _MORE.get(type(look), frozenset())
    return name.startswith("::") or (name not in allowed and not _is_plain(name, value))


def is_beyond_around(name: str, value: str) -> bool:
    """Tell whether a declaration for an element around a slot changes the slot."""
    return name in _REACHING and not _is_plain(name, value)


def _is_plain(name: str, value: str) -> bool:
    if (name, value) == ("hyphens", "auto"):
        return False
    return value in _NEUTRAL or value in _VALUES.get(name, frozenset())
