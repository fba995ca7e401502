"""What museums' published guidance says of hazards, beside what the table and the rules say.

The facts below are those of the guidance, restated and written out by hand; where a source was
known only through another text, or not at hand, it says so.
"""

from __future__ import annotations

import re

import pytest

from service.handling.hazards import HAZARDS
from service.handling.presume import presume_for
from service.records.museum.region import Region
from service.records.record import ObjectRecord

# Hazards in Collections e-tool, pages on arsenic, lead, mercury, asbestos, radiation, nitrate
# film, spirit collections, explosives and firearms: what to do first, by a word that must stand.
E_TOOL_PRECAUTIONS = (
    ("arsenic", "nitrile gloves", "protection"),
    ("arsenic", "coveralls", "protection"),
    ("arsenic", "dust mask", "protection"),
    ("arsenic", "wash hands", "instruction"),
    ("arsenic", "shake", "instruction"),
    ("lead", "nitrile gloves", "protection"),
    ("lead", "wash hands", "instruction"),
    ("mercury-liquid", "nitrile gloves", "protection"),
    ("mercury-liquid", "mercury filter", "protection"),
    ("mercury-liquid", "tray", "instruction"),
    ("asbestos", "do not open or touch", "instruction"),
    ("radium", "gloves", "protection"),
    ("radium", "distance", "instruction"),
    ("radium", "briefly", "instruction"),
    ("radium", "closed", "instruction"),
    ("nitrate-film", "no flame", "instruction"),
    ("nitrate-film", "apart", "instruction"),
    ("nitrate-film", "ventilated", "instruction"),
    ("fluid-preserved", "goggles", "protection"),
    ("fluid-preserved", "tray", "instruction"),
    ("unknown-fluid", "toxic and flammable", "instruction"),
    ("ammunition", "do not move", "instruction"),
    ("ammunition", "report", "instruction"),
    ("firearm", "loaded", "instruction"),
    ("mould", "mask", "protection"),
)

# The signs that the same pages and ISO 7010 (titles known through a public index) give: W016 toxic,
# W071 lasting harm to health, W021 flammable, W002 explosive, W003 radioactive, W009 biological,
# W022 sharp, W029 pressurised.
SIGNS = {
    "arsenic": {"toxic", "health"},
    "lead": {"toxic", "health"},
    "mercury-liquid": {"toxic", "health"},
    "asbestos": {"asbestos", "health"},
    "radium": {"radiation"},
    "radioactive-mineral": {"radiation", "toxic"},
    "nitrate-film": {"flammable", "toxic"},
    "fluid-preserved": {"flammable", "toxic"},
    "unknown-fluid": {"flammable", "toxic"},
    "ammunition": {"explosive"},
    "sharps": {"sharp"},
    "mould": {"biological"},
    "pressurised": {"pressure"},
    "poisoned-point": {"toxic", "sharp"},
}

# Roles that the e-tool names for the UK.
UK_ROLES = {
    "radium": "radiation protection adviser",
    "asbestos": "licensed asbestos surveyor",
    "ammunition": "explosive ordnance disposal",
    "firearm": "police firearms licensing",
}
# Roles in the US: from memory.
US_ROLES = {
    "arsenic": "certified industrial hygienist",
    "radium": "state radiation control",
    "controlled-drug": "DEA-registered reverse distributor",
    "human-remains": "NAGPRA coordinator",
}

