from __future__ import annotations

import pytest

from service.findings import Severity
from service.handling.packing.report import name_some, report
from service.handling.packing.rules import OVERFILLED, PINS
from service.handling.rule import Evidence, Rule
from service.sentence import Sentence
from tests.handling.packing.made import pack, thing


@pytest.mark.parametrize(
    ("names", "words"),
    [
        (["a"], "a"),
        (["a", "b"], "a and b"),
        (["a", "b", "a"], "a and b"),
        (["a", "b", "c", "d", "e"], "a, b, c, d and e"),
        (["a", "b", "c", "d", "e", "f"], "a, b, c, d and 2 more"),
    ],
)
def test_names_are_few(names: list[str], words: str) -> None:
    """A sentence names the first few, and never counts a single one."""
    assert name_some(names) == words


def test_a_finding_says_what_backs_its_rule() -> None:
    """Published, usual and remembered rules are told apart."""
    made = pack(thing("1"))
    finding = report(PINS, made, Sentence("What."), packed=made.contents[0])
    assert (finding.code, finding.severity) == ("pins-in-textile", Severity.WARNING)
    assert str(finding.where) == "B-1, 1"
    assert finding.message == "What. Pins and staples are taken out of textiles."
    assert finding.advice.endswith("(Rule pins-in-textile: CCI Notes 13/5.)")
    finding = report(OVERFILLED, made, Sentence("What."))
    assert str(finding.where) == "B-1"
    assert finding.advice.endswith("(Rule overfilled: common practice, no source.)")
    remembered = Rule("some-rule", "Says.", Evidence.MEMORY)
    finding = report(remembered, made, Sentence("What."), code="overfilled")
    assert finding.advice.endswith("(Rule some-rule: from memory, no source seen.)")
