from __future__ import annotations

import re

from service.handling.checks import RULES
from service.handling.rule import Evidence


def test_every_rule_is_found_by_its_code() -> None:
    """Codes are unique and plain; a published rule names where, another claims no source."""
    codes = [rule.code for rule in RULES]
    assert len(set(codes)) == len(codes)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", code) for code in codes)
    assert all(bool(rule.source) is (rule.evidence is Evidence.PUBLISHED) for rule in RULES)
    assert all(rule.says.endswith(".") for rule in RULES)
