"""Hazards of what lives or lived, and what is restricted out of respect."""

from __future__ import annotations

from service.handling.hazards.entry import (
    CONSERVATOR,
    CURATOR,
    E_TOOL,
    PEST_LEAD,
    REMAINS,
    HazardEntry,
    practice,
    published,
)

_MASK = "Nitrile gloves, a coat and a fitted FFP3 or N95 mask"

LIVING: dict[str, HazardEntry] = {
    "mould": HazardEntry(
        "Mould",
        ("biological", "mask"),
        "Do not open here. Gloves and mask.",
        _MASK,
        CONSERVATOR,
        published("mould", "Mould is isolated in a bag and opened under extraction only.", E_TOOL),
    ),
    "biological": HazardEntry(
        "Droppings or infection",
        ("biological", "mask"),
        "Do not open here. Gloves and mask.",
        _MASK,
        CONSERVATOR,
        published(
            "biological",
            "Droppings and what may carry infection are isolated, opened under extraction only.",
            E_TOOL,
        ),
    ),
    "pests": HazardEntry(
        "Pests",
        ("pests",),
        "Keep isolated. Do not open here.",
        "Nitrile gloves",
        PEST_LEAD,
        practice("pests", "What is infested stays isolated until it has been treated."),
        urgency=3,
    ),
    "human-remains": HazardEntry(
        "Restricted",
        ("restricted",),
        "Do not open: ask first.",
        "As the curator responsible says",
        REMAINS,
        published(
            "human-remains",
            "Human remains are kept with dignity, apart and restricted.",
            "UK Department for Culture, Guidance for the Care of Human Remains in Museums, 2005",
        ),
        urgency=3,
        discreet=True,
    ),
    "restricted": HazardEntry(
        "Restricted",
        ("restricted",),
        "Do not open: ask first.",
        "As the curator responsible says",
        CURATOR,
        published(
            "restricted",
            "The limits that a community sets to seeing and handling are kept.",
            "ICOM Code of Ethics 2.5, 3.7, 4.3",
        ),
        urgency=3,
        discreet=True,
    ),
}
