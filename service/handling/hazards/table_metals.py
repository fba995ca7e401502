"""Hazards of metals and their salts: arsenic, mercury, lead, and what lamps and rectifiers hold."""

from __future__ import annotations

from service.handling.hazards.entry import (
    CONSERVATOR,
    E_TOOL,
    MUSEUMS_ASSOCIATION,
    HazardEntry,
    from_memory,
    published,
)

_TOXIC = ("toxic", "health")
_DUSTY = "Nitrile gloves; where there is dust, coveralls and a dust mask"

METALS: dict[str, HazardEntry] = {
    "arsenic": HazardEntry(
        "Arsenic",
        _TOXIC,
        "Gloves. Do not brush or shake. Wash hands.",
        _DUSTY,
        CONSERVATOR,
        published(
            "arsenic",
            "Arsenic is handled in nitrile gloves, without stroking fur or shaking packing; no "
            "food, drink or smoking near it; hands are washed.",
            E_TOOL,
        ),
    ),
    "mercury-liquid": HazardEntry(
        "Liquid mercury",
        ("mercury", "toxic", "health"),
        "Do not tilt. Keep in its tray. Gloves.",
        "Nitrile gloves; a respirator with a mercury filter where there is vapour",
        CONSERVATOR,
        published(
            "mercury-liquid",
            "Liquid mercury stays upright in a leak-proof tray, ventilated, with a spill kit near.",
            E_TOOL,
        ),
        urgency=1,
    ),
    "mercury-salts": HazardEntry(
        "Mercury salts",
        _TOXIC,
        "Gloves. Do not brush or shake. Wash hands.",
        _DUSTY,
        CONSERVATOR,
        published(
            "mercury-salts",
            "Specimens treated with mercury salts are handled as those treated with arsenic are.",
            MUSEUMS_ASSOCIATION,
        ),
    ),
    "lead": HazardEntry(
        "Lead",
        _TOXIC,
        "Gloves. Do not disturb dust. Wash hands.",
        "Thin nitrile gloves; where there is dust, coveralls and a dust mask",
        CONSERVATOR,
        published(
            "lead",
            "Lead is handled in thin nitrile gloves; powdery surfaces are not touched; hands are "
            "washed.",
            E_TOOL,
        ),
    ),
    "beryllium": HazardEntry(
        "Beryllium",
        _TOXIC,
        "Do not break or open. Keep dust away.",
        "Nitrile gloves; nobody handles broken lamps without advice",
        CONSERVATOR,
        from_memory("beryllium", "The powder inside old fluorescent lamps may hold beryllium."),
    ),
    "selenium": HazardEntry(
        "Selenium",
        _TOXIC,
        "Gloves. Do not scrape or plug in. Wash hands.",
        _DUSTY,
        CONSERVATOR,
        from_memory("selenium", "Selenium rectifiers are not scraped, opened or plugged in."),
    ),
}
