"""The round: noting what each look gave, and what is due."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from typing import Annotated

import typer

from service.cards.papers.check_sheet import word_last
from service.cards.words import join_words, write_date
from service.cli.at_desk import By, Json, answer, at_desk, now, read_day
from service.handling.checks.kinds import CHECKS, RESULT_WORDS, CheckKind, CheckResult
from service.keeping.rounds.due import ALL_KINDS, DueContainer, list_due, put_overdue_first
from service.keeping.rounds.note import Proposal, note_check
from service.store.kept.checks import IN_ORDER, Check, Looked, take_back_check
from service.store.kept.outs import load_overdue
from service.store.lists.walk import Stand
from service.store.open import reading, writing

app = typer.Typer()

Within = Annotated[int, typer.Option(min=0, max=3650, help="Also what is due within so many days.")]
Result = Annotated[CheckResult | None, typer.Option(help="What this look gave.")]
Place = Annotated[str, typer.Option(help="Only at this location and its parts.")]


@app.command("checked")
def checked(
    context: typer.Context,
    container: Annotated[str, typer.Argument(help="The number of the container.")],
    pests: Result = None,
    tissue: Result = None,
    corrosion: Result = None,
    labels: Result = None,
    weight: Result = None,
    on: Annotated[str, typer.Option("--on", help="The day, such as 2026-11-25; else today.")] = "",
    note: Annotated[str, typer.Option(help="What was seen, in your words.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Note that a container was looked at; with no look named all but its weight is in order."""
    at = at_desk(context)
    stamp = at.stamp(by)
    named = (pests, tissue, corrosion, labels, weight)
    day = read_day(on) if on else stamp.at.date()
    check = Check(
        container, day, note, stamp, read_results(dict(zip(CheckKind, named, strict=True)))
    )
    with at.store() as engine, writing(engine) as connection:
        noted, proposal = note_check(connection, check)
    data = {
        "check": noted.key,
        "container_number": container,
        "checked_on": day,
        "results": {one.kind: one.result for one in check.results},
        "proposal": _proposal_data(proposal),
    }
    answer(data, [_checked_line(noted), *_proposal_lines(proposal)], as_json=as_json)


@app.command("take-back-check")
def take_back(
    context: typer.Context,
    container: Annotated[str, typer.Argument(help="The number of the container.")],
    check: Annotated[int, typer.Argument(min=1, help="The number the check was noted under.")],
    by: By = "",
    as_json: Json = False,
) -> None:
    """Take back a check that was noted by mistake; the history keeps both."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        take_back_check(connection, container, check, stamp=at.stamp(by))
    data = {"container_number": container, "check": check}
    answer(data, [f"{container}: check {check} is taken back."], as_json=as_json)


@app.command("due")
def due(
    context: typer.Context,
    within: Within = 0,
    kind: Annotated[
        list[CheckKind] | None, typer.Option(help="Only this kind of check; may be repeated.")
    ] = None,
    place: Place = "",
    as_json: Json = False,
) -> None:
    """List what is to be checked, overdue first, as one walks; then what should be back by now."""
    today = now().date()
    last = today + timedelta(days=within)
    with at_desk(context).store() as engine, reading(engine) as connection:
        listed = list_due(connection, last, kinds=kind or ALL_KINDS, place=place)
        outs = load_overdue(connection, today)
    found = put_overdue_first(listed, today)
    data = {
        "due": [_due_data(one, today) for one in found],
        "overdue": [
            {"object_number": one.slip.object_number, "due_back": one.slip.due_back} for one in outs
        ],
    }
    lines = _due_lines(found, today, last)
    lines += [
        f"{one.slip.object_number} should be back in {one.slip.container_number};"
        f" it is with {one.slip.to_whom}"
        for one in outs
    ]
    answer(data, lines or ["Nothing is due."], as_json=as_json)


def read_results(named: Mapping[CheckKind, CheckResult | None]) -> tuple[Looked, ...]:
    """Give the looks that were named; where none was, everything that is looked at is in order."""
    return (
        tuple(Looked(kind, result) for kind, result in named.items() if result is not None)
        or IN_ORDER
    )


def _checked_line(check: Check) -> str:
    looks = (f"{CHECKS[one.kind].name} {RESULT_WORDS[one.result]}" for one in check.results)
    told = join_words(looks, between=", ")
    day = write_date(check.checked_on)
    return f"{check.container_number}: checked on {day}, noted as check {check.key}. {told}."


def _proposal_data(proposal: Proposal | None) -> dict[str, object] | None:
    if proposal is None:
        return None
    beside = proposal.neighbours
    return {
        "isolate": proposal.container_number,
        "look_at": {
            "together": [one.container_number for one in beside.together],
            "beside": [one.container_number for one in beside.beside],
            "next": [one.container_number for one in beside.next],
        },
        "is_located": beside.is_located,
        "rules": [rule.code for rule in proposal.rules],
    }


def _proposal_lines(proposal: Proposal | None) -> list[str]:
    if proposal is None:
        return []
    number, beside = proposal.container_number, proposal.neighbours
    lines = [
        "Isolate it, and tell whoever looks after pests. Its label:",
        f'  store isolation-label "{number}" --why "pests found" -o label.pdf',
    ]
    for words, some in (
        ("Look at these next; they lie with it:", beside.together),
        ("Look at these next; they stand at the same place:", beside.beside),
        ("Then before and behind it:", beside.next),
    ):
        lines += [words, *map(_stand_line, some)] if some else []
    if not beside.is_located:
        lines.append("Where it stands is not recorded: look at whatever stands beside it.")
    return lines


def _stand_line(stand: Stand) -> str:
    return f"  {stand.container_number}  {stand.title}  {stand.location}".rstrip()


def _due_data(one: DueContainer, today: date) -> dict[str, object]:
    return {
        "container_number": one.stand.container_number,
        "title": one.stand.title,
        "location": one.stand.location,
        "inside": one.stand.inside,
        "is_overdue": one.is_overdue(today),
        "checks": [
            {
                "kind": check.kind,
                "due_on": check.due_on,
                "last_on": check.last.checked_on if check.last else None,
                "last_result": check.last.result if check.last else None,
                "every_months": check.interval.months,
                "rule": check.interval.rule.code,
            }
            for check in one.checks
        ],
    }


def _due_lines(found: Sequence[DueContainer], today: date, last: date) -> list[str]:
    overdue = [one for one in found if one.is_overdue(today)]
    others = [one for one in found if not one.is_overdue(today)]
    return [
        *_part(f"Overdue on {write_date(today)}:", overdue),
        *_part(f"Due by {write_date(last)}:", others),
    ]


def _part(heading: str, some: Sequence[DueContainer]) -> Iterable[str]:
    return [heading, *map(_due_line, some)] if some else []


def _due_line(one: DueContainer) -> str:
    stand = one.stand
    where = join_words((f"in {stand.inside}" if stand.inside else "", stand.location), between=", ")
    looks = join_words(word_last(one.checks), between="; ")
    return f"  {stand.container_number}  {where}  {looks}"
