"""Tests for fitting the cards of a run one after another."""

from __future__ import annotations

from dataclasses import replace
from itertools import islice

from service.cards.kinds import END_LABEL, LID_CARD
from service.findings import Finding, Where
from service.pipeline.fitting import fit_cards
from service.pipeline.options import PrintOptions, card_key, object_tag_keys, where_is
from service.pipeline.ready import Workshop, make_ready
from service.records.record import Collection


def test_cards_come_when_they_are_asked_for(collection: Collection, workshop: Workshop) -> None:
    """The first card is there before the second container is looked at."""
    record, packing = collection.containers[0], collection.packings[0]
    second = replace(record, container_number="B-2")
    both = replace(
        collection,
        containers=(record, second),
        packings=(packing, replace(packing, container_number="B-2", places=())),
    )
    options = PrintOptions(kinds=(LID_CARD,))
    ready = make_ready(both, {}, options, workshop)
    told: list[tuple[str, int, int]] = []
    cards = fit_cards(
        ready,
        options,
        workshop.ruler,
        [],
        on_progress=lambda step, done, of: told.append((step, done, of)),
    )
    assert [card.card.head.container_number for card in islice(cards, 1)] == ["B-1"]
    assert told == []


def test_only_the_cards_asked_for_are_fitted(collection: Collection, workshop: Workshop) -> None:
    """Of all cards of a container one side of its end labels can be printed alone."""
    options = PrintOptions(only=frozenset({("B-1", "end-label", 2)}))
    ready = make_ready(collection, {}, options, workshop)
    (fitted,) = fit_cards(ready, options, workshop.ruler, [])
    assert card_key(fitted.card) == ("B-1", "end-label", 2)


def test_the_tag_of_one_object_is_fitted_alone(collection: Collection, workshop: Workshop) -> None:
    """Naming an object asks for its tag; parts of it in two boxes make no second one."""
    record, packing = collection.containers[0], collection.packings[0]
    both = replace(
        collection,
        containers=(record, replace(record, container_number="B-2")),
        packings=(packing, replace(packing, container_number="B-2")),
    )
    options = PrintOptions(only=object_tag_keys(["1987.412.10"]))
    ready = make_ready(both, {}, options, workshop)
    (fitted,) = fit_cards(ready, options, workshop.ruler, [])
    assert card_key(fitted.card) == ("1987.412.10", "object-tag", 1)
    assert where_is(fitted.card) == Where(object_number="1987.412.10")


def test_a_tag_needs_no_packing(collection: Collection, workshop: Workshop) -> None:
    """An object that is packed nowhere gets the tag that it would get in any box."""
    options = PrintOptions(only=object_tag_keys(["1987.412.10"]))
    unpacked = replace(collection, packings=())
    for some in (collection, unpacked, replace(unpacked, containers=())):
        ready = make_ready(some, {}, options, workshop)
        (fitted,) = fit_cards(ready, options, workshop.ruler, [])
        assert card_key(fitted.card) == ("1987.412.10", "object-tag", 1)
        assert "hazard-presumed" not in {finding.code for finding in ready.findings}


def test_a_tag_that_cannot_be_worded_is_told(collection: Collection, workshop: Workshop) -> None:
    """A loose object whose address no symbol can carry is named, and the others are fitted."""
    museum = replace(collection.museum, object_address="http://plain.example/{object_number}")
    options = PrintOptions(only=object_tag_keys(["1987.412.10"]))
    findings: list[Finding] = []
    ready = make_ready(replace(collection, museum=museum, packings=()), {}, options, workshop)
    assert list(fit_cards(ready, options, workshop.ruler, findings)) == []
    assert [(one.code, one.where) for one in findings] == [
        ("card-failed", Where(object_number="1987.412.10"))
    ]


def test_a_card_that_does_not_fit_is_told(collection: Collection, workshop: Workshop) -> None:
    """What cannot be fitted is a finding that names the container and the kind."""
    number = "B" * 60
    odd = replace(
        collection,
        containers=(replace(collection.containers[0], container_number=number),),
        packings=(replace(collection.packings[0], container_number=number),),
    )
    options = PrintOptions(kinds=(END_LABEL,))
    findings: list[Finding] = []
    ready = make_ready(odd, {}, options, workshop)
    assert list(fit_cards(ready, options, workshop.ruler, findings)) == []
    assert {finding.code for finding in findings} == {"card-failed"}
    assert all(finding.message.startswith("End label") for finding in findings)
