"""Packings to fitted cards, one after another."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.card import Card, ObjectTag
from service.cards.compose.asked.object_tag import compose_object_tag
from service.cards.kinds import OBJECT_TAG, compose_cards, find_kind
from service.cards.second.add import add_second_words
from service.cards.second.phrasebook import Phrasebook
from service.errors import ServiceError
from service.findings import Finding, Where, make_finding
from service.languages.catalogue import load_phrasebook
from service.pages.fit import Fitting
from service.pages.ruler import Ruler
from service.pipeline.choose import fit_on_stock
from service.pipeline.options import CardKey, FittedCard, PrintOptions, card_key, where_is
from service.pipeline.ready import Progress, Ready, tell_nobody
from service.records.record import ContainerRecord
from service.sentence import Sentence


def fit_cards(
    ready: Ready,
    options: PrintOptions,
    ruler: Ruler,
    findings: list[Finding],
    *,
    on_progress: Progress = tell_nobody,
) -> Iterator[FittedCard]:
    """Fit every card that can be; what is noticed on the way is added to `findings`.

    Each card once: an object whose parts lie in two containers has one tag.
    """
    kinds = options.asked_kinds
    fitted: set[CardKey] = set()
    fitting = Fitting(ruler, ready.museum.aisle_distance_mm)
    second = load_phrasebook(ready.museum.second_language)
    for done, packing in enumerate(ready.packings, start=1):
        where = Where(container_number=packing.container.container_number)
        try:
            cards = compose_cards(packing, ready.museum, kinds=kinds, phrasebook=second)
        except ServiceError as error:
            findings.append(failed_card(where, error))
            cards = ()
        for card in cards:
            key = card_key(card)
            if key in fitted or (options.only and key not in options.only):
                continue
            fitted.add(key)
            yield from fit_or_find(card, packing.container, fitting, options, findings)
        on_progress("cards", done, len(ready.packings))
    for tag in _loose_tags(ready, second, findings):
        yield from fit_or_find(tag, _NO_CONTAINER, fitting, options, findings)


_NO_CONTAINER = ContainerRecord("")
"""A tag fits alike wherever its object lies."""


def _loose_tags(
    ready: Ready, second: Phrasebook | None, findings: list[Finding]
) -> Iterator[ObjectTag]:
    for record in ready.loose:
        try:
            tag = compose_object_tag(record, ready.museum)
        except ServiceError as error:
            where = Where(object_number=record.object_number)
            findings.append(failed_card(where, error, OBJECT_TAG.name))
        else:
            yield add_second_words(tag, second) if second else tag


def failed_card(where: Where, error: ServiceError, kind: str = "") -> Finding:
    """Tell of a card that cannot be printed."""
    message = Sentence("{kind}: {error}", kind=kind or "The cards", error=error)
    return make_finding("card-failed", where, message, advice=Sentence(error.advice))


def fit_or_find(
    card: Card,
    container: ContainerRecord,
    fitting: Fitting,
    options: PrintOptions,
    findings: list[Finding],
) -> Iterator[FittedCard]:
    """Fit a card on the stock it is printed on; one that fits on none is a finding, and nothing."""
    kind = find_kind(card.kind)
    try:
        fitted, noticed = fit_on_stock(kind, card, container, fitting, options)
    except ServiceError as error:
        findings.append(failed_card(where_is(card), error, kind.name))
    else:
        findings.extend(noticed)
        yield fitted
