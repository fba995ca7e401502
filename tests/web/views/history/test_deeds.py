from __future__ import annotations

from service.keeping.containers.history import Deed
from service.web.views.history.deeds import ChangedField, show_deed


def test_fields_are_told_in_the_words_of_the_form() -> None:
    """Only those that differ, as they would be typed."""
    detail = {
        "record": {
            "before": {"gross": {"weight_g": 7400.0}, "title": "Old"},
            "after": {"title": "New", "location": ["Store 1", "Bay 2"]},
        }
    }
    shown = show_deed(Deed("changed", "", None, detail))
    assert shown.fields == (
        ChangedField("title", "Old", "New"),
        ChangedField("location", "", "Store 1 / Bay 2"),
        ChangedField("gross_weight", "7.4 kg", ""),
    )


def test_other_deeds_change_no_field() -> None:
    """A card that was attached is told by itself."""
    assert show_deed(Deed("card attached", "", 1, {"kind": "lid-card"})).fields == ()
