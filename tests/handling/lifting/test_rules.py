from __future__ import annotations

import re

from service.findings import CODES
from service.handling.lifting import RULES
from service.handling.rule import Evidence


def test_codes_are_unique_and_kebab_case() -> None:
    """Whoever looks a rule up finds one."""
    codes = [rule.code for rule in RULES]
    assert len(set(codes)) == len(codes)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", code) for code in codes)
    assert "over-weight-limit" in set(codes) & set(CODES)


def test_a_rule_names_its_source_or_says_that_there_is_none() -> None:
    """Published and remembered rules have a source, common practice has none."""
    assert all(bool(rule.source) == (rule.evidence is not Evidence.PRACTICE) for rule in RULES)
    assert all(rule.says.endswith(".") for rule in RULES)
