"""Presumptions on arsenic, mercury, lead, and the metals of lamps and rectifiers."""

from __future__ import annotations

from service.handling.hazards.entry import E_TOOL
from service.handling.presume.presumption import Presumption, from_memory, phrases, published
from service.handling.presume.years import Years

_HATS_WITH_MERCURY = Years(1601, 1949)
_LAMPS_WITH_BERYLLIUM = Years(1930, 1950)

METALS: tuple[Presumption, ...] = (
    Presumption(
        "arsenic",
        published(
            "arsenic-pigments",
            "Pigments and soaps made of arsenic are presumed wherever they are named.",
            f"{E_TOOL}, arsenic",
        ),
        kinds=phrases("arsenical soap, arsenic bottle, arsenic tin, scheele's green, paris green"),
        materials=phrases(
            "arsenic, arsenical, orpiment, realgar, scheele's green, paris green, "
            "schweinfurt green, emerald green pigment, emerald green paint"
        ),
    ),
    Presumption(
        "mercury-liquid",
        published(
            "mercury-instruments",
            "Barometers, thermometers and mercury switches are presumed to hold mercury, unless "
            "they are of another kind.",
            f"{E_TOOL}, mercury",
        ),
        kinds=phrases("barometer, thermometer, mercury switch, tilt switch"),
        unless=phrases(
            "aneroid, digital, electronic, alcohol, spirit thermometer, bimetallic, "
            "dial thermometer, infrared, storm glass"
        ),
        not_before=phrases("case, box, scale, holder"),
    ),
    Presumption(
        "mercury-liquid",
        published(
            "mercury-named",
            "Mercury among the materials is presumed to be there as a liquid.",
            f"{E_TOOL}, mercury",
        ),
        kinds=phrases("mercury bottle, mercury flask, bottle of mercury, flask of mercury"),
        materials=phrases("mercury, quicksilver, tin amalgam, mercury amalgam"),
        not_before=phrases("gilding, gilt, salt, chloride, sulphide, sulfide"),
    ),
    Presumption(
        "mercury-salts",
        published(
            "mercury-compounds",
            "Vermilion, calomel and corrosive sublimate are presumed to hold mercury salts.",
            f"{E_TOOL}, mercury",
        ),
        kinds=phrases("corrosive sublimate, calomel"),
        materials=phrases(
            "vermilion, cinnabar, calomel, corrosive sublimate, mercuric chloride, "
            "mercurous chloride, mercury salt, mercury chloride"
        ),
    ),
    Presumption(
        "mercury-salts",
        published(
            "mercury-hats",
            "Felt hats from the 17th century to the 1940s are presumed to hold mercury salts.",
            "Parliamentary Archives, on mercury in hats, 2023; Conservation Journal 46, 2004",
        ),
        kinds=phrases("felt hat, fur felt hat, beaver hat, felt top hat, felt bowler, felt bonnet"),
        together=(
            phrases("hat, top hat, bowler, bonnet, bicorne, tricorne, homburg, trilby, fedora"),
            phrases("felt, fur felt, beaver felt, beaver fur"),
        ),
        not_before=phrases("box, pin, block, brush, stand, stretcher, case, band"),
        years=_HATS_WITH_MERCURY,
        undated=False,
    ),
    Presumption(
        "lead",
        published(
            "lead-named",
            "Lead, lead paint and toy soldiers are presumed to give off lead.",
            f"{E_TOOL}, lead",
        ),
        kinds=phrases("lead soldier, toy soldier, lead figure, lead toy, lead paint"),
        materials=phrases("lead, white lead, lead white, red lead, lead paint, litharge"),
        unless=phrases("pencil lead, black lead, plastic soldier, plastic toy soldier"),
        not_before=phrases("glass, crystal, pencil, free, glaze"),
        likeness=True,
    ),
    Presumption(
        "selenium",
        from_memory("selenium", "Selenium rectifiers are presumed to hold selenium."),
        kinds=phrases("selenium rectifier, selenium cell"),
        materials=phrases("selenium"),
    ),
    Presumption(
        "beryllium",
        published(
            "beryllium",
            "Fluorescent lamps from the 1930s to 1950 are presumed to hold powder with beryllium.",
            "Cleveland Clinic Journal of Medicine, commentary on chemical pneumonia in workers "
            "extracting beryllium oxide: in lamps until 1949; one year more for stock, from memory",
        ),
        kinds=phrases("fluorescent lamp, fluorescent tube, fluorescent light"),
        materials=phrases("beryllium"),
        not_before=phrases("copper, bronze"),
        years=_LAMPS_WITH_BERYLLIUM,
        undated=False,
    ),
)
