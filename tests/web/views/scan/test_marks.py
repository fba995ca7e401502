from __future__ import annotations

from service.cards.compose.warn import outside_words
from service.handling.hazards import HAZARDS
from service.records.record import Hazard, HazardState
from service.web.views.scan.marks import draw_mark


def test_every_hazard_has_its_drawing() -> None:
    """The words stand beside it, so it is not read aloud; a mark nobody drew gives nothing."""
    for code in HAZARDS:
        entry, _ = outside_words(Hazard(code, HazardState.CONFIRMED))
        assert 'aria-hidden="true"' in draw_mark(entry.mark)
        assert "style=" not in draw_mark(entry.mark)
    assert draw_mark("../secret") == ""
