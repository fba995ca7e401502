"""One row of the table of hazards, whom to consult by region, and what stands behind a row."""

from __future__ import annotations

from dataclasses import dataclass

from service.handling.rule import Evidence, Rule
from service.records.museum.region import Region

E_TOOL = "Hazards in Collections e-tool"
MUSEUMS_ASSOCIATION = "Museums Association, guidance on hazards in collections, 2026"


@dataclass(frozen=True, slots=True)
class Consult:
    """Whom to consult: `elsewhere` in words for any country, the others where they differ."""

    elsewhere: str
    uk: str = ""
    us: str = ""

    def in_region(self, region: Region) -> str:
        """Name the people to consult in a region, in general words where it has none of its own."""
        own = {Region.UK: self.uk, Region.US: self.us}.get(region, "")
        return own or self.elsewhere


@dataclass(frozen=True, slots=True)
class HazardEntry:
    """One row of the table: words for the outside, what to wear, help to ask for, and the rule.

    `marks` name drawings in `templates/pictograms`, the one that prints first at the front.
    `protection` says what is usually worn; it is no selection of equipment. `urgency` is 1 for what
    can kill or poison at once, 2 for what can harm, 3 for what harms objects or needs respect. A
    `discreet` hazard is not announced on the outside of a container.
    """

    name: str
    marks: tuple[str, ...]
    instruction: str
    protection: str
    consult: Consult
    rule: Rule
    urgency: int = 2
    discreet: bool = False

    @property
    def mark(self) -> str:
        """The mark that prints where there is room for one."""
        return self.marks[0]

    @property
    def ask(self) -> str:
        """Whom to consult, in words for any country."""
        return self.consult.elsewhere


def published(code: str, says: str, source: str) -> Rule:
    """Make the rule of a hazard that published guidance stands behind."""
    return Rule(f"hazard-{code}", says, Evidence.PUBLISHED, source)


def practice(code: str, says: str) -> Rule:
    """Make the rule of a hazard that the trade usually treats so: common practice, no source."""
    return Rule(f"hazard-{code}", says, Evidence.PRACTICE)


def from_memory(code: str, says: str) -> Rule:
    """Make the rule of a hazard whose source was not seen: from memory."""
    return Rule(f"hazard-{code}", says, Evidence.MEMORY)


# Roles in the UK as the e-tool names them; those in the US from memory.
CONSERVATOR = Consult(
    "a conservator or health and safety adviser",
    uk="a conservator or the museum's health and safety adviser",
    us="a conservator or a certified industrial hygienist",
)
RADIATION = Consult(
    "the radiation protection adviser",
    uk="an HSE-recognised radiation protection adviser",
    us="the state radiation control program",
)
ASBESTOS = Consult(
    "the duty holder or a licensed asbestos surveyor",
    uk="the duty holder or a licensed asbestos surveyor",
    us="a certified industrial hygienist",
)
ORDNANCE = Consult(
    "the police or an explosive ordnance contractor",
    uk="the police or an explosive ordnance disposal contractor",
    us="the local police or their explosive ordnance disposal unit",
)
FIREARMS = Consult(
    "the firearms curator or police firearms licensing",
    uk="the firearms curator or police firearms licensing",
    us="the firearms curator or the local police",
)
CONTROLLED_DRUGS = Consult(
    "the holder of the controlled drugs licence",
    uk="the holder of the Home Office licence for controlled drugs",
    us="a DEA-registered reverse distributor",
)
PHARMACIST = Consult("a pharmacist through the collections desk")
POISON = Consult(
    "a conservator or health and safety adviser; the poison centre after contact",
    uk="the health and safety adviser or a conservator; the poison centre after contact",
    us="a certified industrial hygienist; the poison center after contact",
)
FILM = Consult("a film conservator or fire officer")
PLASTICS = Consult("a conservator")
FLUIDS = Consult("a natural history conservator")
REMAINS = Consult(
    "the curator responsible",
    uk="the curator responsible; the Human Tissue Authority for remains under 100 years old",
    us="the curator responsible or the NAGPRA coordinator",
)
CURATOR = Consult("the curator responsible")
DESK = Consult("the desk")
ELECTRICIAN = Consult("a qualified electrician")
SPECIALIST = Consult("a specialist through the desk")
PEST_LEAD = Consult("the pest lead")
