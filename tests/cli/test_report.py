"""Tests for how the command line speaks."""

from __future__ import annotations

import io
import json
from collections.abc import Iterator

import pytest
from rich.console import Console

from service.cli.report import (
    EXIT_CODES,
    count_findings,
    exit_code_of,
    findings_as_json,
    rules_as_json,
    show_error,
    show_file_error,
    show_findings,
    write_finding,
)
from service.errors import ConfigError, ContentsError, ServiceError, StockError
from service.findings import Finding, Where, make_finding
from service.handling.every_rule import list_rules
from service.sentence import Sentence

FINDINGS = [
    make_finding("no-photo", Where(object_number="1987.1"), Sentence("1987.1 has no photo.")),
    make_finding(
        "card-failed", Where(container_number="B-1"), Sentence("[Lid] card: does not fit.")
    ),
]


def _classes(base: type[ServiceError]) -> Iterator[type[ServiceError]]:
    yield base
    for child in base.__subclasses__():
        yield from _classes(child)


def test_every_error_has_an_exit_code() -> None:
    """Each class of the tree ends in a code that is not success."""
    for kind in _classes(ServiceError):
        assert any(base in EXIT_CODES for base in kind.__mro__)


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (ContentsError("x"), 2),
        (StockError("s", measure="m", reason="r"), 2),
        (ConfigError("s", reason="r"), 78),
        (ServiceError("x"), 5),
    ],
)
def test_codes_follow_the_tree(error: ServiceError, code: int) -> None:
    """The nearest base class decides the exit code."""
    assert exit_code_of(error) == code


def _shown(findings: list[Finding], most: int) -> str:
    stream = io.StringIO()
    show_findings(Console(file=stream, width=200), findings, most=most)
    return stream.getvalue()


def test_gravest_come_first_and_nothing_is_markup() -> None:
    """Errors are listed before notes; brackets in the text are printed as they are."""
    text = _shown(FINDINGS, 40)
    assert text.index("[Lid] card") < text.index("1987.1 has no photo")


def test_long_lists_are_cut_and_say_so() -> None:
    """Past the limit the rest is counted."""
    assert "1 more" in _shown(FINDINGS, 1)


def test_counts_and_json() -> None:
    """Findings are counted in words and given whole as JSON."""
    assert count_findings(FINDINGS) == "1 error, 1 note"
    assert count_findings([]) == "nothing to report"
    assert len(json.loads(findings_as_json(FINDINGS))["findings"]) == 2


def test_error_gives_advice() -> None:
    """An error is shown with its advice and gives its code."""
    stream = io.StringIO()
    assert show_error(Console(file=stream), ContentsError("Nothing [there].")) == 2
    assert "Nothing [there]." in stream.getvalue()


def test_a_file_that_cannot_be_used_is_named() -> None:
    """The reason stands behind it, and a name in brackets is no markup."""
    stream = io.StringIO()
    error = PermissionError(13, "Permission denied", "[red]/lids.pdf")
    assert show_file_error(Console(file=stream, width=200), error) == 2
    assert "[red]/lids.pdf: Permission denied." in stream.getvalue()


def test_rules_are_one_document() -> None:
    """Every rule stands in its group with code, sentence, evidence and source."""
    told = json.loads(rules_as_json())["groups"]
    assert [rule["code"] for group in told for rule in group["rules"]] == [
        rule.code for rule in list_rules()
    ]
    assert set(told[0]["rules"][0]) == {"code", "says", "evidence", "source"}


def test_a_finding_in_a_line() -> None:
    """What, where and what to do stand in one line for people."""
    finding = make_finding("no-photo", Where(container_number="B-1"), Sentence("1 has no photo."))
    assert write_finding(finding) == (
        "note B-1: 1 has no photo. Take a photo when the object is next handled."
    )
