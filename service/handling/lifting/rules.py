"""The rules behind the advice on lifting, each with what backs it."""

from __future__ import annotations

from service.handling.lifting import hse, niosh, team
from service.handling.rule import Evidence, Rule

_PRACTICE = Evidence.PRACTICE
_PUBLISHED = Evidence.PUBLISHED

RULES: tuple[Rule, ...] = (
    Rule(
        "lift-first-filter",
        "Figures for lifting say when to look further; local assessment decides, and nothing is"
        " permitted by them.",
        _PUBLISHED,
        hse.SOURCE,
    ),
    Rule(
        "lift-weigh-first",
        "A weight that is unknown, estimated or only partly known asks to be weighed first.",
        _PRACTICE,
    ),
    Rule(
        "lift-zones",
        "How high and how far from the body the hands are decides the figure; of several zones the"
        " smallest figure counts.",
        _PUBLISHED,
        hse.SOURCE,
    ),
    Rule(
        "lift-zone-heights",
        "Zones begin at 300, 825, 930 and 1215 mm, so that they are right or too harsh for short"
        " and tall people.",
        Evidence.MEMORY,
        'British adults in Pheasant, "Bodyspace"',
    ),
    Rule(
        "lift-close",
        "A container of up to 400 mm from front to back is held close to the body; one of unknown"
        " size is not.",
        _PRACTICE,
    ),
    Rule(
        "lift-twist-often",
        "Twisting takes 10 or 20 % off a figure, lifting often 30, 50 or 80 %.",
        _PUBLISHED,
        hse.SOURCE,
    ),
    Rule(
        "lift-harsher-between",
        "Between the published rates the next harsher one counts, and twisting and lifting often"
        " are multiplied.",
        _PRACTICE,
    ),
    Rule(
        "lift-team",
        "Two people lift two thirds of the sum of what each could lift alone, three people half of"
        " it; more are not a plan.",
        _PUBLISHED,
        team.SOURCE,
    ),
    Rule(
        "lift-equation",
        "The recommended weight limit is the load constant times six multipliers; of both ends of"
        " a lift the lower counts.",
        _PUBLISHED,
        niosh.SOURCE,
    ),
    Rule(
        "over-weight-limit",
        "A container weighs no more than the limit its museum sets for it.",
        _PRACTICE,
    ),
)
