"""The cards of a container on its page: how each stands, and one of them as it would be printed."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import quote, urlencode

from service.cards.kinds import find_kind
from service.keeping.containers.cards import ContainerCard, ContainerCards
from service.languages.saying import said
from service.web.views.language.telling import tell_error

_WIDTH_PX = 900
_SEVERAL = 2


@dataclass(frozen=True, slots=True)
class ShownCard:
    """One card: its name as people say it, how it stands, and the address of its picture."""

    card: ContainerCard
    name: str
    where: str
    picture: str
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class ShownCards:
    """All cards of a container; `chosen` is the one that is pictured, None where there is none."""

    cards: tuple[ShownCard, ...]
    chosen: ShownCard | None
    failed: str

    @property
    def reasons(self) -> tuple[str, ...]:
        """Say why cards are to be swapped; a reason that several share is told once."""
        words = (change.words for one in self.cards for change in one.card.changes)
        return tuple(dict.fromkeys(words))


def show_cards(
    judged: ContainerCards, container_number: str, *, revision: int, kind: str, side: int
) -> ShownCards:
    """Show the cards; where the kind asked for is none of them, the first one is pictured."""
    sides = [one.kind for one in judged.cards]
    pictured = [one for one in judged.cards if one.letters]
    asked = [one for one in pictured if (one.kind, one.side) == (kind, side)]
    chosen = next(iter([*asked, *pictured]), None)
    shown = tuple(
        ShownCard(
            one,
            _name(one, is_of_several=sides.count(one.kind) >= _SEVERAL),
            find_kind(one.kind).where,
            _picture(one, container_number, revision) if one.letters else "",
            one is chosen,
        )
        for one in judged.cards
    )
    failed = tell_error(judged.failed) if judged.failed else ""
    return ShownCards(shown, next((one for one in shown if one.is_chosen), None), failed)


def _name(card: ContainerCard, *, is_of_several: bool) -> str:
    name = said(find_kind(card.kind).name)
    return f"{name} {card.side}" if is_of_several else name


def _picture(card: ContainerCard, container_number: str, revision: int) -> str:
    """Give an address that changes when the card does, for browsers keep pictures they have."""
    asked = {"kind": card.kind, "side": card.side, "page": 1, "width_px": _WIDTH_PX}
    state = {"r": revision, "k": card.letters}
    return f"/api/containers/{quote(container_number)}/preview?{urlencode(asked | state)}"
