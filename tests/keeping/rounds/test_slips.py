from __future__ import annotations

import pypdf
import pytest

from service.errors import NothingToDoError
from service.keeping.desk import Desk
from service.keeping.repack import Seen, take_out
from service.keeping.rounds.slips import print_slips
from service.store.kept.outs import Slip, note_out
from service.store.open import writing
from tests.keeping.made import BOX, COVER, GOWN, LEAD
from tests.store.made import LATER, STAMP


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_slip_is_printed_of_what_is_out(desk: Desk) -> None:
    """From where to whom; one that was unpacked since keeps its hazards."""
    with writing(desk.engine) as connection:
        outs = [
            note_out(connection, Slip(LEAD, BOX, (), "I. Hale", "to be drawn"), stamp=STAMP),
            note_out(connection, Slip(GOWN, COVER), stamp=STAMP),
        ]
        take_out(connection, Seen(BOX, 1), LEAD, stamp=LATER)
    (page,) = pypdf.PdfReader(print_slips(desk, outs)).pages
    words = page.extract_text()
    assert all(text in words for text in (LEAD, GOWN, BOX, COVER, "I. Hale", "to be drawn"))
    assert "Lead presumed" in words
    assert "Regatta gown" in words
    with pytest.raises(NothingToDoError):
        print_slips(desk, [])
