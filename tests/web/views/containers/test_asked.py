from __future__ import annotations

from service.keeping.containers.conflict import Conflict
from service.records.record import PackingRecord
from service.store.packing.differ import Repacking
from service.web.views.containers.asked import Asked, Trouble
from service.web.views.shell.forms import FilledForm


def test_an_address_says_what_differs_from_the_usual() -> None:
    """So that it is short, and reads back to the same."""
    assert Asked().page("A/1") == "/containers/A/1"
    asked = Asked("k1", arrange=True, card="end-label", side=2, focus="up-k1", layer=3, begin=101)
    assert asked.page("B-1") == (
        "/containers/B-1?open=k1&arrange=yes&card=end-label&side=2&focus=up-k1&layer=3&begin=101"
    )


def test_a_conflict_has_a_status_of_its_own() -> None:
    """Everything else is a form to look at again."""
    packing, same = PackingRecord("B-1"), Repacking((), {})
    conflict = Conflict(packing, packing, packing, same, same, ())
    assert Trouble("/x", FilledForm(), conflict=conflict).status == 409
    assert Trouble("/x", FilledForm()).status == 422
