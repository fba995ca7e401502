"""Hazards of what bottles, jars and chests hold: preserving fluids, medicines, drugs."""

from __future__ import annotations

from service.handling.hazards.entry import (
    CONTROLLED_DRUGS,
    E_TOOL,
    FLUIDS,
    PHARMACIST,
    HazardEntry,
    from_memory,
    published,
)

_SPLASH = "Nitrile gloves; neoprene gloves, goggles and a coat where it may splash"

VESSELS: dict[str, HazardEntry] = {
    "fluid-preserved": HazardEntry(
        "Preserving fluid",
        ("flammable", "toxic", "health"),
        "Upright in its tray. No flame. Gloves.",
        _SPLASH,
        FLUIDS,
        published(
            "fluid-preserved",
            "Fluid specimens stand upright in a leak-proof tray, far from ignition.",
            E_TOOL,
        ),
    ),
    "unknown-fluid": HazardEntry(
        "Unknown fluid",
        ("toxic", "flammable"),
        "Do not open. Treat as toxic and flammable.",
        _SPLASH,
        FLUIDS,
        published(
            "unknown-fluid",
            "A fluid that nobody has identified is taken for toxic and flammable.",
            E_TOOL,
        ),
        urgency=1,
    ),
    "medicine": HazardEntry(
        "Medicine, contents not verified",
        ("toxic",),
        "Do not open or taste. Gloves.",
        "Nitrile gloves",
        PHARMACIST,
        from_memory("medicine", "Old medicines stay shut, in a locked cupboard."),
    ),
    "controlled-drug": HazardEntry(
        "Controlled drug",
        ("toxic",),
        "Do not open. Controlled store.",
        "Nitrile gloves",
        CONTROLLED_DRUGS,
        from_memory(
            "controlled-drug",
            "Controlled drugs stay shut and locked; holding them without a licence is an offence.",
        ),
        urgency=1,
        discreet=True,
    ),
}
