"""Words a finding from the rule it comes from: what, why, what to do, and what backs it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from service.contents.packing import PackedObject, Packing
from service.findings import CODES, Finding, Where, make_finding
from service.handling.rule import Evidence, Rule
from service.sentence import Sentence, join_sentences

_NAMED = 4
"""How many numbers a sentence names; the others are counted."""


@dataclass(frozen=True, slots=True)
class Known:
    """What is known beside a packing: the day, where dates matter, and the cards fixed to it.

    `cards_on` holds codes of kinds of card. Without a day no date is judged.
    """

    today: date | None = None
    cards_on: frozenset[str] = frozenset()


def report(
    rule: Rule | tuple[Rule, ...],
    packing: Packing,
    what: Sentence,
    *,
    packed: PackedObject | None = None,
    code: str = "",
) -> Finding:
    """Make the finding of one or more rules; its code is the rule's own where none is named."""
    rules = rule if isinstance(rule, tuple) else (rule,)
    code = code or rules[0].code
    where = Where(
        container_number=packing.container.container_number,
        object_number=packed.record.object_number if packed else "",
    )
    backing = "; ".join(f"{each.code}: {_back(each)}" for each in rules)
    advice = Sentence(
        "{advice} (Rule {backing}.)", advice=Sentence(CODES[code].advice), backing=backing
    )
    message = join_sentences(what, *(one.says for one in rules))
    return make_finding(code, where, message, advice=advice)


def name_some(names: Sequence[str]) -> str:
    """Name the first few and count the others."""
    told = list(dict.fromkeys(names))
    if len(told) > _NAMED + 1:
        some, more = ", ".join(told[:_NAMED]), len(told) - _NAMED
        return Sentence("{some} and {more} more", some=some, more=more)
    if len(told) == 1:
        return told[0]
    return Sentence("{some} and {last}", some=", ".join(told[:-1]), last=told[-1])


def _back(rule: Rule) -> str:
    if rule.evidence is Evidence.PUBLISHED:
        return rule.source
    if rule.evidence is Evidence.MEMORY:
        return "from memory, no source seen"
    return "common practice, no source"
