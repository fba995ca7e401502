"""Fits any card: the one door to the fit of each kind."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from service.cards.card import Card, CoverCard, EndLabel
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.asked.object_tag import fit_object_tag
from service.pages.asked.shoulder_tag import fit_shoulder_tag
from service.pages.asked.side_card import fit_side_card
from service.pages.asked.warning_label import fit_warning_label
from service.pages.contents_list import fit_contents_list
from service.pages.cover_card import fit_cover_card
from service.pages.end_label import fit_end_label
from service.pages.lid.card import fit_lid_card
from service.pages.page import Page
from service.pages.ruler import Ruler
from service.pages.setting.give_way import has_room, in_english, ways_to_speak


@dataclass(frozen=True, slots=True)
class Fitting:
    """What every fit needs besides card and size: the ruler and the width of the aisle."""

    ruler: Ruler
    aisle_distance_mm: float = 1500.0


def fit_card(card: Card, size: Size, fitting: Fitting) -> tuple[Page, ...]:
    """Lay a card out at a finished size, on as many pages as it needs.

    Words of a second language are left out where they would cost anything else. Raises
    `LayoutError` when a block is larger than a page, `SymbolError` when the QR symbol cannot be
    read at that size.
    """
    if card.head.second is None:
        return _fit(card, size, fitting)
    english = _fit(in_english(card), size, fitting)
    for spoken in ways_to_speak(card):
        with suppress(DoesNotFitError):
            both = _fit(spoken, size, fitting)
            if has_room(card, both, english):
                return both
    return english


def _fit(card: Card, size: Size, fitting: Fitting) -> tuple[Page, ...]:
    ruler = fitting.ruler
    if isinstance(card, EndLabel):
        return (fit_end_label(card, size, ruler, distance_mm=fitting.aisle_distance_mm),)
    if isinstance(card, CoverCard):
        return (fit_cover_card(card, size, ruler),)
    fit = _FITS[card.kind]
    return fit(card, size, ruler)


_Fit = Callable[[Any, Size, Ruler], tuple[Page, ...]]
_FITS: dict[str, _Fit] = {
    "lid-card": fit_lid_card,
    "side-card": fit_side_card,
    "contents-list": fit_contents_list,
    "warning-label": fit_warning_label,
    "shoulder-tag": fit_shoulder_tag,
    "object-tag": fit_object_tag,
}
"""The fit of each kind that needs no more than a ruler."""
