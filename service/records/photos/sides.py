"""Words in file names that say which side a photo shows; common practice, no source."""

from __future__ import annotations

from collections.abc import Iterable

from service.records.record import PhotoRole

# English, then German, French, Dutch, Italian, Spanish and Swedish; from memory.
_WORDS = {
    PhotoRole.FRONT: (
        "front recto obverse vorne vorderseite avers devant voorkant voorzijde fronte davanti"
        " anverso frente framsida"
    ),
    PhotoRole.BACK: (
        "back rear reverse verso hinten rückseite rueckseite ruckseite revers dos arrière arriere"
        " achterkant achterzijde retro reverso dorso baksida"
    ),
    PhotoRole.DETAIL: (
        "detail details closeup inside interior underside bottom top side left right label mark"
        " signature innen unten oben links rechts détail détails dettaglio detalle detalj"
    ),
}
_ROLES = {word: role for role, words in _WORDS.items() for word in words.split()}

SIDE_WORDS = frozenset(_ROLES)


def find_role(runs: Iterable[str]) -> PhotoRole | None:
    """Give the side that words without case name; a detail of a side, or two sides, is a detail."""
    roles = {_ROLES[run] for run in runs if run in _ROLES}
    if len(roles) > 1:
        return PhotoRole.DETAIL
    return next(iter(roles), None)
