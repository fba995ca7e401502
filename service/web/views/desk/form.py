"""The form of the print desk, read into what the API takes for the same."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Annotated

from fastapi import Depends, Request
from pydantic import ValidationError
from starlette.datastructures import FormData

from service.jobs.kinds import look_up_cards
from service.keeping.printing.pick import KindsPicked, pick_cards
from service.keeping.printing.printers_file import name_printer
from service.languages.saying import say
from service.pipeline.options import PrintOptions
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.cards.wanted import (
    CardKeyBody,
    KindStockBody,
    PrintBody,
    SheetInTrayBody,
)
from service.web.store.counter import Counter
from service.web.views.desk.asked import What
from service.web.views.desk.offer import CARD, LACKING, read_lacking
from service.web.views.desk.settings import STOCK_FIELD, is_tag, read_printer, usual_codes

_MOST_COPIES = 100
_MOST_CARD = 2**31


@dataclass(frozen=True, slots=True)
class Ordered:
    """What was ordered, or by field what is wrong with it."""

    body: PrintBody = field(default_factory=PrintBody)
    faults: Mapping[str, str] = field(default_factory=dict)


async def _sent(request: Request) -> FormData:
    return await request.form()


Sent = Annotated[FormData, Depends(_sent)]


def texts(sent: FormData, name: str) -> list[str]:
    """Give all that was sent in fields of one name; files are no text."""
    return [value for value in sent.getlist(name) if isinstance(value, str)]


def text(sent: FormData, name: str) -> str:
    """Give what was sent in a field, trimmed."""
    return next(iter(texts(sent, name)), "").strip()


def read_order(counter: Counter, sent: FormData) -> Ordered:
    """Read which cards are wanted and how.

    Raises:
        NotFoundError: When a container was taken out of the store meanwhile.
    """
    copies = text(sent, "copies") or "1"
    faults = {}
    if not (copies.isascii() and copies.isdigit() and 1 <= int(copies[:4]) <= _MOST_COPIES):
        faults["copies"] = say(
            "Copies are a number from 1 to {most_copies}.", most_copies=_MOST_COPIES
        )
    try:
        wanted = _read_wanted(counter, sent)
    except ValidationError:
        wanted = None
    if wanted is None:
        faults["wanted"] = say("Tick at least one card to print.")
    if wanted is None or faults:
        return Ordered(faults=faults)
    printer, tray = read_printer(text(sent, "printer"))
    how = {
        "paper": "Letter" if text(sent, "paper") == "Letter" else "A4",
        "copies": int(copies),
        "printer": printer,
        "tray": tray,
        "stocks": _read_stocks(sent),
    }
    return Ordered(wanted.model_copy(update=how))


def read_body(sent: FormData) -> PrintBody:
    """Read what was ordered on the page before, and the sheets as they were ticked since.

    Raises:
        RefusedError: When it is not as we wrote it.
    """
    try:
        body = PrintBody.model_validate_json(text(sent, "wanted"))
        return body.model_copy(update={"sheets": _read_sheets(sent)})
    except ValidationError as error:
        detail = f"What was chosen before cannot be read ({error.error_count()} faults)."
        raise RefusedError(Refusal.UNUSABLE_FIELD, detail) from error


def look_up(counter: Counter, body: PrintBody) -> PrintOptions:
    """Look up the cards and stocks of an order.

    Raises:
        ServiceError: When something of it does not exist.
    """
    request = body.to_request(counter.data_folder)
    name_printer(counter.data_folder, request.printer, request.tray)
    with counter.measuring() as ruler:
        return look_up_cards(counter.engine, ruler, request)


def _read_wanted(counter: Counter, sent: FormData) -> PrintBody | None:
    """Read the cards; None where nothing is ticked."""
    what, everything = text(sent, "what"), bool(text(sent, "everything"))
    if everything and what in {What.REPRINTS, What.LACKING}:
        return PrintBody(reprints=what == What.REPRINTS, lacking=what == What.LACKING)
    if what == What.ALL:
        return _every_container(sent)
    if what == What.CONTAINERS:
        return _containers(counter, sent)
    objects = [one for one in texts(sent, "objects") if one]
    cards: list[int | CardKeyBody] = [*_printed(sent), *_lacking(sent)]
    if not cards and not objects:
        return None
    return PrintBody(cards=cards, objects=objects)


def _every_container(sent: FormData) -> PrintBody | None:
    usual, extra = frozenset(texts(sent, "usual")), frozenset(texts(sent, "extra"))
    if not usual | extra:
        return None
    return PrintBody() if _is_usual(usual, extra) else PrintBody(kinds=sorted(usual | extra))


def _containers(counter: Counter, sent: FormData) -> PrintBody | None:
    numbers = [one for one in texts(sent, "containers") if one]
    usual, extra = frozenset(texts(sent, "usual")), frozenset(texts(sent, "extra"))
    if not numbers or not usual | extra:
        return None
    if _is_usual(usual, extra):
        return PrintBody(containers=numbers)
    with counter.measuring() as ruler, counter.reading() as connection:
        keys = sorted(pick_cards(connection, ruler, numbers, KindsPicked(usual, extra)))
    cards: list[int | CardKeyBody] = [
        CardKeyBody(container_number=number, kind=kind, side=side)
        for number, kind, side in keys
        if not is_tag(kind)
    ]
    objects = [number for number, kind, _ in keys if is_tag(kind)]
    return PrintBody(cards=cards, objects=objects) if keys else None


def _is_usual(usual: frozenset[str], extra: frozenset[str]) -> bool:
    return usual == usual_codes() and not extra


def _printed(sent: FormData) -> list[int]:
    return [
        int(value)
        for value in texts(sent, CARD)
        if value.isascii() and value.isdigit() and 0 < int(value[:12]) < _MOST_CARD
    ]


def _lacking(sent: FormData) -> list[CardKeyBody]:
    read = (read_lacking(value) for value in texts(sent, LACKING))
    return [
        CardKeyBody(container_number=number, kind=kind, side=side)
        for number, kind, side in (one for one in read if one is not None)
    ]


def _read_stocks(sent: FormData) -> list[KindStockBody]:
    return [
        KindStockBody(kind=name.removeprefix(STOCK_FIELD)[:100], stock=value[:200])
        for name, value in sent.multi_items()
        if name.startswith(STOCK_FIELD) and isinstance(value, str) and value
    ]


def _read_sheets(sent: FormData) -> list[SheetInTrayBody]:
    """Read the positions that are gone; a stock of which nothing is gone begins on a new sheet."""
    gone: dict[str, list[int]] = {}
    for value in texts(sent, "gone"):
        position, _, stock = value.partition("@")
        if stock and position.isascii() and position.isdigit() and len(position) < _DIGITS:
            gone.setdefault(stock, []).append(int(position))
    return [SheetInTrayBody(stock=stock, positions=some) for stock, some in gone.items()]


_DIGITS = 5
