from __future__ import annotations

from service.handling.checks.kinds import LOOKED_AT
from service.pages.rounds.spelling import spell_paper
from tests.cards.papers.made import LEAD, row_of, sheet_of
from tests.pages.made import PLAIN


def test_every_text_of_a_paper_is_printable() -> None:
    """In tuples and in parts of parts; everything else stays what it is."""
    row = row_of(LEAD, number="B-\U00010900")
    spelled = spell_paper(PLAIN, row)
    assert spelled.container_number == "B-[U+10900]"
    assert (spelled.asked, spelled.handling) == (LOOKED_AT, row.handling)
    sheet = sheet_of(2, LEAD)
    assert spell_paper(PLAIN, sheet) == sheet
