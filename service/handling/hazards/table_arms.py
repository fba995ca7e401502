"""Hazards of arms and explosives, which nobody moves to find out."""

from __future__ import annotations

from service.handling.hazards.entry import (
    E_TOOL,
    FIREARMS,
    ORDNANCE,
    HazardEntry,
    from_memory,
    published,
)

ARMS: dict[str, HazardEntry] = {
    "ammunition": HazardEntry(
        "Ammunition or ordnance",
        ("explosive",),
        "Do not move. Leave the area and report.",
        "Nothing that is worn protects: keep away",
        ORDNANCE,
        published(
            "ammunition",
            "Ordnance that nobody has certified is not moved; the area is cleared, and reported.",
            E_TOOL,
        ),
        urgency=1,
        discreet=True,
    ),
    "firearm": HazardEntry(
        "Firearm",
        ("caution",),
        "Treat as loaded. Authorised staff only.",
        "Nothing that is worn protects: leave it to authorised staff",
        FIREARMS,
        published(
            "firearm",
            "A firearm is taken for loaded until a competent person has checked it; access is "
            "limited.",
            E_TOOL,
        ),
        urgency=1,
        discreet=True,
    ),
    "picric-acid": HazardEntry(
        "Picric acid",
        ("explosive", "toxic"),
        "Do not move or open. Report.",
        "Nothing that is worn protects: keep away",
        ORDNANCE,
        from_memory("picric-acid", "Dry crystals of picric acid may explode: it is not moved."),
        urgency=1,
    ),
}
