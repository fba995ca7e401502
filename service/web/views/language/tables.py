"""Words of pages that stand in no code as words: codes that are spelt out, and whole tables."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.kinds import CARD_KINDS
from service.cards.second.phrases import list_entries
from service.findings import Severity
from service.handling.checks.kinds import CheckKind, CheckResult
from service.handling.every_rule import RULE_GROUPS
from service.handling.hazards import STATE_WORDS
from service.handling.rule import Evidence
from service.records.codes import HANG_FACTOR_CODES
from service.records.museum.region import Region
from service.records.record import ContainerKind, HazardState, Lid, PhotoRole
from service.sheets.own_stock import NEEDED, OPTIONAL
from service.store.people.role import Role
from service.web.replies.problems import list_problems

DEEDS = (
    *("recorded", "changed", "packed", "moved", "put in", "taken out", "brought back"),
    *("taken out against a slip", "checked", "check taken back", "hazard not found"),
    *("photo brought", "photo taken back", "photos put in order", "photo turned"),
    *("photo cropped", "photo shown whole again", "photo printed again", "photo kept off cards"),
    *("photo removed", "photo put back", *(f"photo is {role.value}" for role in PhotoRole)),
)
"""What history says was done, where no page has a sentence of its own for it."""


def spell(code: str) -> str:
    """Write a code as words, as it would begin a sentence."""
    words = code.replace("-", " ").replace("_", " ")
    return words[:1].upper() + words[1:]


def list_table_words() -> Iterator[str]:
    """List them, each as pages ask for it."""
    for codes in (
        ContainerKind,
        HazardState,
        Lid,
        PhotoRole,
        Severity,
        CheckKind,
        CheckResult,
        HANG_FACTOR_CODES,
        [kind.code for kind in CARD_KINDS],
        DEEDS,
        list_problems(),
    ):
        yield from map(spell, codes)
    yield from (role.value for role in Role)
    for measure in (*NEEDED, *OPTIONAL):
        yield measure.replace("_", " ")
    for group in RULE_GROUPS:
        yield group.heading
        yield from (rule.says for rule in group.rules)
    yield from (evidence.value for evidence in Evidence)
    yield from (words.capitalize() for words in STATE_WORDS.values())
    for entry in list_entries():
        yield from dict.fromkeys(entry.consult.in_region(region) for region in Region)
