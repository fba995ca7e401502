"""Every rule the product applies, in groups, with its sentence, its source and what backs it."""

from __future__ import annotations

from dataclasses import dataclass

from service.handling import cautions, checks, hazards, lifting, presume
from service.handling.hanging import rules as hanging_rules
from service.handling.packing import conflict_rules
from service.handling.packing import rules as packing_rules
from service.handling.rule import Rule


@dataclass(frozen=True, slots=True)
class RuleGroup:
    """Rules of one kind, under the heading they are listed with."""

    heading: str
    rules: tuple[Rule, ...]


RULE_GROUPS = (
    RuleGroup("Hazards", hazards.RULES),
    RuleGroup("Presumed hazards", presume.RULES),
    RuleGroup("Cautions", cautions.RULES),
    RuleGroup("Lifting", lifting.RULES),
    RuleGroup("To hang or to box", hanging_rules.RULES),
    RuleGroup("Packing", packing_rules.RULES),
    RuleGroup("Materials kept apart", conflict_rules.RULES),
    RuleGroup("Checks", checks.RULES),
)


def list_rules() -> tuple[Rule, ...]:
    """Give every rule, group by group."""
    return tuple(rule for group in RULE_GROUPS for rule in group.rules)


def name_evidence(rule: Rule) -> str:
    """Say in words what backs a rule: its source, or that it has none."""
    return f"{rule.evidence.value}: {rule.source}" if rule.source else rule.evidence.value
