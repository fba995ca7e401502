from __future__ import annotations

from datetime import date
from pathlib import Path

import pypdf
import pytest

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.rounds.isolation import IsolationWish, print_isolation
from tests.keeping.made import BOX, LEAD
from tests.store.made import STAMP


def words_of(path: Path) -> str:
    """Read a label."""
    (page,) = pypdf.PdfReader(path).pages
    return page.extract_text()


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_containers_objects_and_news_get_labels(desk: Desk) -> None:
    """Each with what the store knows of it; what has just come in says that nothing is known."""
    until = IsolationWish(BOX, "Pests found", date(2026, 11, 20), date(2026, 12, 4))
    box = words_of(print_isolation(desk, until, stamp=STAMP))
    assert all(text in box for text in ("ISOLATED", BOX, "20 Nov 2026", "4 Dec 2026"))
    assert "Pests found" in box
    assert "Ada Quill" in box
    lead = words_of(print_isolation(desk, IsolationWish(LEAD, is_incoming=True), stamp=STAMP))
    assert "Lead presumed" in lead
    assert "25 Nov 2026" in lead
    new = IsolationWish("E2561.1\a", "\u200b", is_incoming=True, paper="Letter")
    assert "Nothing is recorded" in words_of(print_isolation(desk, new, stamp=STAMP))


def test_a_slip_of_the_pen_is_refused(desk: Desk) -> None:
    """A number that nobody knows is told, unless it is said to be new."""
    with pytest.raises(NotFoundError, match="B-402"):
        print_isolation(desk, IsolationWish("B-402"), stamp=STAMP)
    with pytest.raises(NotFoundError):
        print_isolation(desk, IsolationWish("\u202e ", is_incoming=True), stamp=STAMP)
