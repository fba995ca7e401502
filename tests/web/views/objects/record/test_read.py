from __future__ import annotations

from service.records.record import ObjectRecord, PhotoReference, Weight
from service.web.views.objects.record.read import Typed, gather_typed, read_object
from service.web.views.objects.record.values import HAZARD_FIELDS, write_values

WAS = ObjectRecord(
    "X.1",
    title="Net",
    weight=Weight(300.0),
    weight_text="ca. 300 g",
    photos=(PhotoReference("a.jpg"),),
    source={"no": "X.1"},
)


def test_a_form_becomes_fields_and_rows() -> None:
    """What was ticked is one list with what was typed beside it; unticked is no."""
    typed = gather_typed(
        [
            ("form_token", "t"),
            ("object_number", " X.1 "),
            ("cautions", "fragile"),
            ("cautions", "our own"),
            ("hazard_gone", "1"),
            *((f"hazard_{name}", "") for name in HAZARD_FIELDS),
            ("hazard_code", "lead"),
        ]
    )
    assert (typed.number, typed.gone) == ("X.1", frozenset({1}))
    assert typed.values["cautions"] == "fragile; our own"
    assert typed.values["restricted"] == "no"
    assert "form_token" not in typed.values
    assert len(typed.rows) == 1


def test_what_is_not_typed_stays() -> None:
    """Photos, source, and every field whose text is as it was shown."""
    values = write_values(WAS) | {"title": "Net needle"}
    read = read_object(Typed(values), was=WAS)
    assert read.record.title == "Net needle"
    assert (read.record.weight, read.record.photos) == (WAS.weight, WAS.photos)
    assert read.record.source == {"no": "X.1"}


def test_faults_stand_at_their_fields() -> None:
    """By the readers of spreadsheets; cautions in own words are none."""
    values = write_values(WAS) | {"weight": "12", "cautions": "our own", "catalogue_url": "www"}
    read = read_object(Typed(values), was=WAS)
    assert read.faults.keys() == {"weight", "catalogue_url"}
    assert read_object(Typed({"title": "Net"})).faults["object_number"] == "It needs a number."
