"""Hazards of film and early plastics."""

from __future__ import annotations

from service.handling.hazards.entry import FILM, PLASTICS, Consult, HazardEntry, practice, published

FILM_AND_PLASTICS: dict[str, HazardEntry] = {
    "nitrate-film": HazardEntry(
        "Nitrate film",
        ("flammable", "toxic"),
        "No flame or heat. Keep apart and ventilated.",
        "Nitrile gloves; work where the air is changed",
        FILM,
        published(
            "nitrate-film",
            "Nitrate film is kept apart, cool and ventilated, not sealed tight, far from ignition.",
            "HSE INDG469",
        ),
        urgency=1,
    ),
    "acetate-film": HazardEntry(
        "Acetate film",
        ("corrosive",),
        "Vinegar vapour. Ventilate. Keep apart.",
        "Nitrile gloves; work where the air is changed",
        Consult("a film conservator"),
        published(
            "acetate-film",
            "Acetate film that smells of vinegar is ventilated and kept apart.",
            "NPS Museum Handbook, appendix M",
        ),
        urgency=3,
    ),
    "celluloid": HazardEntry(
        "Celluloid",
        ("flammable", "corrosive"),
        "No flame or heat. Keep metal away.",
        "Nitrile gloves; work where the air is changed",
        PLASTICS,
        practice(
            "celluloid", "Celluloid burns and gives off acid: isolated, ventilated, no metal."
        ),
    ),
}
