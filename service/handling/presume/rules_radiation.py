"""Presumptions on what radiates, and on asbestos."""

from __future__ import annotations

from service.handling.hazards.entry import E_TOOL
from service.handling.presume.presumption import Presumption, from_memory, phrases, published
from service.handling.presume.years import Years

_LUMINOUS_DIALS = Years(-10_000, 1979)
"""No first year: the dial of an older clock may have been painted later."""
_ASBESTOS_GOODS = Years(1878, 1999)
_STATIC_BRUSHES = Years(1940, 9_999)

RADIATION: tuple[Presumption, ...] = (
    Presumption(
        "radium",
        published(
            "radium-dials",
            "Clocks, watches, compasses and dials that glow are presumed to bear radium, where "
            "they are not dated after the 1970s.",
            f"{E_TOOL}, radiation; the decade from memory",
        ),
        together=(
            phrases(
                "clock, alarm clock, watch, wristwatch, pocket watch, compass, dial, altimeter, "
                "gauge, aircraft instrument, instrument panel, gun sight, depth gauge"
            ),
            phrases(
                "luminous, luminised, luminized, luminescent, glow in the dark, glowing, "
                "glows, radium, radium paint"
            ),
        ),
        unless=phrases("tritium, promethium"),
        years=_LUMINOUS_DIALS,
    ),
    Presumption(
        "radium",
        published(
            "radium-named",
            "Radium and luminous paint with it are presumed wherever they are named.",
            f"{E_TOOL}, radiation",
        ),
        materials=phrases("radium, radium paint, radium luminous paint"),
    ),
    Presumption(
        "thorium",
        published(
            "thorium-mantles",
            "Gas mantles are presumed to hold thorium.",
            f"{E_TOOL}, radiation",
        ),
        kinds=phrases("gas mantle, incandescent mantle, lamp mantle, lantern mantle"),
        materials=phrases("thorium, thorium oxide"),
    ),
    Presumption(
        "uranium-glass",
        published(
            "uranium-glass",
            "Uranium glass, by that or its other name of vaseline glass, is presumed radioactive.",
            f"{E_TOOL}, radiation",
        ),
        kinds=phrases("uranium glass, vaseline glass"),
        materials=phrases("uranium glass, vaseline glass"),
        likeness=True,
    ),
    Presumption(
        "radioactive-mineral",
        published(
            "radioactive-minerals",
            "Ores of uranium and thorium are presumed radioactive; which minerals they are is from "
            "memory.",
            f"{E_TOOL}, radiation",
        ),
        kinds=phrases(
            "uraninite, pitchblende, autunite, torbernite, carnotite, uranophane, thorianite, "
            "thorite, monazite, uranium ore, thorium ore"
        ),
        materials=phrases(
            "uraninite, pitchblende, autunite, torbernite, carnotite, uranophane, thorianite, "
            "thorite, monazite, uranium ore, thorium ore"
        ),
    ),
    Presumption(
        "polonium",
        from_memory(
            "polonium",
            "Anti-static brushes made after 1940 are presumed to hold polonium.",
        ),
        kinds=phrases("anti static brush, antistatic brush, static eliminator brush"),
        materials=phrases("polonium"),
        years=_STATIC_BRUSHES,
        undated=False,
    ),
    Presumption(
        "asbestos",
        published(
            "asbestos-named",
            "Asbestos is presumed wherever it or one of its minerals is named.",
            f"{E_TOOL}, asbestos",
        ),
        kinds=phrases(
            "asbestos, chrysotile, crocidolite, amosite, tremolite, actinolite, anthophyllite"
        ),
        materials=phrases(
            "asbestos, chrysotile, crocidolite, amosite, tremolite, actinolite, anthophyllite"
        ),
        not_before=phrases("free"),
    ),
    Presumption(
        "asbestos",
        published(
            "asbestos-goods",
            "Gas masks and goods made against heat are presumed to hold asbestos, where they are "
            "not dated outside 1878 to 1999.",
            f"{E_TOOL}, asbestos; Social History Curators Group list, 2015; for the years: "
            "Ingenium, Artifacts and asbestos; National Services Te Paerangi, asbestos, 2018",
        ),
        kinds=phrases(
            "gas mask, respirator, gas mantle, oven glove, ironing board, iron stand, hair dryer, "
            "hairdryer, hair waver, heater, cooker, stove, toaster, pot holder, clothes drier, "
            "clothes dryer, fire blanket, fireproof curtain, artificial snow, fire helmet, "
            "fireman's helmet, steel helmet, firefighter's clothing, fire suit, "
            "rescue breathing apparatus, brake lining, brake pad, clutch facing"
        ),
        not_before=phrases("bag, box, case, poster, badge, polish"),
        years=_ASBESTOS_GOODS,
    ),
)
