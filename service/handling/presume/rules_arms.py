"""Presumptions on arms and explosives, and on what cuts, snaps shut or keeps a charge."""

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

_OLD_KITS = Years(1870, 1969)
_NOT_A_ROUND = phrases(
    "belt, bag, box, case, clip, fuse, launcher, making, mould, paper, pen, pouch, press, tool, "
    "trap"
)
_NOT_A_GUN = phrases(
    "association, badge, bag, ball, box, brigade, brush, bucket, butt, case, cleaner, club, "
    "company, corps, cup, green, holster, key, lock, lodge, mould, oil, pouch, range, regiment, "
    "rod, sling, team, volunteer"
)

ARMS: tuple[Presumption, ...] = (
    Presumption(
        "ammunition",
        published(
            "ammunition",
            "Shells, cartridges, grenades and flares are presumed live, whatever their age.",
            f"{E_TOOL}, explosives",
        ),
        kinds=phrases(
            "ammunition, shell case, artillery shell, mortar shell, live shell, cartridge, "
            "rifle cartridge, shotgun cartridge, grenade, hand grenade, rifle grenade, "
            "mortar bomb, aerial bomb, incendiary bomb, land mine, naval mine, torpedo, detonator, "
            "percussion cap, signal flare, distress flare, maroon, gunpowder, dynamite, ordnance"
        ),
        materials=phrases("gunpowder, cordite, black powder, explosive, dynamite"),
        unless=phrases(
            "ink cartridge, toner cartridge, film cartridge, stylus cartridge, phono cartridge, "
            "tape cartridge, gas cartridge, fire grenade, extinguisher, ordnance survey, "
            "ordnance datum, jacket, dress, cloth, leather"
        ),
        not_before=_NOT_A_ROUND,
    ),
    Presumption(
        "firearm",
        published(
            "firearm",
            "A firearm is presumed loaded until a competent person has checked it.",
            f"{E_TOOL}, firearms",
        ),
        kinds=phrases(
            "firearm, handgun, pistol, flintlock pistol, duelling pistol, revolver, rifle, musket, "
            "carbine, shotgun, blunderbuss, machine gun, submachine gun, fowling piece, "
            "sporting gun, punt gun, air rifle, air pistol"
        ),
        unless=phrases("toy pistol, water pistol, cap pistol, toy gun, toy rifle, spray pistol"),
        not_before=_NOT_A_GUN,
        by_name=True,
    ),
    Presumption(
        "picric-acid",
        from_memory(
            "picric-acid-named",
            "Picric acid is presumed wherever it is named.",
        ),
        kinds=phrases("picric acid"),
        materials=phrases("picric acid"),
    ),
    Presumption(
        "picric-acid",
        published(
            "picric-acid-kits",
            "Medical and first aid kits from 1870 to the 1960s are presumed to hold picric acid.",
            "National Services Te Paerangi, Explosive picric acid found in museum collections: in "
            "use to the 1960s; the first year from memory",
        ),
        kinds=phrases(
            "first aid kit, first aid box, first aid tin, medical kit, burn dressing, "
            "medicine chest"
        ),
        years=_OLD_KITS,
        undated=False,
    ),
    Presumption(
        "needles",
        practice("needles", "Syringes are presumed to have their needles still."),
        kinds=phrases("syringe, hypodermic syringe, hypodermic needle, hypodermic set"),
        unless=phrases("garden syringe, grease syringe, garden"),
        answered_by=("sharps",),
    ),
    Presumption(
        "spring-loaded",
        published(
            "spring-loaded",
            "Traps are presumed to be under tension; which things these are is common practice.",
            MUSEUMS_ASSOCIATION,
        ),
        kinds=phrases(
            "gin trap, man trap, mantrap, mole trap, rat trap, mouse trap, mousetrap, animal trap, "
            "rabbit trap, pole trap, spring gun, bear trap"
        ),
    ),
    Presumption(
        "battery",
        practice("battery", "Portable radios and torches for dry cells are presumed to hold one."),
        kinds=phrases(
            "transistor radio, portable radio, electric torch, pocket torch, flashlight, "
            "dry battery, dry cell, battery torch"
        ),
    ),
    Presumption(
        "electrical",
        from_memory(
            "electrical",
            "Capacitors, valve radios and television sets are presumed to keep a charge.",
        ),
        kinds=phrases(
            "capacitor, leyden jar, valve radio, valve wireless, television set, radio transmitter"
        ),
        not_before=phrases("licence, valve"),
    ),
)
