from __future__ import annotations

from service.records.museum.region import Region


def test_museums_write_regions_in_small_letters() -> None:
    """What stands in museum.toml is what the table of consultants is keyed by."""
    assert [region.value for region in Region] == ["uk", "us", "elsewhere"]
