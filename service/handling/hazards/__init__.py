"""What a recorded hazard prints: its marks, its name, what to do and wear, and who can help.

Instructions are the usual first precautions of the guidance that each entry's rule names; they are
not a risk assessment. A hazard that a museum may not announce on the outside of a box (`discreet`)
prints only that somebody must be asked; the full words are for the contents list.
"""

from service.handling.hazards.entry import Consult, HazardEntry
from service.handling.hazards.find import (
    DISCREET,
    HAZARDS,
    RULES,
    STATE_WORDS,
    find_hazard,
    head_hazard,
    name_hazard,
    reword_hazards,
    word_hazard,
)

__all__ = [
    "DISCREET",
    "HAZARDS",
    "RULES",
    "STATE_WORDS",
    "Consult",
    "HazardEntry",
    "find_hazard",
    "head_hazard",
    "name_hazard",
    "reword_hazards",
    "word_hazard",
]
