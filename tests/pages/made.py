"""Cards made by hand and fitted, for tests that look at pages."""

from __future__ import annotations

from service.cards.compose.asked.object_tag import compose_object_tags
from service.cards.compose.asked.shoulder_tag import compose_shoulder_tag
from service.cards.compose.asked.side_card import compose_side_card
from service.cards.compose.asked.warning_label import compose_warning_label
from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.cover_card import compose_cover_card
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.contents.packing import Packing
from service.geometry import Size
from service.pages.fit import Fitting, fit_card
from service.pages.page import Page
from service.pages.ruler import Ruler
from tests.contents.made import MUSEUM
from tests.pages.fake_ruler import FakeRuler

PLAIN = FakeRuler()


def warning_pages(made: Packing, size: Size, ruler: Ruler = PLAIN) -> tuple[Page, ...]:
    """Fit the warning labels of a packing."""
    return fit_card(compose_warning_label(made, MUSEUM), size, Fitting(ruler))


def side_pages(made: Packing, size: Size, ruler: Ruler = PLAIN) -> tuple[Page, ...]:
    """Fit the side card of a packing."""
    return fit_card(compose_side_card(made, MUSEUM), size, Fitting(ruler))


def shoulder_pages(made: Packing, size: Size, ruler: Ruler = PLAIN) -> tuple[Page, ...]:
    """Fit the shoulder tag of a packing."""
    return fit_card(compose_shoulder_tag(made, MUSEUM), size, Fitting(ruler))


def tag_pages(made: Packing, size: Size, ruler: Ruler = PLAIN) -> tuple[Page, ...]:
    """Fit the tag of the first object of a packing."""
    return fit_card(compose_object_tags(made, MUSEUM)[0], size, Fitting(ruler))


def lid_pages(made: Packing, size: Size, ruler: Ruler = PLAIN) -> tuple[Page, ...]:
    """Fit the lid card of a packing."""
    return fit_card(compose_lid_card(made, MUSEUM), size, Fitting(ruler))


def list_pages(made: Packing, size: Size, ruler: Ruler = PLAIN) -> tuple[Page, ...]:
    """Fit the contents list of a packing."""
    return fit_card(compose_contents_list(made, MUSEUM), size, Fitting(ruler))


def cover_page(made: Packing, size: Size, ruler: Ruler = PLAIN) -> Page:
    """Fit the cover card of a packing."""
    return fit_card(compose_cover_card(made, MUSEUM), size, Fitting(ruler))[0]


def end_page(
    made: Packing, size: Size, ruler: Ruler = PLAIN, *, distance_mm: float = 1500.0
) -> Page:
    """Fit the first end label of a packing."""
    label = compose_end_labels(made, MUSEUM)[0]
    return fit_card(label, size, Fitting(ruler, distance_mm))[0]
