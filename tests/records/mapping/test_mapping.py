from __future__ import annotations

from service.records.mapping.mapping import fields_of, units_of
from tests.records.mapping.made import MAPPING


def test_a_mapping_knows_its_own_headings_alone() -> None:
    """A heading that our tables know means nothing where the mapping does not name it."""
    columns = MAPPING.columns
    assert columns.find("inventarnummer") == "object_number"
    assert columns.find("title") is None
    assert "notiz" in columns.ignored


def test_the_set_of_headings_knows_no_order_and_no_case() -> None:
    """What is used and what is ignored count alike."""
    wanted = {"inventarnummer", "benennung", "höhe", "breite", "gewicht", "notiz"}
    assert MAPPING.heading_set == wanted


def test_only_what_is_measured_has_units() -> None:
    """Lengths and masses differ, and single measures are for objects alone."""
    assert units_of("height") == units_of("lid_size") == ("mm", "cm", "m", "in", "ft")
    assert "kg" in units_of("gross_weight")
    assert units_of("title") == ()
    assert "height" in fields_of("objects")
    assert "height" not in fields_of("containers")