# Where each source says that a hazard is to be looked for: name, title, period and materials of
# such an object, the hazard, and the source.
PRESUMED = (
    # E-tool, arsenic: presume it in the objects it lists, taxidermy, herbaria, skins, pigments.
    (("taxidermy", "Fox", "1890", ()), "arsenic"),
    (("herbarium", "Seaweeds", "", ()), "arsenic"),
    (("bird skin", "Tern", "1930s", ()), "arsenic"),
    (("wallpaper", "Sample", "", ("Paris green",)), "arsenic"),
    # Indiana Historical Society, 2020: most taxidermy made before 1980.
    (("taxidermy", "Fox", "1979", ()), "arsenic"),
    # Museums Association, 2026: mercury salts on specimens of the 18th and 19th centuries.
    (("herbarium", "Seaweeds", "1795", ()), "mercury-salts"),
    # E-tool, mercury: barometers, thermometers; vermilion and cinnabar are mercury sulphide.
    (("barometer", "Barometer", "", ()), "mercury-liquid"),
    (("thermometer", "Thermometer", "", ()), "mercury-liquid"),
    (("mineral", "Ore", "", ("cinnabar",)), "mercury-salts"),
    # Conservation Journal 46, 2004: mercury salts found in felt hats of 1820 to 1930.
    (("felt hat", "Hat", "1820", ()), "mercury-salts"),
    (("felt hat", "Hat", "1930", ()), "mercury-salts"),
    # E-tool, lead: toys and soldiers.
    (("toy soldier", "Guardsman", "", ()), "lead"),
    # E-tool, asbestos, where one might find it.
    (("gas mask", "Gas mask", "1939", ()), "asbestos"),
    (("oven glove", "Oven glove", "1950s", ()), "asbestos"),
    (("ironing board", "Ironing board", "1960", ()), "asbestos"),
    (("hairdryer", "Hairdryer", "1960", ()), "asbestos"),
    (("mineral", "Tremolite", "", ()), "asbestos"),
    (("mineral", "Anthophyllite", "", ()), "asbestos"),
    # E-tool, radiation: clocks, watches, compasses, dials of aircraft; mantles; glass; ores.
    (("watch", "Luminous watch", "1917", ()), "radium"),
    (("altimeter", "Altimeter, luminous dial", "1943", ()), "radium"),
    (("gas mantle", "Mantle", "", ()), "thorium"),
    (("vase", "Vase", "", ("uranium glass",)), "uranium-glass"),
    (("mineral", "Pitchblende", "", ()), "radioactive-mineral"),
    # E-tool, nitrate film: still and roll film from the 1890s, X-ray film, to the early 1950s.
    (("roll film", "Regatta", "1890s", ()), "nitrate-film"),
    (("x-ray film", "Hand", "1940", ()), "nitrate-film"),
    # E-tool, spirit collections; explosives; firearms.
    (("jar", "Eel, spirit specimen", "", ()), "fluid-preserved"),
    (("hand grenade", "Grenade", "1916", ()), "ammunition"),
    (("rifle", "Rifle", "1900", ()), "firearm"),
)


@pytest.mark.parametrize(("code", "word", "place"), E_TOOL_PRECAUTIONS)
def test_first_precautions_are_those_of_the_guidance(code: str, word: str, place: str) -> None:
    """What the e-tool says to do or wear first stands in our words for it."""
    assert word in str(getattr(HAZARDS[code], place)).casefold()


@pytest.mark.parametrize("code", SIGNS)
def test_marks_are_those_of_the_guidance(code: str) -> None:
    """Every sign that the guidance gives a hazard has its mark."""
    assert SIGNS[code] <= set(HAZARDS[code].marks)


def test_roles_are_those_of_the_country() -> None:
    """Each region names the people whom its guidance names."""
    for region, roles in ((Region.UK, UK_ROLES), (Region.US, US_ROLES)):
        for code, role in roles.items():
            assert role in HAZARDS[code].consult.in_region(region)


@pytest.mark.parametrize(("thing", "hazard"), PRESUMED)
def test_what_guidance_presumes_is_presumed(
    thing: tuple[str, str, str, tuple[str, ...]], hazard: str
) -> None:
    """Each kind of thing in which a source says to look for a hazard gets it."""
    name, title, period, materials = thing
    record = ObjectRecord("1", title, name, period, materials=materials)
    assert hazard in {one.hazard for one in presume_for(record)}


# NPS decision tree on film bases: after 1950 film is tested, not taken for nitrate; the e-tool lets
# production end in the early 1950s. Acetate and polyester film are other materials.
NOT_NITRATE = (
    ("roll film", "Regatta", "1955", ()),
    ("film negative", "Regatta", "1930", ("polyester",)),
    ("glass negative", "Regatta", "1930", ("glass",)),
)


@pytest.mark.parametrize("thing", NOT_NITRATE)
def test_film_outside_the_guidance_stays_unknown(
    thing: tuple[str, str, str, tuple[str, ...]],
) -> None:
    """Film that no source takes for nitrate is not presumed to be."""
    name, title, period, materials = thing
    record = ObjectRecord("1", title, name, period, materials=materials)
    assert "nitrate-film" not in {one.hazard for one in presume_for(record)}


def test_nothing_says_that_a_hazard_is_absent() -> None:
    """The guidance knows confirmed, presumed and unknown; no entry has words for absent."""
    absent = re.compile(r"\b(?:safe|absent|not present|free of|none)\b", re.IGNORECASE)
    for entry in HAZARDS.values():
        assert not absent.search(f"{entry.name} {entry.instruction} {entry.protection}")
