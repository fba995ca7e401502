"""Tests for the swap list of a store."""

from __future__ import annotations

import pypdf
import pytest

from service.errors import ContentsError
from service.keeping.desk import Desk
from service.keeping.repack import Seen, put_in
from service.keeping.swap_list import print_swaps
from service.records.record import PlaceRecord
from service.store.open import writing
from tests.keeping.made import BOX, attach_all
from tests.store.made import LATER


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_what_is_wrong_is_on_paper(desk: Desk) -> None:
    """Old and new letters, the reason and who printed it; a hidden location stays hidden."""
    with writing(desk.engine) as connection:
        attach_all(connection, desk.workshop.ruler, BOX)
    with pytest.raises(ContentsError):
        print_swaps(desk, stamp=LATER)
    with writing(desk.engine) as connection:
        put_in(connection, Seen(BOX, 1), PlaceRecord("X.112"), stamp=LATER)
    words = pypdf.PdfReader(print_swaps(desk, stamp=LATER)).pages[0].extract_text()
    assert "4 cards" in words
    assert "X.112 added" in words
    assert "25 Nov 2026, Ben Marl" in words
    assert "Bay 4" not in words
