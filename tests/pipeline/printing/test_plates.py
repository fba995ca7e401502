"""Tests for cards to plates: found, made, failed, and kept for the next run."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import TypeVar, cast

import pytest

from service.cards.compose.lid_card import compose_lid_card
from service.cards.kinds import LID_CARD, compose_cards
from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.errors import JobCrashedError, ProofFailedError, ServiceError, TemplateError
from service.geometry import Rect, Size
from service.pages.fit import Fitting, fit_card
from service.pages.page import Page, TextBlock
from service.pipeline.options import FittedCard
from service.pipeline.printing.photos import Photos
from service.pipeline.printing.plates import CHUNK, make_cards
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Workshop
from service.records.record import Collection, ContainerRecord, Museum
from service.render.inking import Chunk, ink_and_prove
from service.render.task import ENVIRONMENT
from service.render.worker import Workers
from service.sheets.stocks import STOCKS, find_stock

Argument = TypeVar("Argument")
Result = TypeVar("Result")
STOCK = find_stock("A4 card 2xA5", STOCKS)


@pytest.fixture
def page(collection: Collection, workshop: Workshop) -> Page:
    """Give the one page of the box's lid card, whose objects have no photos."""
    plain = replace(
        collection, objects=tuple(replace(one, photos=()) for one in collection.objects)
    )
    (packing,) = arrange_packings(plain).packings
    (card,) = compose_cards(packing, collection.museum, kinds=(LID_CARD,))
    return fit_card(card, Size(210, 148), Fitting(workshop.ruler))[0]


@pytest.fixture
def fresh(workshop: Workshop, tmp_path: Path) -> Workshop:
    """Give the workshop with an empty cache of plates."""
    return replace(workshop, plates=replace(workshop.plates, path=tmp_path / "plates.db"))


def card(number: str, *pages: Page) -> FittedCard:
    """Make a card of pages that name their container."""
    packing = Packing(ContainerRecord(number), 1, ())
    return FittedCard(LID_CARD, compose_lid_card(packing, Museum()), pages, STOCK)


def with_title(page: Page, title: str) -> Page:
    """Give the page with another title, set in one line as it was."""
    blocks = tuple(
        replace(block, lines=(title,), whole=title)
        if isinstance(block, TextBlock) and block.purpose == "title"
        else block
        for block in page.blocks
    )
    return replace(page, blocks=blocks)


def outside(page: Page) -> Page:
    """Give the page with a text that is placed off its edge, and so cannot be proved."""
    lost = next(b for b in page.blocks if isinstance(b, TextBlock) and b.purpose == "caption")
    return replace(page, blocks=(*page.blocks, replace(lost, rect=Rect(400, 10, 50, 5))))


@pytest.mark.print
def test_one_bad_page_costs_its_own_card(page: Page, fresh: Workshop) -> None:
    """Of three cards the one with a page that fails its proof comes with its error."""
    bad = outside(page)
    cards = [card("a", page), card("b", page, bad), card("c", with_title(page, "Rope"))]
    shelf = Shelf()
    made = list(make_cards(cards, Photos({}, {}, fresh), fresh, shelf))
    assert [one.card.head.container_number for one, _ in made] == ["a", "b", "c"]
    assert [type(error) for _, error in made] == [type(None), ProofFailedError, type(None)]
    assert all(shelf.holds(face.key) for one, error in made if not error for face in one.faces)


@pytest.mark.print
def test_the_next_run_makes_nothing(page: Page, fresh: Workshop) -> None:
    """Plates of a run are found by the next one, which starts no child for them."""
    cards = [card(str(number), with_title(page, f"Rope {number}")) for number in range(CHUNK + 3)]
    first, second = Shelf(), Shelf()
    once = list(make_cards(cards, Photos({}, {}, fresh), fresh, first))
    idle = replace(fresh, workers=_NoWorkers(1))
    again = list(make_cards(cards, Photos({}, {}, idle), idle, second))
    assert [one.faces for one, _ in once] == [one.faces for one, _ in again]
    keys = [face.key for one, _ in once for face in one.faces]
    assert first.proved(keys) == second.proved(keys)


@pytest.mark.print
def test_cards_come_before_the_last_is_asked_for(page: Page, fresh: Workshop) -> None:
    """Finished cards leave while others still come in, so that a long run holds few pages."""
    asked = 0

    def cards() -> Iterator[FittedCard]:
        nonlocal asked
        for number in range(400):
            asked += 1
            yield card(str(number), with_title(page, f"Rope {number}"))

    made = make_cards(cards(), Photos({}, {}, fresh), fresh, Shelf())
    next(made)
    assert asked < 400
    assert sum(1 for _ in made) == 399


def test_a_template_that_is_missing_costs_its_own_kind(page: Page, fresh: Workshop) -> None:
    """A page whose template cannot be measured comes with the reason; nothing is raised."""
    odd = replace(page, kind="no-such-kind")
    ((_, error),) = make_cards([card("a", odd)], Photos({}, {}, fresh), fresh, Shelf())
    assert isinstance(error, TemplateError)


@pytest.mark.print
def test_a_child_that_dies_costs_the_plate_it_died_of(page: Page, fresh: Workshop) -> None:
    """A chunk whose child is killed is made again plate by plate."""
    deadly = replace(page, container_number=DEADLY)
    cards = [card("a", with_title(page, "Rope")), card("b", with_title(deadly, "Knife"))]
    with _DyingWorkers(1, environment=ENVIRONMENT) as workers:
        dying = replace(fresh, workers=workers)
        made = list(make_cards(cards, Photos({}, {}, dying), dying, Shelf()))
    assert [type(error) for _, error in made] == [type(None), JobCrashedError]


DEADLY = "deadly"


def ink_or_die(chunk: Chunk) -> object:
    """Make plates, unless one of them is deadly; runs in a child."""
    if any(task.page.container_number == DEADLY for task in chunk.tasks):
        os.kill(os.getpid(), signal.SIGKILL)
    return ink_and_prove(chunk)


class _NoWorkers(Workers):
    """Workers that must get nothing to do."""

    def run(
        self,
        function: Callable[[Argument], Result],
        arguments: Iterable[Argument],
        *,
        limit_seconds: float = 1.0,
        on_progress: Callable[[int], None] | None = None,
    ) -> Iterator[Result | ServiceError]:
        """Ask for the tasks, of which there must be none."""
        assert list(arguments) == []
        return super().run(function, [], limit_seconds=limit_seconds, on_progress=on_progress)


class _DyingWorkers(Workers):
    """Workers one of whose children ends itself when it meets what is deadly."""

    def run(
        self,
        function: Callable[[Argument], Result],
        arguments: Iterable[Argument],
        *,
        limit_seconds: float = 1.0,
        on_progress: Callable[[int], None] | None = None,
    ) -> Iterator[Result | ServiceError]:
        """Run the deadly function instead of the one asked for."""
        deadly = cast("Callable[[Argument], Result]", ink_or_die)
        assert function is cast("object", ink_and_prove)
        return super().run(deadly, arguments, limit_seconds=limit_seconds, on_progress=on_progress)
