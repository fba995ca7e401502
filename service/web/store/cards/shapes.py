"""The shapes of print runs and of printed cards."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from urllib.parse import quote

from pydantic import BaseModel, ConfigDict, Field

from service.cards.fingerprint import check_letters
from service.store.printed.card import PrintedCard, RunFile, RunRecord
from service.store.tables import CardState
from service.web.replies.problems import FindingView
from service.web.store.packings.shapes import Number
from service.web.store.records.shapes import STRICT


class AttachmentBody(BaseModel):
    """A card and a container that were scanned one after the other."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [
                {"card_of": "B-027", "revision": 1, "letters": "HNVG", "container_number": "B-027"}
            ]
        }
    )

    card_of: Number
    revision: int = Field(ge=0, lt=1_000_000_000)
    letters: str = Field(min_length=1, max_length=20)
    container_number: Number


class RunFileView(BaseModel):
    """One PDF of a run, and where it is to be had."""

    name: str
    stock: str
    sha256: str
    length_bytes: int
    href: str


class CardView(BaseModel):
    """A printed card: what it is, where it lies in its file, and what became of it.

    `places` are sheet and position of each of its faces, from 1. A tag has an `object_number` and
    no container number.
    """

    card: int
    run: int
    container_number: str
    object_number: str
    kind: str
    side: int
    copy_number: int
    revision: int
    letters: str
    fingerprint: str
    file: str
    places: list[tuple[int, int]]
    state: CardState
    by: str
    at: datetime


class RunLine(BaseModel):
    """A print run in a list."""

    run: int
    by: str
    at: datetime
    options: dict[str, str]
    files: list[RunFileView]


class RunPage(BaseModel):
    """Print runs, the latest first; the header Link leads to the next page."""

    runs: list[RunLine]


class RunView(RunLine):
    """A print run with its cards, in the order in which they were printed."""

    cards: list[CardView]


class MadeRunView(RunView):
    """A run that was just made, and what was noticed; asked once more, only the run is told."""

    findings: list[FindingView]


class AttachedView(BaseModel):
    """A card that is on its container or object now, and the one it replaces there, if any."""

    card: CardView
    replaced: CardView | None


def show_card(card: PrintedCard) -> CardView:
    """Show a printed card."""
    made = card.made
    return CardView(
        card=card.card_id,
        run=card.run_id,
        container_number=made.container_number,
        object_number=made.object_number,
        kind=made.kind,
        side=made.side,
        copy_number=made.copy,
        revision=made.revision,
        letters=check_letters(made.fingerprint),
        fingerprint=made.fingerprint,
        file=made.file,
        places=list(made.places),
        state=card.state,
        by=card.by,
        at=card.at,
    )


def show_line(run: RunRecord) -> RunLine:
    """Show a run without its cards."""
    return RunLine(
        run=run.run_id,
        by=run.stamp.actor,
        at=run.stamp.at,
        options=dict(run.options),
        files=[_show_file(run.run_id, file) for file in run.files],
    )


def show_run(run: RunRecord, cards: Sequence[PrintedCard]) -> RunView:
    """Show a run with its cards."""
    return RunView(**dict(show_line(run)), cards=[show_card(card) for card in cards])


def _show_file(run_id: int, file: RunFile) -> RunFileView:
    return RunFileView(
        name=file.name,
        stock=file.stock,
        sha256=file.sha256,
        length_bytes=file.length_bytes,
        href=f"/api/prints/{run_id}/files/{quote(file.name)}",
    )
