from __future__ import annotations

from service.findings import CODES, Severity
from service.handling.packing.check import check_packing
from service.records.codes import PACKING_CHECK_CODES
from tests.handling.packing.made import found, pack, thing

MADE = pack(thing("1", "wool"), thing("2", "silver"), packing_materials=("bubble wrap",))


def test_single_checks_can_be_turned_off() -> None:
    """What the museum does not want is left out, and nothing else."""
    assert found(MADE) == [("conflicting-materials", "1"), ("temporary-material", "")]
    left = check_packing(MADE, off=["conflicting-materials"])
    assert [finding.code for finding in left] == ["temporary-material"]
    assert check_packing(MADE, off=PACKING_CHECK_CODES) == ()


def test_every_check_is_in_the_catalogue() -> None:
    """Each code that can be turned off is a warning of the catalogue."""
    assert {CODES[code].severity for code in PACKING_CHECK_CODES} == {Severity.WARNING}


def test_an_empty_container_is_not_judged() -> None:
    """There is nothing to pack badly."""
    assert found(pack()) == []
