"""The answer to a scan as programs read it."""

from __future__ import annotations

from pydantic import BaseModel, Field

from service.cards.standing import Answer
from service.keeping.scan import ScanAnswer


class NewestView(BaseModel):
    """A card as it would be printed now."""

    kind: str
    revision: int
    letters: str


class LyingView(BaseModel):
    """An object that lies in the container."""

    object_number: str
    title: str


class ScanView(BaseModel):
    """Whether a scanned card still holds, and what may be known outside."""

    container_number: str = Field(description="As it was scanned; that of an object on its tag.")
    answer: Answer
    sentence: str
    changes: list[str]
    warnings: list[str]
    lift: str
    questions: str
    newest: list[NewestView]
    is_tag: bool
    location: str = Field(description="Empty where the museum does not open it to everybody.")
    contents: list[LyingView] = Field(description="None where it does not; never what is discreet.")


def show_answer(answer: ScanAnswer) -> ScanView:
    """Show the answer to a scan."""
    return ScanView(
        container_number=answer.container_number,
        answer=answer.standing.answer,
        sentence=answer.standing.sentence,
        changes=list(answer.changes),
        warnings=list(answer.warnings),
        lift=answer.lift,
        questions=answer.questions,
        newest=[
            NewestView(kind=card.kind, revision=card.revision, letters=card.letters)
            for card in answer.newest
        ],
        is_tag=answer.is_tag,
        location=answer.inside.location,
        contents=[
            LyingView(object_number=number, title=title) for number, title in answer.inside.contents
        ],
    )
