from __future__ import annotations

from dataclasses import replace
from datetime import date

import pypdf
import pytest

from service.errors import NothingToDoError
from service.keeping.desk import Desk
from service.keeping.rounds.check_sheet import SheetWish, print_sheet
from service.records.record import Collection
from service.store.kept.checks import IN_ORDER, Check, save_check
from service.store.kept.outs import Slip, note_out
from service.store.open import writing
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, COVER, LEAD
from tests.store.made import LATER, STAMP

SHOWN = replace(COLLECTION.museum, show_location=True)


def words_of(desk: Desk, wish: SheetWish) -> str:
    """Print a sheet and read it."""
    return " ".join(
        page.extract_text() for page in pypdf.PdfReader(print_sheet(desk, wish, stamp=LATER)).pages
    )


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_what_is_due_is_on_paper(desk: Desk) -> None:
    """Both containers, who walks, what is away; a hidden place stays hidden."""
    with writing(desk.engine) as connection:
        note_out(connection, Slip(LEAD, BOX, due_back=date(2026, 12, 1)), stamp=STAMP)
    words = words_of(desk, SheetWish())
    assert words.index(BOX) < words.index(COVER)
    assert "25 Nov 2026, Ben Marl" in words
    assert f"Out: {LEAD} (slip 1), due back 1 Dec 2026" in " ".join(words.split())
    assert "Lead presumed" in words
    assert "Bay 4" not in words
    assert "Places are hidden" in words


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_places_stand_where_the_museum_says_so(desk: Desk) -> None:
    """In walking order, with what is due within some days if that is asked for."""
    with writing(desk.engine) as connection:
        save_records(connection, Collection(museum=SHOWN), stamp=STAMP)
        for number in (BOX, COVER):
            save_check(connection, Check(number, STAMP.at.date(), "", STAMP, IN_ORDER))
    with pytest.raises(NothingToDoError, match="Nothing is due"):
        print_sheet(desk, SheetWish(), stamp=LATER)
    words = words_of(desk, SheetWish(within_days=365, paper="Letter"))
    assert "Store 2, Bay 4" in words
    assert "due by 25 Nov 2027" in words
    assert "Checked 25 Nov 2026" in words
