from __future__ import annotations

import re

from service.handling.hanging.rules import RULES
from service.handling.rule import Evidence


def test_rules_say_what_backs_them() -> None:
    """Codes are kebab-case and unique; a published rule names its source, no other does."""
    codes = [rule.code for rule in RULES]
    assert len(set(codes)) == len(codes)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", code) for code in codes)
    assert all(rule.says.endswith(".") for rule in RULES)
    assert all(bool(rule.source) == (rule.evidence is Evidence.PUBLISHED) for rule in RULES)
