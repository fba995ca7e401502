"""The check sheet: what is due in walking order, with what to know before a box is opened."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from service.cards.compose.objects import compose_object
from service.cards.compose.warn import warn_outside
from service.cards.parts import Handling, SecondWords
from service.cards.words import KIND_WORDS, count, join_words, write_date, write_questions
from service.contents.packing import Packing
from service.handling.checks.due import DueCheck
from service.handling.checks.kinds import CHECKS, CheckKind, CheckResult
from service.printed import to_print
from service.records.record import Museum

MOST_PHOTOS = 4


@dataclass(frozen=True, slots=True)
class Pictured:
    """A photo of something in the container, and the number of what it shows."""

    photo: str
    object_number: str


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One container to look into.

    `asked` are the kinds to tick, `last` says when each was looked at, `outs` names what is away.
    `location` is empty where it is hidden or unknown, `questions` where those of the sheet hold.
    """

    container_number: str
    title: str
    location: str
    asked: tuple[CheckKind, ...]
    last: tuple[str, ...]
    count_words: str
    photos: tuple[Pictured, ...]
    outs: tuple[str, ...]
    handling: Handling
    questions: str
    is_overdue: bool


@dataclass(frozen=True, slots=True)
class CheckSheet:
    """The whole sheet: whose, made when and by whom, what it holds, and its rows as one walks."""

    museum: str
    made: str
    until: str
    questions: str
    rows: tuple[SheetRow, ...]
    hides_locations: bool = False
    second: SecondWords | None = None

    @property
    def asked(self) -> tuple[CheckKind, ...]:
        """The kinds that some row asks for, in the order of the sheet."""
        return tuple(kind for kind in CheckKind if any(kind in row.asked for row in self.rows))


@dataclass(frozen=True, slots=True)
class Visit:
    """A container to look into: the checks that are due, where it stands, and what is away."""

    packing: Packing
    checks: tuple[DueCheck, ...]
    location: str
    outs: tuple[str, ...] = ()


def compose_sheet_row(visit: Visit, museum: Museum, *, today: date) -> SheetRow:
    """Word a container as it may be read outside, with the checks that are due."""
    container = visit.packing.container
    shown = [compose_object(packed) for packed in visit.packing.everything]
    photos = (Pictured(one.photo, one.object_number) for one in shown if one.photo)
    asked = write_questions(container.questions, museum.questions)
    return SheetRow(
        container_number=container.container_number,
        title=container.title or KIND_WORDS[container.kind],
        location=visit.location if museum.show_location else "",
        asked=tuple(check.kind for check in visit.checks),
        last=word_last(visit.checks),
        count_words=count(len(shown), "object"),
        photos=tuple(photos)[:MOST_PHOTOS],
        outs=visit.outs,
        handling=warn_outside(visit.packing, museum),
        questions="" if asked == write_questions(museum.questions, museum.questions) else asked,
        is_overdue=any(check.is_overdue(today) for check in visit.checks),
    )


def word_last(checks: Sequence[DueCheck]) -> tuple[str, ...]:
    """Say when the checks that are due were made last, those of one day together."""
    days: dict[str, list[str]] = {}
    for check in checks:
        days.setdefault(_word_day(check), []).append(CHECKS[check.kind].name.lower())
    if len(days) == 1:
        (day,) = days
        return (day[:1].upper() + day[1:],)
    lines = (f"{join_words(names, between=', ')}: {day}" for day, names in days.items())
    return tuple(line[:1].upper() + line[1:] for line in lines)


def _word_day(check: DueCheck) -> str:
    if check.last is None:
        return to_print("never checked")
    day = write_date(check.last.checked_on)
    return (
        to_print("found {day}", day=day)
        if check.last.result is CheckResult.FOUND
        else to_print("checked {day}", day=day)
    )
