from __future__ import annotations

import pytest

from service.findings import Where
from service.records.museum.lifting import (
    USUAL_LIFTING,
    Duration,
    FilterColumn,
    LiftingChoices,
    LiftMethod,
)
from service.records.museum.read_lifting import read_lifting
from service.records.rows.notebook import Notebook


def read(values: object) -> tuple[LiftingChoices, list[tuple[str, str]]]:
    """Read a group of choices; give it with place and message of each finding, all errors."""
    notebook = Notebook()
    where = Where(file="museum.toml", column="lifting")
    choices = read_lifting(values, where=where, notebook=notebook)
    found = notebook.findings()
    assert {(one.code, one.severity.value) for one in found} <= {("lifting-choice", "error")}
    return choices, [(one.where.column, one.message) for one in found]


def test_every_choice_is_read() -> None:
    """Words, numbers and weights come to their fields, pounds as well."""
    choices, found = read(
        {
            "method": "niosh",
            "column": "higher",
            "twist_deg": 60,
            "lifts_per_min": 1.5,
            "duration": "long",
            "not_high_above": "2 kg",
            "waist_above": "6 kg",
            "two_people_above": "20 lb",
            "aid_above": "20 kg",
        }
    )
    assert choices == LiftingChoices(
        method=LiftMethod.NIOSH,
        column=FilterColumn.HIGHER,
        twist_deg=60.0,
        lifts_per_min=1.5,
        duration=Duration.LONG,
        not_high_above_kg=2.0,
        waist_above_kg=6.0,
        two_people_above_kg=9.071847,
        aid_above_kg=20.0,
    )
    assert found == []


def test_nothing_said_is_usual() -> None:
    """An empty group changes nothing."""
    assert read({}) == (USUAL_LIFTING, [])


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("method", "guess"),
        ("method", 1),
        ("column", "women"),
        ("duration", "all day"),
        ("twist_deg", -1),
        ("twist_deg", 181),
        ("twist_deg", True),
        ("lifts_per_min", "1.5"),
        ("lifts_per_min", float("nan")),
        ("lifts_per_min", 61),
        ("two_people_above", 12),
        ("two_people_above", "13"),
        ("two_people_above", "about 12 kg"),
        ("two_people_above", "0 kg"),
        ("two_people_above", "-2 kg"),
        ("two-people-above", "12 kg"),
        ("heavy", "12 kg"),
    ],
)
def test_what_cannot_be_used_is_an_error(name: str, value: object) -> None:
    """It is named with its place, and the usual choice stands."""
    choices, found = read({name: value})
    assert choices == USUAL_LIFTING
    assert [column for column, _ in found] == [f"lifting/{name}"]


def test_what_is_wrong_is_said() -> None:
    """A message quotes what was written and says what would do."""
    assert read({"column": "women"})[1] == [
        ("lifting/column", "“women” is not one of lower, higher.")
    ]
    assert read({"aid_above": 12})[1] == [
        ("lifting/aid_above", '“12” is not a weight with its unit, such as "12 kg".')
    ]


def test_a_group_is_needed() -> None:
    """One word where a group should stand is an error."""
    assert read("hse") == (USUAL_LIFTING, [("lifting", "A group of choices should stand here.")])


def test_weights_must_rise() -> None:
    """Own weights of which a graver advice would begin first are refused together."""
    choices, found = read({"method": "niosh", "two_people_above": "26 kg"})
    assert choices == LiftingChoices(method=LiftMethod.NIOSH)
    words = "The weights do not rise from not_high_above to aid_above: 3, 7, 26, 25 kg."
    assert found == [("lifting", words)]
    assert read({"two_people_above": "25 kg"})[1] == []
