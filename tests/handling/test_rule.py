from __future__ import annotations

from service.handling.rule import Evidence, Rule


def test_a_rule_without_a_source_is_no_published_one() -> None:
    """What backs a rule is said in words that can be printed beside it."""
    rule = Rule("heavy-low", "Heavy things lie at the bottom.", Evidence.PRACTICE)
    assert (rule.evidence, rule.source) == ("common practice", "")
