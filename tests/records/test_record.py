from __future__ import annotations

from service.records.record import HazardState, ObjectRecord, Weight, WeightBasis


def test_no_state_of_a_hazard_means_harmless() -> None:
    """A hazard is confirmed, presumed or unchecked; nothing says that a thing does no harm."""
    assert set(HazardState) == {"confirmed", "presumed", "unchecked"}


def test_source_does_not_tell_records_apart() -> None:
    """Two records that say the same are equal, whatever row they came from."""
    one = ObjectRecord("1954.3", weight=Weight(5.0), source={"a": "1"})
    other = ObjectRecord("1954.3", weight=Weight(5.0, WeightBasis.MEASURED), source={"b": "2"})
    assert one == other
    assert hash(one) == hash(other)
