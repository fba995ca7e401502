"""Presumptions on film and early plastics."""

from __future__ import annotations

from service.handling.hazards.entry import E_TOOL
from service.handling.presume.presumption import Presumption, phrases, practice, published
from service.handling.presume.years import Years

_NITRATE = Years(1889, 1951)
_FILM = phrases(
    "film, film negative, negative, roll film, sheet film, cine film, film reel, film strip, "
    "x ray film, radiograph, microfilm, transparency"
)
_NOT_FILM = phrases("camera, projector, poster, star, can, splicer, script, programme")

FILM: tuple[Presumption, ...] = (
    Presumption(
        "nitrate-film",
        published(
            "nitrate-film-dated",
            "Film negatives, motion picture and X-ray film from 1889 to 1951 are presumed to be "
            "cellulose nitrate.",
            f"{E_TOOL}, nitrate film; HSE INDG469; the years from a film maker's leaflet, 2003",
        ),
        kinds=phrases(
            "film negative, negative film, roll film, roll film negative, sheet film, cine film, "
            "motion picture film, 35 mm film, 35mm film, film reel, reel of film, film strip, "
            "x ray film, x ray negative, radiograph"
        ),
        together=(
            phrases("negative, x ray"),
            phrases("film, film base, cellulose, flexible film, plastic film"),
        ),
        unless=phrases(
            "glass negative, glass plate, glass lantern, paper negative, safety film, acetate, "
            "cellulose acetate, polyester, digital"
        ),
        not_before=_NOT_FILM,
        years=_NITRATE,
        undated=False,
        likeness=True,
        answered_by=("acetate-film",),
    ),
    Presumption(
        "nitrate-film",
        published(
            "nitrate-film-named",
            "Film that is said to be cellulose nitrate is presumed to be so, whatever its date.",
            f"{E_TOOL}, nitrate film; HSE INDG469",
        ),
        kinds=phrases("nitrate film, nitrate negative, cellulose nitrate film, nitrate reel"),
        together=(_FILM, phrases("cellulose nitrate, nitrate base")),
        not_before=_NOT_FILM,
        likeness=True,
        answered_by=("acetate-film",),
    ),
    Presumption(
        "acetate-film",
        published(
            "acetate-film-named",
            "Film that is said to be cellulose acetate is presumed to give off acid with age.",
            "NPS Museum Handbook, appendix M",
        ),
        kinds=phrases("acetate film, acetate negative, safety film, triacetate film"),
        together=(_FILM, phrases("cellulose acetate, acetate, triacetate")),
        not_before=_NOT_FILM,
        likeness=True,
        answered_by=("nitrate-film",),
    ),
    Presumption(
        "celluloid",
        practice(
            "celluloid-named",
            "Celluloid is presumed wherever it is named among the materials.",
        ),
        kinds=phrases("celluloid comb, celluloid doll, celluloid collar, celluloid toy"),
        materials=phrases("celluloid, cellulose nitrate, pyroxylin"),
        unless=_FILM,
        likeness=True,
        answered_by=("nitrate-film",),
    ),
)
