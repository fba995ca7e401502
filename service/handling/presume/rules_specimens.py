"""Presumptions on natural history, ethnographic poisons and human remains."""

from __future__ import annotations

from service.handling.hazards.entry import E_TOOL, MUSEUMS_ASSOCIATION
from service.handling.presume.presumption import (
    Presumption,
    from_memory,
    phrases,
    practice,
    published,
)
from service.handling.presume.years import Years

_UNTIL_1980 = Years(-10_000, 1980)
_18TH_AND_19TH_CENTURY = Years(1701, 1900)

_ANIMALS = (
    "alligator, albatross, animal, antelope, armadillo, auk, badger, bat, bear, beaver, bird, "
    "bittern, boar, buffalo, bull, bustard, buzzard, cat, crane, crocodile, crow, deer, dodo, "
    "dog, duck, eagle, falcon, fish, fox, gannet, goat, goose, grebe, grouse, gull, hare, "
    "hawk, hedgehog, heron, hummingbird, hyena, jackdaw, jay, kestrel, kingfisher, kite, "
    "kiwi, leopard, lion, lizard, lynx, magpie, mammal, marten, mink, mole, monkey, otter, "
    "owl, parrot, partridge, peacock, penguin, perch, pheasant, pig, pigeon, pike, polecat, "
    "puffin, rabbit, ram, rat, raven, reptile, rook, salmon, seal, shark, snake, snipe, "
    "sparrowhawk, squirrel, stag, stoat, stork, swan, tern, thrush, tiger, tortoise, trout, "
    "turtle, weasel, wolf, woodcock, woodpecker"
)
_HEADED = "antelope, buffalo, deer, fox, lion, stag, tiger"
_TAXIDERMY_LIST = ", ".join(
    (
        "taxidermy, taxidermied, taxidermy mount, mounted head, trophy head, hunting trophy",
        "study skin, bird skin, cabinet skin, mammal skin",
        *(f"stuffed {animal}, mounted {animal}" for animal in _ANIMALS.split(", ")),
        *(f"mounted {animal}'s head, {animal} head trophy" for animal in _HEADED.split(", ")),
    )
)
_NOT_THE_ANIMAL = "hook, knife, fork, slice, tool, manual, print, plate"
_NO_TAXIDERMY = phrases("soft toy, stuffed toy, teddy, teddy bear, plush, taxidermy tool")
_HERBARIUM_LIST = (
    "herbarium, herbarium sheet, herbarium specimen, hortus siccus, pressed plant, dried plant"
)
_NO_HERBARIUM = "cabinet, press, label, paper"

