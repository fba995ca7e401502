"""The lid card: which container, what can hurt, what is inside and where."""

from __future__ import annotations

from service.cards.card import LidCard
from service.cards.compose.head import compose_head
from service.cards.compose.objects import compose_object
from service.cards.compose.warn import warn_outside
from service.cards.fingerprint import seal_card
from service.cards.parts import CardLayer, CardObject
from service.cards.words import count, join_words
from service.contents.packing import Packing
from service.printed import to_print
from service.records.record import Museum

ORIENTATION = to_print("this edge to the label")
_BY = "\N{MULTIPLICATION SIGN}"


def compose_lid_card(packing: Packing, museum: Museum) -> LidCard:
    """Word the lid card of a packing; nested containers follow their own heading."""
    layers = compose_layers(packing)
    card = LidCard(
        head=compose_head(packing, museum),
        handling=warn_outside(packing, museum),
        count_words=write_count(packing),
        layers=layers,
        grid=packing.container.compartments if len(layers) == 1 else None,
        orientation=ORIENTATION,
    )
    return seal_card(card, dated=True)


def compose_layers(packing: Packing) -> tuple[CardLayer, ...]:
    """Word the contents layer by layer, from the top; nested containers follow."""
    alone = len(packing.layers) == 1 and not packing.nested
    layers = [
        CardLayer(
            "" if alone else _name_layer(layer.number, last=layer is packing.layers[-1]),
            tuple(compose_object(packed) for packed in layer.contents),
        )
        for layer in packing.layers
    ]
    layers += [_compose_nested(inner) for inner in packing.nested]
    return tuple(layers)


def _compose_nested(packing: Packing) -> CardLayer:
    number = packing.container.container_number
    kind = packing.container.kind.value
    objects: tuple[CardObject, ...] = tuple(
        compose_object(packed, inside=number) for packed in packing.everything
    )
    heading = join_words(
        (to_print("In {kind} {number}", kind=kind, number=number), packing.container.title),
        between=": ",
    )
    return CardLayer(heading, objects)


def _name_layer(number: int, *, last: bool) -> str:
    if number == 1:
        return to_print("Layer 1, top")
    return (
        to_print("Layer {number}, bottom", number=number)
        if last
        else to_print("Layer {number}", number=number)
    )


def write_count(packing: Packing) -> str:
    """Say how many objects there are, in how many layers, compartments and inner containers."""
    grid = packing.container.compartments
    return join_words(
        (
            count(len(packing.everything), "object"),
            count(len(packing.layers), "layer") if len(packing.layers) > 1 else "",
            to_print(
                "{columns} {by} {rows} compartments", columns=grid.columns, by=_BY, rows=grid.rows
            )
            if grid
            else "",
            *(
                to_print(
                    "holds {container_number}", container_number=inner.container.container_number
                )
                for inner in packing.nested
            ),
        )
    )
