from __future__ import annotations

import re

from service.handling.packing.rules import RULES
from service.handling.rule import Evidence
from service.records.codes import PACKING_CHECK_CODES


def test_rules_say_what_backs_them() -> None:
    """Codes are kebab-case and unique; a published rule names its source, no other does."""
    codes = [rule.code for rule in RULES]
    assert len(set(codes)) == len(codes)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", code) for code in codes)
    assert all(rule.says.endswith(".") for rule in RULES)
    assert all(bool(rule.source) == (rule.evidence is Evidence.PUBLISHED) for rule in RULES)


def test_every_check_has_its_rule() -> None:
    """A code that a museum can turn off is a rule's own, but for conflicts and hanging."""
    others = {"unsuitable-hanger", "glassine-with-photographs", "metal-beside-textile"}
    own = {rule.code for rule in RULES} - others
    assert set(PACKING_CHECK_CODES) == own | {"conflicting-materials", "hung-against-advice"}
