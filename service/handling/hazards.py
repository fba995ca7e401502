"""What a recorded hazard prints: its mark, its name, what to do, and who can help.

Instructions are the usual first precautions of the published guidance named in `source`; they are
not a risk assessment. A hazard that a museum may not announce on the outside of a box (`discreet`)
prints only that somebody must be asked; the full words are for the contents list.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.records.record import Hazard, HazardState

E_TOOL = "Hazards in Collections e-tool"
PRACTICE = "common practice, no source"
MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class HazardEntry:
    """One row of the table: words for the outside, help to ask for, and the source."""

    name: str
    mark: str
    instruction: str
    ask: str
    source: str
    urgency: int = 2
    """1 can kill or poison at once, 2 can harm, 3 harms objects or needs respect."""
    discreet: bool = False


_CONSERVATOR = "a conservator or health and safety adviser"

HAZARDS: dict[str, HazardEntry] = {
    "arsenic": HazardEntry(
        "Arsenic", "toxic", "Gloves. Do not brush or shake. Wash hands.", _CONSERVATOR, E_TOOL
    ),
    "mercury-liquid": HazardEntry(
        "Liquid mercury",
        "mercury",
        "Do not tilt. Keep in its tray. Gloves.",
        _CONSERVATOR,
        E_TOOL,
        urgency=1,
    ),
    "mercury-salts": HazardEntry(
        "Mercury salts",
        "toxic",
        "Gloves. Do not brush or shake. Wash hands.",
        _CONSERVATOR,
        "Museums Association, guidance on hazards in collections, 2026",
    ),
    "lead": HazardEntry(
        "Lead", "toxic", "Gloves. Do not disturb dust. Wash hands.", _CONSERVATOR, E_TOOL
    ),
    "asbestos": HazardEntry(
        "Asbestos",
        "asbestos",
        "Do not open or touch. Ask first.",
        "the duty holder or a licensed asbestos surveyor",
        E_TOOL,
        urgency=1,
    ),
    "radium": HazardEntry(
        "Radium",
        "radiation",
        "Keep closed. Keep your distance, stay briefly.",
        "the radiation protection adviser",
        E_TOOL,
        urgency=1,
    ),
    "radioactive-mineral": HazardEntry(
        "Radioactive mineral",
        "radiation",
        "Keep closed. No dust. Keep your distance.",
        "the radiation protection adviser",
        E_TOOL,
        urgency=1,
    ),
    "nitrate-film": HazardEntry(
        "Nitrate film",
        "flammable",
        "No flame or heat. Keep apart and ventilated.",
        "a film conservator or fire officer",
        "HSE INDG469",
        urgency=1,
    ),
    "acetate-film": HazardEntry(
        "Acetate film",
        "corrosive",
        "Vinegar vapour. Ventilate. Keep apart.",
        "a film conservator",
        "NPS Museum Handbook, appendix M",
        urgency=3,
    ),
    "celluloid": HazardEntry(
        "Celluloid", "flammable", "No flame or heat. Keep metal away.", "a conservator", PRACTICE
    ),
    "pesticide": HazardEntry(
        "Pesticide residue",
        "health",
        "Gloves. Do not shake. Wash hands.",
        _CONSERVATOR,
        "BS EN 16790:2016",
    ),
    "naphthalene": HazardEntry(
        "Mothball vapour", "health", "Air before use. Keep plastics away.", _CONSERVATOR, PRACTICE
    ),
    "fluid-preserved": HazardEntry(
        "Preserving fluid",
        "flammable",
        "Upright in its tray. No flame. Gloves.",
        "a natural history conservator",
        E_TOOL,
    ),
    "unknown-fluid": HazardEntry(
        "Unknown fluid",
        "toxic",
        "Do not open. Treat as toxic and flammable.",
        "a natural history conservator",
        E_TOOL,
        urgency=1,
    ),
    "ammunition": HazardEntry(
        "Ammunition or ordnance",
        "explosive",
        "Do not move. Leave the area and report.",
        "the police or an explosive ordnance contractor",
        E_TOOL,
        urgency=1,
        discreet=True,
    ),
    "firearm": HazardEntry(
        "Firearm",
        "caution",
        "Treat as loaded. Authorised staff only.",
        "the firearms curator or police firearms licensing",
        E_TOOL,
        urgency=1,
        discreet=True,
    ),
    "controlled-drug": HazardEntry(
        "Controlled drug",
        "toxic",
        "Do not open. Controlled store.",
        "the holder of the controlled drugs licence",
        MEMORY,
        urgency=1,
        discreet=True,
    ),
    "medicine": HazardEntry(
        "Medicine, contents not verified",
        "toxic",
        "Do not open or taste. Gloves.",
        "a pharmacist through the collections desk",
        MEMORY,
    ),
    "poison": HazardEntry(
        "Poison", "toxic", "Do not open. Gloves. Wash hands.", _CONSERVATOR, MEMORY, urgency=1
    ),
    "poisoned-point": HazardEntry(
        "Poisoned point",
        "toxic",
        "Guard the tip. Treat as active.",
        "a conservator",
        PRACTICE,
        urgency=1,
    ),
    "sharps": HazardEntry(
        "Sharp", "sharp", "Keep hands clear. Look before you reach.", "the desk", PRACTICE
    ),
    "broken-glass": HazardEntry(
        "Broken glass", "broken-glass", "Keep hands clear. Cut-proof gloves.", "the desk", PRACTICE
    ),
    "mould": HazardEntry(
        "Mould", "biological", "Do not open here. Gloves and mask.", _CONSERVATOR, E_TOOL
    ),
    "pests": HazardEntry(
        "Pests", "pests", "Keep isolated. Do not open here.", "the pest lead", PRACTICE, urgency=3
    ),
    "battery": HazardEntry(
        "Battery inside", "corrosive", "Check for leaks. Gloves.", "the desk", PRACTICE
    ),
    "pressurised": HazardEntry(
        "Under pressure",
        "pressure",
        "Do not heat, drop or open. Assume charged.",
        "a specialist through the desk",
        PRACTICE,
        urgency=1,
    ),
    "spring-loaded": HazardEntry(
        "Spring-loaded", "spring", "Do not release. Keep fingers clear.", "the desk", PRACTICE
    ),
    "corrosive": HazardEntry(
        "Corrosive", "corrosive", "Gloves and eye protection. Do not open.", _CONSERVATOR, MEMORY
    ),
    "electrical": HazardEntry(
        "Stored charge",
        "electrical",
        "Do not touch terminals. Do not plug in.",
        "a qualified electrician",
        MEMORY,
    ),
    "human-remains": HazardEntry(
        "Restricted",
        "restricted",
        "Do not open: ask first.",
        "the curator responsible",
        "UK Department for Culture, Guidance for the Care of Human Remains in Museums, 2005",
        urgency=3,
        discreet=True,
    ),
    "restricted": HazardEntry(
        "Restricted",
        "restricted",
        "Do not open: ask first.",
        "the curator responsible",
        "ICOM Code of Ethics 2.5, 3.7, 4.3",
        urgency=3,
        discreet=True,
    ),
}

DISCREET = HazardEntry(
    "Do not open", "ask-first", "Ask before opening or moving.", "the desk", PRACTICE, urgency=1
)

STATE_WORDS = {
    HazardState.CONFIRMED: "confirmed",
    HazardState.PRESUMED: "presumed",
    HazardState.UNCHECKED: "not checked",
}


def find_hazard(code: str) -> HazardEntry:
    """Give the table's row for a hazard; one that is not in the list prints as it is written."""
    name = code.replace("-", " ").strip().capitalize()
    unknown = HazardEntry(name, "caution", "Ask before opening or handling.", "the desk", PRACTICE)
    return HAZARDS.get(code, unknown)


def name_hazard(hazard: Hazard) -> str:
    """Name a hazard with its state in full words, for the inside of the house."""
    return f"{find_hazard(hazard.code).name} {STATE_WORDS[hazard.state]}"
