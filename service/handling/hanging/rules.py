"""The rules on hanging, rolling and laying flat, each with what backs it."""

from __future__ import annotations

from service.handling.rule import Evidence, Rule

_CCI = "CCI Notes 13/5 and 13/2"
_P, _C, _M = Evidence.PUBLISHED, Evidence.PRACTICE, Evidence.MEMORY

RECORDED = Rule("hang-recorded", "What the record forbids is not advised by any other rule.", _C)
FRAGILE = Rule("flat-fragile", "What is fragile is stored flat.", _P, _CCI)
WEAK_SHOULDERS = Rule(
    "flat-weak-shoulders", "A garment with weak shoulder seams is stored flat.", _P, _CCI
)
BEADS = Rule("flat-beads", "What is beaded or heavily decorated is stored flat.", _P, _CCI)
KNIT = Rule("flat-knit", "Knitted garments are stored flat.", _P, _CCI)
BIAS = Rule("flat-bias-cut", "Garments cut on the bias are stored flat.", _P, _CCI)
STRETCH = Rule("flat-stretch", "What stretches under its own weight is stored flat.", _C)
STRAPS = Rule("flat-thin-straps", "Thin straps pull apart under the weight they carry.", _C)
LACE = Rule(
    "flat-lace", "Lace pulls apart under its own weight unless the shoulders are sound.", _C
)
WOOLLEN = Rule(
    "flat-woollen",
    "Woollens that cannot bear their own weight are not hung.",
    _P,
    "a national museum's guidance, How to pack textiles",
)
ROLL = Rule(
    "roll-large-flat",
    "Large flat textiles are rolled, right side out.",
    _P,
    "a national museum's guidance, How to pack textiles",
)
WAIST_TAPES = Rule(
    "hang-waist-tapes",
    "Tapes from the waist to the hanger take the weight of a heavy skirt.",
    _P,
    "NPS Conserve O Gram 4/5",
)
PADDED = Rule(
    "hang-padded",
    "What is hung is hung on a padded, shaped hanger, never on thin wire.",
    _P,
    "CCI Notes 13/5; NPS Conserve O Gram 4/5",
)
UNKNOWN = Rule("hang-unknown", "A record that is silent on hanging gives no advice.", _C)

RULES: tuple[Rule, ...] = (
    RECORDED,
    FRAGILE,
    WEAK_SHOULDERS,
    BEADS,
    KNIT,
    BIAS,
    STRETCH,
    STRAPS,
    LACE,
    WOOLLEN,
    ROLL,
    WAIST_TAPES,
    PADDED,
    UNKNOWN,
)
