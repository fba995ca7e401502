"""Presumptions on medicines, drugs, poisons and what extinguishes fire."""

from __future__ import annotations

from service.handling.hazards.entry import MUSEUMS_ASSOCIATION
from service.handling.presume.presumption import Presumption, from_memory, phrases, published

VESSELS: tuple[Presumption, ...] = (
    Presumption(
        "medicine",
        from_memory(
            "medicine",
            "Medicine chests, bottles and first aid kits are presumed to hold medicine that nobody "
            "has verified.",
        ),
        kinds=phrases(
            "medicine chest, medicine bottle, medicine box, medicine tin, medical chest, "
            "apothecary chest, pharmacy chest, first aid kit, first aid box, first aid tin, "
            "patent medicine, pill bottle, tablet bottle"
        ),
        unless=phrases("empty medicine chest"),
        answered_by=("controlled-drug", "poison"),
    ),
    Presumption(
        "controlled-drug",
        from_memory(
            "controlled-drug",
            "What is said to hold morphine, opium, cocaine or heroin is presumed to be a "
            "controlled drug.",
        ),
        kinds=phrases("morphine, diamorphine, opium, cocaine, heroin, laudanum"),
        materials=phrases("morphine, diamorphine, opium, cocaine, heroin, laudanum"),
        not_before=phrases("pipe, scale, weight, poppy, war, den, lamp, clipper"),
    ),
    Presumption(
        "poison",
        from_memory(
            "poison",
            "Poison bottles, and bait and killers of vermin, are presumed to hold poison.",
        ),
        kinds=phrases(
            "poison bottle, bottle of poison, rat poison, vermin poison, vermin killer, "
            "rat killer, weed killer, weedkiller, fly paper, poison bait"
        ),
        answered_by=("strychnine", "cyanide", "arsenic"),
    ),
    Presumption(
        "carbon-tetrachloride",
        from_memory(
            "carbon-tetrachloride",
            "Glass fire grenades are presumed to hold carbon tetrachloride.",
        ),
        kinds=phrases(
            "fire grenade, fire extinguisher grenade, glass fire extinguisher, "
            "fire extinguishing grenade, fire bomb extinguisher"
        ),
        materials=phrases("carbon tetrachloride"),
    ),
    Presumption(
        "pressurised",
        published(
            "pressurised",
            "Extinguishers, aerosols and cylinders are presumed to be under pressure; which things "
            "these are is common practice.",
            MUSEUMS_ASSOCIATION,
        ),
        kinds=phrases(
            "fire extinguisher, aerosol, aerosol can, gas cylinder, oxygen cylinder, diving "
            "cylinder, compressed air cylinder, gas canister"
        ),
        unless=phrases("glass fire extinguisher"),
        not_before=phrases("bracket, sign, grenade"),
    ),
)
