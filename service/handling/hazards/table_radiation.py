"""Hazards of radiation and of asbestos, for which the law names who may decide."""

from __future__ import annotations

from service.handling.hazards.entry import (
    ASBESTOS,
    E_TOOL,
    RADIATION,
    HazardEntry,
    from_memory,
    published,
)

_GLOVES = "Nitrile gloves"
_DUST = "Nitrile gloves; a mask only on the adviser's word"

RADIATION_AND_ASBESTOS: dict[str, HazardEntry] = {
    "asbestos": HazardEntry(
        "Asbestos",
        ("asbestos", "health"),
        "Do not open or touch. Ask first.",
        "Nothing worn at the box is enough: do not touch",
        ASBESTOS,
        published(
            "asbestos",
            "Suspected asbestos of unknown state is not touched; it is bagged and tagged by those "
            "who may.",
            E_TOOL,
        ),
        urgency=1,
    ),
    "radium": HazardEntry(
        "Radium",
        ("radiation",),
        "Keep closed. Keep your distance, stay briefly.",
        _GLOVES,
        RADIATION,
        published(
            "radium",
            "Radium stays sealed and ventilated, handled in gloves, from a distance and briefly; "
            "no dial is opened.",
            E_TOOL,
        ),
        urgency=1,
    ),
    "radioactive-mineral": HazardEntry(
        "Radioactive mineral",
        ("radiation", "toxic"),
        "Keep closed. No dust. Keep your distance.",
        _DUST,
        RADIATION,
        published(
            "radioactive-mineral",
            "Radioactive minerals are kept as radium is; their dust is the main danger.",
            E_TOOL,
        ),
        urgency=1,
    ),
    "thorium": HazardEntry(
        "Thorium",
        ("radiation",),
        "Keep closed. No dust. Wash hands.",
        _DUST,
        RADIATION,
        published("thorium", "Gas mantles with thorium are kept as radium is.", E_TOOL),
    ),
    "uranium-glass": HazardEntry(
        "Uranium glass",
        ("radiation",),
        "Do not chip or grind. Wash hands.",
        _GLOVES,
        RADIATION,
        published("uranium-glass", "Glass coloured with uranium is kept as radium is.", E_TOOL),
    ),
    "polonium": HazardEntry(
        "Polonium",
        ("radiation",),
        "Do not touch the strip. Keep closed.",
        _GLOVES,
        RADIATION,
        from_memory("polonium", "Anti-static brushes may hold polonium and what it turns into."),
        urgency=1,
    ),
}
