"""Hazards that cut, burst, strike or shock."""

from __future__ import annotations

from service.handling.hazards.entry import (
    DESK,
    ELECTRICIAN,
    MUSEUMS_ASSOCIATION,
    SPECIALIST,
    Consult,
    HazardEntry,
    from_memory,
    practice,
    published,
)

_CUTS = "Cut-resistant gloves"

PHYSICAL: dict[str, HazardEntry] = {
    "sharps": HazardEntry(
        "Sharp",
        ("sharp",),
        "Keep hands clear. Look before you reach.",
        _CUTS,
        DESK,
        practice("sharps", "Points are guarded; no bare hand searches for them."),
    ),
    "needles": HazardEntry(
        "Needles",
        ("sharp", "biological"),
        "Do not reach in. Never recap. Ask first.",
        "Needle-resistant gloves",
        Consult("the health and safety adviser"),
        practice("needles", "Used needles are sharp and may carry infection."),
        urgency=1,
    ),
    "broken-glass": HazardEntry(
        "Broken glass",
        ("broken-glass", "sharp"),
        "Keep hands clear. Cut-proof gloves.",
        _CUTS,
        DESK,
        practice("broken-glass", "Broken glass is not searched by hand."),
    ),
    "battery": HazardEntry(
        "Battery inside",
        ("corrosive",),
        "Check for leaks. Gloves.",
        "Nitrile gloves; eye protection where it leaks",
        DESK,
        practice("battery", "Leaking batteries are taken out by trained people only, and bagged."),
    ),
    "pressurised": HazardEntry(
        "Under pressure",
        ("pressure",),
        "Do not heat, drop or open. Assume charged.",
        "Eye protection",
        SPECIALIST,
        published(
            "pressurised",
            "What may be under pressure is taken for charged: not heated, dropped or opened.",
            MUSEUMS_ASSOCIATION,
        ),
        urgency=1,
    ),
    "spring-loaded": HazardEntry(
        "Spring-loaded",
        ("spring", "crush"),
        "Do not release. Keep fingers clear.",
        "Eye protection and sturdy gloves",
        DESK,
        published(
            "spring-loaded",
            "What stores energy in springs or weights is locked off, not released.",
            MUSEUMS_ASSOCIATION,
        ),
    ),
    "electrical": HazardEntry(
        "Stored charge",
        ("electrical",),
        "Do not touch terminals. Do not plug in.",
        "Nothing worn at the box is enough: do not touch terminals",
        ELECTRICIAN,
        from_memory("electrical", "Capacitors may keep a charge long after use."),
    ),
}