SPECIMENS: tuple[Presumption, ...] = (
    Presumption(
        "arsenic",
        published(
            "arsenic-taxidermy",
            "Taxidermy and skins are presumed to hold arsenic, where they are not dated after "
            "1980.",
            f"{E_TOOL}, arsenic; for 1980: Indiana Historical Society, Local History Services, "
            "issue 106, 2020",
        ),
        kinds=phrases(_TAXIDERMY_LIST),
        unless=_NO_TAXIDERMY,
        not_before=phrases(_NOT_THE_ANIMAL),
        years=_UNTIL_1980,
    ),
    Presumption(
        "arsenic",
        published(
            "arsenic-herbarium",
            "Herbaria are presumed to hold arsenic, where they are not dated after 1980.",
            f"{E_TOOL}, arsenic; for 1980: Otago Museum, Hidden Hazards, arsenic",
        ),
        kinds=phrases(_HERBARIUM_LIST),
        not_before=phrases(_NO_HERBARIUM),
        years=_UNTIL_1980,
    ),
    Presumption(
        "mercury-salts",
        published(
            "mercury-specimens",
            "Taxidermy and herbaria of the 18th and 19th centuries are presumed to be treated with "
            "mercury salts.",
            MUSEUMS_ASSOCIATION,
        ),
        kinds=phrases(_TAXIDERMY_LIST, _HERBARIUM_LIST),
        unless=_NO_TAXIDERMY,
        not_before=phrases(_NOT_THE_ANIMAL, _NO_HERBARIUM),
        years=_18TH_AND_19TH_CENTURY,
        undated=False,
    ),
    Presumption(
        "fluid-preserved",
        published(
            "fluid-specimens",
            "Specimens in spirit or formalin are presumed to hold a flammable or toxic fluid.",
            f"{E_TOOL}, spirit collections",
        ),
        kinds=phrases(
            "fluid specimen, spirit specimen, wet specimen, fluid preserved, preserved in spirit, "
            "preserved in alcohol, preserved in formalin, preserved in fluid"
        ),
        materials=phrases("formalin, formaldehyde, ethanol, methylated spirit, isopropanol"),
        answered_by=("unknown-fluid",),
    ),
    Presumption(
        "unknown-fluid",
        published(
            "unknown-fluid",
            "A fluid that nobody has identified is taken for toxic and flammable.",
            f"{E_TOOL}, spirit collections",
        ),
        kinds=phrases("unknown fluid, unknown liquid, unidentified fluid, unidentified liquid"),
        materials=phrases(
            "unknown fluid, unknown liquid, unidentified fluid, unidentified liquid, "
            "fluid not known, liquid not known, fluid unknown, liquid unknown"
        ),
        answered_by=("fluid-preserved",),
    ),
    Presumption(
        "poisoned-point",
        published(
            "poisoned-point",
            "Darts of blowpipes and arrows called poisoned are presumed to bear active poison.",
            "a published paper on hazards in museum objects (curare on weapons)",
        ),
        kinds=phrases(
            "blowpipe dart, blowgun dart, poison arrow, poisoned arrow, poison dart, poisoned dart"
        ),
        materials=phrases("curare, arrow poison"),
        not_before=phrases("frog"),
    ),
    Presumption(
        "naphthalene",
        practice(
            "naphthalene-named",
            "What is said to hold mothballs, naphthalene or camphor is presumed to give it off.",
        ),
        kinds=phrases("mothball, naphthalene, paradichlorobenzene"),
        materials=phrases("mothball, naphthalene, paradichlorobenzene, camphor"),
        not_before=phrases("wood"),
    ),
    Presumption(
        "ddt",
        published(
            "ddt-named",
            "What is said to hold DDT, lindane or their like is presumed to bear it still.",
            "BS EN 16790:2016",
        ),
        kinds=phrases("ddt, lindane, dieldrin, aldrin"),
        materials=phrases("ddt, lindane, dieldrin, aldrin"),
    ),
    Presumption(
        "human-remains",
        published(
            "human-remains",
            "What is named as human remains is presumed to be so, with the respect that asks for.",
            "UK Department for Culture, Guidance for the Care of Human Remains in Museums, 2005",
        ),
        kinds=phrases(
            "human remains, human skull, human skeleton, human bone, human tissue, human tooth, "
            "human teeth, human mummy, mummified human, shrunken head"
        ),
        materials=phrases("human bone, human skin, human tooth, human teeth, human tissue"),
        unless=phrases("plaster, plaster cast, cast of, plastic, resin, papier mache"),
        by_name=True,
    ),
    Presumption(
        "cyanide",
        from_memory(
            "cyanide",
            "Killing jars of insect collectors, and what is said to hold cyanide, are presumed to "
            "hold it still.",
        ),
        kinds=phrases("killing jar, killing bottle, cyanide jar, cyanide bottle, cyanide tin"),
        materials=phrases("cyanide"),
    ),
    Presumption(
        "strychnine",
        from_memory(
            "strychnine",
            "What is said to hold strychnine is presumed to hold it still.",
        ),
        kinds=phrases("strychnine"),
        materials=phrases("strychnine, nux vomica"),
    ),
)
