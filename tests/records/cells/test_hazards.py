from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from service.records.cells.hazards import read_hazards, split_hazard
from service.records.record import Hazard, HazardState
from service.records.rows.cell import Cell

CONFIRMED, PRESUMED, UNCHECKED = HazardState


def test_every_field_of_a_hazard_is_read(make_cell: Callable[[str], Cell]) -> None:
    """Note, method, day, person and review each come to their own field."""
    cell = make_cell(
        "lead: confirmed, bare metal, white bloom, method XRF, on 2024-03-12, by R. Vane,"
        " review 2027-03-12; arsenic: presumed"
    )
    assert read_hazards(cell) == (
        Hazard(
            code="lead",
            state=CONFIRMED,
            note="bare metal, white bloom",
            method="XRF",
            checked_on=date(2024, 3, 12),
            checked_by="R. Vane",
            review_on=date(2027, 3, 12),
        ),
        Hazard("arsenic", PRESUMED),
    )
    assert cell.notebook.findings() == ()


@pytest.mark.parametrize(
    ("text", "hazard", "codes"),
    [
        ("Mercury Liquid: PRESUMED", Hazard("mercury-liquid", PRESUMED), []),
        ("asbestos, confirmed", Hazard("asbestos", CONFIRMED), []),
        ("asbestos", Hazard("asbestos", UNCHECKED), ["unknown-hazard-state"]),
        ("lead: maybe", Hazard("lead", UNCHECKED, "maybe"), ["unknown-hazard-state"]),
        ("toxic thing: presumed", Hazard("toxic thing", PRESUMED), ["unknown-hazard"]),
        ("unknown", Hazard("unknown", UNCHECKED), ["unknown-hazard", "unknown-hazard-state"]),
        (
            "lead: confirmed, on 31/02/2024",
            Hazard("lead", CONFIRMED, "on 31/02/2024"),
            ["unreadable-date"],
        ),
        ("lead: confirmed, on the keel", Hazard("lead", CONFIRMED, "on the keel"), []),
    ],
)
def test_untidy_hazard_is_kept(
    make_cell: Callable[[str], Cell], text: str, hazard: Hazard, codes: list[str]
) -> None:
    """Nothing written about a hazard is lost, and doubt counts as unchecked."""
    cell = make_cell(text)
    assert read_hazards(cell) == (hazard,)
    assert [finding.code for finding in cell.notebook.findings()] == codes


@pytest.mark.parametrize("text", ["none", "N/A", "None known", "-"])
def test_word_for_no_hazard_is_noted(make_cell: Callable[[str], Cell], text: str) -> None:
    """A record that says there is no hazard is no hazard, and no promise either."""
    cell = make_cell(text)
    assert read_hazards(cell) == ()
    assert [finding.code for finding in cell.notebook.findings()] == ["no-hazard-claimed"]


def test_second_method_goes_to_the_note() -> None:
    """A leading word that comes twice does not replace the first value."""
    fields = split_hazard("lead: confirmed, method XRF, method swab")
    assert (fields["method"], fields["note"]) == ("XRF", "method swab")
