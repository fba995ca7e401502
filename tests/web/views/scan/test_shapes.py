from __future__ import annotations

from service.cards.standing import Answer, Standing
from service.keeping.scan import NewestCard, ScanAnswer
from service.keeping.scan.inside import Inside
from service.web.views.scan.shapes import show_answer


def test_programs_read_all_that_the_page_tells() -> None:
    """The newest cards, and contents and location where they are opened."""
    answer = ScanAnswer(
        "B-1",
        Standing(Answer.CURRENT, "It holds."),
        newest=(NewestCard("Lid card", 3, "KMTF"),),
        inside=Inside("Store 2", (("X.1", "Lamp"),), 1),
    )
    shown = show_answer(answer)
    assert (shown.answer, shown.sentence) == (Answer.CURRENT, "It holds.")
    assert [(one.kind, one.revision, one.letters) for one in shown.newest] == [
        ("Lid card", 3, "KMTF")
    ]
    assert (shown.location, shown.contents[0].title) == ("Store 2", "Lamp")
    assert not shown.is_tag
