"""On which stocks the cards asked for would be printed: what to put in the printer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from service.cards.kinds import OBJECT_TAG
from service.contents.packing import Packing
from service.findings import Finding
from service.keeping.tags.today import compose_today_tags
from service.keeping.today import Today, compose_today
from service.pages.fit import Fitting
from service.pages.ruler import Ruler
from service.pipeline.fitting import fit_or_find
from service.pipeline.options import CardKey, PrintOptions
from service.records.record import ContainerRecord
from service.sheets.stock import Stock
from service.store.handles import Connection
from service.store.lists.pages import list_containers
from service.store.load_records import load_museum

MOST_CARDS = 150
"""No more are laid out, for it is asked while somebody waits: most cards share few stocks."""
_MOST_CONTAINERS = 100


@dataclass(frozen=True, slots=True)
class Paper:
    """A stock, and the cards that would go on it.

    Attributes:
        stock: The kind of sheet.
        kinds: The codes of the kinds of card.
        cards: How many cards of those that were looked at.
        faces: How many positions they take, without copies.
    """

    stock: Stock
    kinds: tuple[str, ...]
    cards: int
    faces: int


@dataclass(frozen=True, slots=True)
class PaperNeeded:
    """Every stock that is needed, the cards that fit on none, and whether more were asked for."""

    papers: tuple[Paper, ...]
    findings: tuple[Finding, ...]
    is_part: bool


def choose_paper(connection: Connection, ruler: Ruler, options: PrintOptions) -> PaperNeeded:
    """Fit the cards asked for as a run would, the first of them where they are many."""
    containers, tagged, is_part = _numbers(connection, options)
    today = compose_today(connection, ruler, containers)
    tags = compose_today_tags(connection, ruler, tagged or _tagged_by_kind(today, options))
    cards = {key: card for key, card in today.cards.items() if _is_wanted(key, today, options)}
    wanted = list((cards | dict(tags.cards)).items())
    fitting = Fitting(ruler, load_museum(connection).aisle_distance_mm)
    papers: dict[str, Paper] = {}
    findings: list[Finding] = []
    for (number, kind, _), card in wanted[:MOST_CARDS]:
        container = _container(number, kind, today.packings)
        for fitted in fit_or_find(card, container, fitting, options, findings):
            stock, faces = fitted.stock, len(fitted.pages)
            papers[stock.name] = _add(papers.get(stock.name), stock, kind, faces)
    return PaperNeeded(
        tuple(papers.values()), tuple(dict.fromkeys(findings)), is_part or len(wanted) > MOST_CARDS
    )


def _numbers(connection: Connection, options: PrintOptions) -> tuple[list[str], list[str], bool]:
    """Give the containers and the tagged objects to look at, and whether there are more."""
    tagged = sorted({number for number, kind, _ in options.only if kind == OBJECT_TAG.code})
    if options.only:
        named = {number for number, kind, _ in options.only if kind != OBJECT_TAG.code}
        containers = sorted(named)
    elif options.containers:
        containers = sorted(options.containers)
    else:
        page = list_containers(connection, limit=_MOST_CONTAINERS + 1)
        containers = [record.container_number for record in page.records]
    is_part = len(containers) > _MOST_CONTAINERS or len(tagged) > MOST_CARDS
    return containers[:_MOST_CONTAINERS], tagged[:MOST_CARDS], is_part


def _tagged_by_kind(today: Today, options: PrintOptions) -> list[str]:
    """Name what lies in the containers, where the tags of all of it are asked for."""
    if options.only or OBJECT_TAG not in options.kinds:
        return []
    numbers = {
        packed.record.object_number
        for packing in today.packings.values()
        for packed in packing.everything
        if packed.known
    }
    return sorted(numbers)[:MOST_CARDS]


def _is_wanted(key: CardKey, today: Today, options: PrintOptions) -> bool:
    if options.only:
        return key in options.only
    if options.kinds:
        return any(key[1] == kind.code for kind in options.kinds)
    return key in today.standing


def _container(number: str, kind: str, packings: Mapping[str, Packing]) -> ContainerRecord:
    if kind == OBJECT_TAG.code:
        return ContainerRecord("")
    return packings[number].container


def _add(paper: Paper | None, stock: Stock, kind: str, faces: int) -> Paper:
    if paper is None:
        return Paper(stock, (kind,), 1, faces)
    kinds = tuple(dict.fromkeys((*paper.kinds, kind)))
    return Paper(stock, kinds, paper.cards + 1, paper.faces + faces)
