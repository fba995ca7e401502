"""Assesses from a record whether a garment is hung, laid flat or rolled, and says why.

Advice is never permission: it repeats published guidance on what is recorded, and a person who
looks at the garment decides. A record that is silent stays unknown.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from service.handling.hanging import rules
from service.handling.lifting import format_kg
from service.handling.materials import object_material
from service.handling.phrases import find_clause, find_phrase
from service.handling.rule import Rule
from service.printed import to_print
from service.records.record import ObjectRecord


class HangWay(StrEnum):
    """How a garment or flat textile is kept."""

    HANG_PADDED = "hang padded"
    HANG_WITH_TAPES = "hang with waist tapes"
    BOX_FLAT = "box flat"
    ROLL = "roll"
    UNKNOWN = "unknown"


WORDS = {
    HangWay.HANG_PADDED: to_print("Hang on a padded hanger: support the hem"),
    HangWay.HANG_WITH_TAPES: to_print("Hang padded with waist tapes: support the hem"),
    HangWay.BOX_FLAT: to_print("Do not hang, lay flat in a box"),
    HangWay.ROLL: to_print("Do not hang, roll it, right side out"),
    HangWay.UNKNOWN: to_print("No advice recorded: ask before hanging"),
}

HEAVY_G = 3000.0
"""From what weight a garment counts as heavy where no factor says so (common practice, no source).

A winter coat weighs about as much.
"""
LARGE_MM = 1000.0
"""From what side a flat textile is large (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class HangAdvice:
    """How to keep it, in words for a card, with short reasons and the rules they come from."""

    way: HangWay
    words: str
    reasons: tuple[str, ...] = ()
    rules: tuple[Rule, ...] = ()


_FLAT_BY_FACTOR = {
    "weak-shoulders": (rules.WEAK_SHOULDERS, to_print("weak shoulders")),
    "beads": (rules.BEADS, to_print("beads")),
    "knit": (rules.KNIT, to_print("knitted")),
    "bias-cut": (rules.BIAS, to_print("bias cut")),
    "stretch": (rules.STRETCH, to_print("stretches")),
    "thin-straps": (rules.STRAPS, to_print("thin straps")),
}
_FORBIDDEN = {"do-not-hang": to_print("do not hang"), "keep-flat": to_print("keep flat")}
_WEAK = (
    "weak shoulders",
    "shoulders weak",
    "weak shoulder",
    "shoulder weak",
    "shoulder seams weak",
    "shoulder seams split",
    "split shoulder seam",
)
_FRAIL = ("shattered", "shattering", "frail", "very fragile")
_SKIRTED = ("dress", "gown", "skirt", "petticoat", "robe", "crinoline")
_FLAT_TEXTILES = (
    "flag", "banner", "carpet", "rug", "tapestry", "wall hanging", "curtain", "quilt", "coverlet",
    "bedspread", "tablecloth", "sail", "blanket",
)  # fmt: skip

_Reason = tuple[Rule, str]


def assess_hanging(record: ObjectRecord) -> HangAdvice:
    """Advise from the recorded cautions, hang factors, materials, size, weight and condition.

    What speaks against hanging wins over what speaks for it, whatever the record says of the
    shoulders; only lace and wool give way to shoulders that are recorded as sound.
    """
    if flat := tuple(_reasons_for_flat(record)):
        return _advise(HangWay.BOX_FLAT, flat)
    if _is_large_and_flat(record):
        return _advise(HangWay.ROLL, ((rules.ROLL, to_print("large flat textile")),))
    if hung := _reasons_for_tapes(record):
        return _advise(HangWay.HANG_WITH_TAPES, (*hung, *_sound(record)))
    if sound := _sound(record):
        heavy = _say_heavy(record)
        said = (*sound, (rules.PADDED, heavy)) if heavy else sound
        return _advise(HangWay.HANG_PADDED, said)
    return HangAdvice(HangWay.UNKNOWN, WORDS[HangWay.UNKNOWN], (), (rules.UNKNOWN,))


def _advise(way: HangWay, reasons: tuple[_Reason, ...]) -> HangAdvice:
    said = dict.fromkeys(words for _, words in reasons)
    return HangAdvice(
        way, WORDS[way], tuple(said), tuple(dict.fromkeys(rule for rule, _ in reasons))
    )


def _reasons_for_flat(record: ObjectRecord) -> Iterator[_Reason]:
    cautions, factors = record.cautions, record.hang_factors
    yield from ((rules.RECORDED, _FORBIDDEN[code]) for code in _FORBIDDEN if code in cautions)
    if "fragile" in cautions:
        yield rules.FRAGILE, "fragile"
    yield from (reason for factor, reason in _FLAT_BY_FACTOR.items() if factor in factors)
    if find_clause(record.condition, _WEAK):
        yield rules.WEAK_SHOULDERS, to_print("weak shoulders")
    if find_clause(record.condition, _FRAIL):
        yield rules.FRAGILE, to_print("frail condition")
    if not _sound(record):
        yield from _reasons_unless_sound(record)


def _reasons_unless_sound(record: ObjectRecord) -> Iterator[_Reason]:
    if "lace" in record.hang_factors:
        yield rules.LACE, to_print("lace")
    if object_material(record, "wool") and not _is_flat_textile(record):
        yield rules.WOOLLEN, to_print("wool")


def _is_flat_textile(record: ObjectRecord) -> bool:
    return bool(find_phrase(record.object_name, _FLAT_TEXTILES))


def _is_large_and_flat(record: ObjectRecord) -> bool:
    longest_mm = max((measure.length_mm for measure in record.dimensions), default=0.0)
    return _is_flat_textile(record) and longest_mm >= LARGE_MM


def _reasons_for_tapes(record: ObjectRecord) -> tuple[_Reason, ...]:
    if "heavy-hem" in record.hang_factors:
        return ((rules.WAIST_TAPES, to_print("heavy hem")),)
    heavy = _say_heavy(record)
    if heavy and find_phrase(record.object_name, _SKIRTED):
        return ((rules.WAIST_TAPES, heavy),)
    return ()


def _say_heavy(record: ObjectRecord) -> str:
    weight_g = record.weight.weight_g if record.weight else 0.0
    figure = to_print(" ({weight_g} kg)", weight_g=format_kg(weight_g)) if record.weight else ""
    return (
        to_print("heavy{figure}", figure=figure)
        if "heavy" in record.hang_factors or weight_g >= HEAVY_G
        else ""
    )


def _sound(record: ObjectRecord) -> tuple[_Reason, ...]:
    sound = "sound-shoulders" in record.hang_factors
    return ((rules.PADDED, to_print("sound shoulders")),) if sound else ()
