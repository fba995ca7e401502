"""The rules of packing, each with what backs it; the table of conflicts has its own."""

from __future__ import annotations

from service.handling.rule import Evidence, Rule

_P, _C, _M = Evidence.PUBLISHED, Evidence.PRACTICE, Evidence.MEMORY

HEAVY_ABOVE_LIGHT = Rule(
    "heavy-above-light", "The heaviest lies at the bottom, the lightest on top.", _C
)
HEAVY_ABOVE_FRAGILE = Rule(
    "heavy-above-fragile", "The most fragile lies on top, with nothing heavy above it.", _C
)
UNDER_OTHERS = Rule("under-others", "Its record says that nothing may lie on top.", _C)
PINS = Rule("pins-in-textile", "Pins and staples are taken out of textiles.", _P, "CCI Notes 13/5")
METAL_ON_TEXTILE = Rule(
    "metal-against-textile",
    "Corroding metal on cloth is isolated by tissue or cotton.",
    _P,
    "CCI Notes 13/5",
)
METAL_BESIDE_TEXTILE = Rule(
    "metal-beside-textile", "Metal and cloth in one compartment have something between them.", _C
)
UNSUITABLE = Rule(
    "unsuitable-material",
    "Guidance says to avoid it in a store: it stains, sheds, rusts or gives off vapour.",
    _P,
    "an Australian state museum's guidance, Storage Materials and Boxes",
)
HANGER = Rule(
    "unsuitable-hanger",
    "Hangers are padded and shaped, never thin wire; wooden ones are sealed.",
    _P,
    "CCI Notes 13/5; NPS Conserve O Gram 4/5",
)
GLASSINE = Rule(
    "glassine-with-photographs",
    "Photographs are kept without glassine, PVC or cellulose nitrate.",
    _P,
    "ISO 18902, read in a secondary copy",
)
TEMPORARY = Rule("temporary-material", "It serves for transport or for a few weeks only.", _C)
OVERDUE = Rule("repack-overdue", "A temporary packing is renewed by its date.", _C)
TOO_LARGE = Rule(
    "object-too-large", "A container holds its objects without pressing or bending them.", _C
)
UNPADDED_FOLD = Rule(
    "unpadded-fold",
    "Folds are few, and each one is padded.",
    _P,
    "CCI Notes 13/2; a state museum's guidance on fragile garments",
)
FOLDED = Rule("folded-against-record", "Its record says that it must lie flat or unfolded.", _C)
COVERED_LID = Rule("covered-lid", "Nothing covers the view through a clear lid.", _C)
STACKING = Rule(
    "stacking-limit-disagrees", "Its card would say both, and nobody can obey both.", _C
)
OVERFILLED = Rule(
    "overfilled", "An archive's habit is to fill no box above 15 kg, and lighter is better.", _C
)

RULES: tuple[Rule, ...] = (
    HEAVY_ABOVE_LIGHT,
    HEAVY_ABOVE_FRAGILE,
    UNDER_OTHERS,
    PINS,
    METAL_ON_TEXTILE,
    METAL_BESIDE_TEXTILE,
    UNSUITABLE,
    HANGER,
    GLASSINE,
    TEMPORARY,
    OVERDUE,
    TOO_LARGE,
    UNPADDED_FOLD,
    FOLDED,
    COVERED_LID,
    STACKING,
    OVERFILLED,
)
