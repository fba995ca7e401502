"""The words for materials that rules speak of: each group with its synonyms, matched whole.

The groups are those of the rules; which words belong to them is from memory. An item of a record
that holds one of the `unless` phrases is not of the group, whatever else it says: silence is the
smaller mistake.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from service.handling.phrases import find_phrase
from service.records.record import ObjectRecord


@dataclass(frozen=True, slots=True)
class MaterialGroup:
    """Materials that behave alike for a rule, and the words that only look like them."""

    words: tuple[str, ...]
    unless: tuple[str, ...] = ()


def _list(text: str) -> tuple[str, ...]:
    return tuple(item.strip() for item in text.split(","))


_GRADED = "acid free, archival, lignin free, conservation grade, museum board"

MATERIALS: dict[str, MaterialGroup] = {
    "silver": MaterialGroup(
        _list("silver, sterling, silver gilt, gelatin silver, daguerreotype"),
        _list("silver birch, silver fir, silver sand, nickel silver, german silver, silver paint"),
    ),
    "copper alloy": MaterialGroup(
        _list(
            "copper, copper alloy, brass, bronze, gunmetal, pinchbeck, ormolu, bell metal,"
            " nickel silver, german silver, gilding metal"
        ),
        _list("copper sulphate, copper oxide, bronze paint, bronze powder, brass effect"),
    ),
    "metal thread": MaterialGroup(
        _list("metal thread, metallic thread, bullion, tinsel, sequin, sequins, spangles"),
        _list("plastic sequins, celluloid sequins, gelatin sequins, gelatine sequins"),
    ),
    "lead": MaterialGroup(
        _list("lead, lead alloy, leaden"),
        _list(
            "lead glass, lead crystal, lead glaze, lead glazed, black lead, lead pencil, red lead,"
            " white lead, lead free, lead paint, lead white"
        ),
    ),
    "pewter": MaterialGroup(_list("pewter")),
    "shell": MaterialGroup(
        _list("shell, shells, mother of pearl, nacre, cowrie, cowries"),
        _list("tortoise shell, shell case, coconut shell"),
    ),
    "iron": MaterialGroup(
        _list("iron, steel, tinplate, tinned iron"),
        _list("iron gall, iron tannate, iron oxide, iron gall ink"),
    ),
    "wool": MaterialGroup(
        _list(
            "wool, woollen, woolen, worsted, felt, tweed, serge, flannel, baize, broadcloth,"
            " cashmere, mohair, alpaca"
        ),
        _list(
            "cotton wool, wood wool, glass wool, mineral wool, rock wool, steel wool, wire wool,"
            " cotton flannel, polyester felt, acrylic felt, roofing felt, polyester wool"
        ),
    ),
    "rubber": MaterialGroup(
        _list(
            "rubber, india rubber, rubberised, rubberized, vulcanite, ebonite, latex, rubber bands"
        ),
        _list("silicone rubber, rubber stamp, brass rubbing"),
    ),
    "oak": MaterialGroup(_list("oak, oakwood"), _list("oak gall, oak galls")),
    "acid wood": MaterialGroup(
        _list("chestnut, plywood, chipboard, mdf, fibreboard, hardboard, particle board"),
        _list("horse chestnut"),
    ),
    "acid board": MaterialGroup(
        _list(
            "acid board, acidic board, acid card, cardboard, strawboard, brown card,"
            " greyboard, brown paper, kraft paper, shoe box, shoebox"
        ),
        _list(_GRADED),
    ),
    "nitrate film": MaterialGroup(_list("cellulose nitrate, nitrate film, nitrocellulose")),
    "acetate film": MaterialGroup(
        _list("cellulose acetate, acetate film, cellulose diacetate, cellulose triacetate"),
        _list("acetate rayon, acetate silk"),
    ),
    "celluloid": MaterialGroup(_list("celluloid, xylonite, parkesine, french ivory")),
    "pvc": MaterialGroup(
        _list("pvc, vinyl, polyvinyl chloride"), _list("vinyl acetate, pvc free, without pvc")
    ),
    "mothballs": MaterialGroup(_list("naphthalene, mothballs, mothball, paradichlorobenzene")),
    "old plastic": MaterialGroup(
        _list(
            "plastic, plastics, polystyrene, celluloid, casein, galalith, pvc, vinyl,"
            " cellulose acetate, acrylic"
        ),
        _list("acrylic paint, polystyrene free"),
    ),
    "weighted silk": MaterialGroup(_list("weighted silk, iron tannate, iron tannate dyed")),
    "leather": MaterialGroup(_list("leather, rawhide, suede"), _list("leatherette, leather cloth")),
    "protein fibre": MaterialGroup(
        _list("silk, wool, woollen, woolen, worsted, cashmere, leather, fur, feather, feathers"),
        _list("artificial silk, cotton wool, wood wool, glass wool, steel wool, art silk"),
    ),
    "buffered tissue": MaterialGroup(_list("buffered tissue, buffered paper")),
    "photograph": MaterialGroup(
        _list(
            "albumen print, gelatin silver, photographic paper, collodion, gelatin, photograph,"
            " negative, negatives"
        )
    ),
    "textile": MaterialGroup(
        _list(
            "cotton, linen, silk, wool, woollen, woolen, worsted, velvet, lace, net, tulle,"
            " chiffon, satin, crepe, muslin, calico, gauze, felt, tweed, serge, flannel, rayon,"
            " viscose, nylon, jute, brocade, damask, taffeta, textile, cloth"
        ),
        _list("cotton wool, glass wool, wood wool, steel wool, linen paper, leather cloth"),
    ),
}

_GARMENTS = _list(
    "dress, gown, coat, jacket, bodice, skirt, petticoat, blouse, shirt, waistcoat, trousers,"
    " uniform, cloak, cape, shawl, jersey, guernsey, jumper, cardigan, corset, apron, sash, scarf,"
    " robe, tunic, flag, banner, quilt, curtain, tablecloth, sampler, hat, bonnet, cap, stockings"
)
"""Names of things made of cloth, where no material is recorded."""

_BY_HAZARD = {
    "nitrate-film": "nitrate film",
    "acetate-film": "acetate film",
    "celluloid": "celluloid",
    "naphthalene": "mothballs",
}
"""Hazards that are a material."""

METALS = ("silver", "copper alloy", "lead", "pewter", "iron")


def find_material(items: Iterable[str], group: str) -> str:
    """Give the first item that is of a group, as it was written; nothing where there is none."""
    return next((item for item in items if group in _groups_of(item)), "")


# A collection names the same few materials thousands of times.
@lru_cache(maxsize=4096)
def _groups_of(item: str) -> frozenset[str]:
    return frozenset(
        name
        for name, entry in MATERIALS.items()
        if find_phrase(item, entry.words) and not find_phrase(item, entry.unless)
    )


def object_material(record: ObjectRecord, group: str) -> str:
    """Name what makes an object one of a group, with the state where only a hazard says so."""
    return list_materials(record).get(group, "")


def list_materials(record: ObjectRecord) -> dict[str, str]:
    """Give every group an object is of, with what makes it so."""
    found: dict[str, str] = {}
    for hazard in record.hazards:
        if group := _BY_HAZARD.get(hazard.code):
            found.setdefault(group, f"{group}, {hazard.state.value}")
    for item in record.materials:
        for group in _groups_of(item):
            found.setdefault(group, item)
    return found


def is_textile(record: ObjectRecord) -> bool:
    """Tell whether an object is of cloth: by its first material, else by its name.

    Records name the main material first (common practice, no source): a brass bob on a cotton cord
    is no textile.
    """
    if record.materials:
        return bool(find_material(record.materials[:1], "textile"))
    return bool(find_phrase(record.object_name, _GARMENTS))
