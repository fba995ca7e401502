from __future__ import annotations

import re

import pytest

from service.findings import CODES, Severity, Where, make_finding, worst_severity
from service.sentence import Sentence


@pytest.mark.parametrize("code", CODES)
def test_every_code_can_be_looked_up(code: str) -> None:
    """A code is words with hyphens, and its advice is a sentence."""
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", code)
    assert re.fullmatch(r"[A-Z].+[.]", CODES[code].advice)


def test_a_place_reads_as_a_person_looks_for_it() -> None:
    """File, row and column come first, then the container, then the object."""
    where = Where("objects.csv", 3, "title", object_number="1987.412.9", container_number="B-042")
    assert str(where) == "objects.csv, row 3, column title, B-042, 1987.412.9"
    assert not str(Where())


def test_a_finding_takes_what_the_catalogue_says() -> None:
    """Severity and advice come from the catalogue; other advice can be given."""
    found = make_finding("no-photo", Where(), Sentence("There is none."))
    assert (found.severity, found.advice) == (Severity.NOTE, CODES["no-photo"].advice)
    assert (
        make_finding("no-photo", Where(), Sentence("None."), advice=Sentence("Look.")).advice
        == "Look."
    )


@pytest.mark.parametrize(
    ("codes", "worst"),
    [
        ([], None),
        (["no-photo"], Severity.NOTE),
        (["no-photo", "photo-missing"], Severity.WARNING),
        (["photo-missing", "card-failed", "no-photo"], Severity.ERROR),
    ],
)
def test_the_worst_severity_counts(codes: list[str], worst: Severity | None) -> None:
    """One error outweighs any number of notes; nothing found has no severity."""
    assert (
        worst_severity(make_finding(code, Where(), Sentence("Found.")) for code in codes) is worst
    )
