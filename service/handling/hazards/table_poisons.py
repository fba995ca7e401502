"""Hazards of poisons and pesticides: residues, kits for collecting and vermin, poisoned points."""

from __future__ import annotations

from service.handling.hazards.entry import (
    CONSERVATOR,
    POISON,
    HazardEntry,
    from_memory,
    practice,
    published,
)

_EN_16790 = "BS EN 16790:2016"
_CURARE = "a published paper on hazards in museum objects (curare on weapons)"
_COATED = "Nitrile gloves and a coat; a dust mask where there is dust"

POISONS: dict[str, HazardEntry] = {
    "pesticide": HazardEntry(
        "Pesticide residue",
        ("health", "toxic"),
        "Gloves. Do not shake. Wash hands.",
        _COATED,
        CONSERVATOR,
        published(
            "pesticide",
            "Staff know that lindane, naphthalene, DDT, arsenic or mercury may remain on objects.",
            _EN_16790,
        ),
    ),
    "ddt": HazardEntry(
        "DDT or other organic pesticide",
        ("health", "toxic"),
        "Gloves. Do not brush or shake. Wash hands.",
        _COATED,
        CONSERVATOR,
        published("ddt", "DDT, lindane and their like may remain on objects.", _EN_16790),
    ),
    "naphthalene": HazardEntry(
        "Mothball vapour",
        ("health", "flammable"),
        "Air before use. Keep plastics away.",
        "Nitrile gloves; work where the air is changed",
        CONSERVATOR,
        practice(
            "naphthalene",
            "Naphthalene, paradichlorobenzene and camphor are aired away and kept from plastics.",
        ),
    ),
    "poison": HazardEntry(
        "Poison",
        ("toxic",),
        "Do not open. Gloves. Wash hands.",
        "Nitrile gloves",
        POISON,
        from_memory("poison", "Poisons stay shut, in a locked cupboard."),
        urgency=1,
    ),
    "cyanide": HazardEntry(
        "Cyanide",
        ("toxic",),
        "Do not open. Keep dry and away from acids.",
        "Nitrile gloves; nobody opens it",
        POISON,
        from_memory("cyanide", "Killing jars and vermin kits may still hold cyanide."),
        urgency=1,
    ),
    "strychnine": HazardEntry(
        "Strychnine",
        ("toxic",),
        "Do not open. Gloves. Wash hands.",
        "Nitrile gloves",
        POISON,
        from_memory("strychnine", "Vermin kits and baits may still hold strychnine."),
        urgency=1,
    ),
    "poisoned-point": HazardEntry(
        "Poisoned point",
        ("toxic", "sharp"),
        "Guard the tip. Treat as active.",
        "Cut-resistant gloves over nitrile gloves",
        CONSERVATOR,
        published(
            "poisoned-point", "Poison on a point is taken for active; it is guarded.", _CURARE
        ),
        urgency=1,
    ),
    "carbon-tetrachloride": HazardEntry(
        "Carbon tetrachloride",
        ("toxic", "health"),
        "Do not open or break. Leave if it leaks.",
        "Nitrile gloves; nobody stays near a leak",
        POISON,
        from_memory(
            "carbon-tetrachloride",
            "Glass fire grenades and old extinguishers may hold carbon tetrachloride.",
        ),
        urgency=1,
    ),
    "corrosive": HazardEntry(
        "Corrosive",
        ("corrosive",),
        "Gloves and eye protection. Do not open.",
        "Gloves for acids and alkalis, eye protection, a coat",
        CONSERVATOR,
        from_memory("corrosive", "What eats into skin and metal stays shut."),
    ),
}
