"""The papers of the round: check sheet, removal slips, isolation labels."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Annotated

import typer

from service.cli.at_desk import By, Json, answer, at_desk, read_day
from service.cli.printing import copy_whole
from service.cli.store.rounds import Within
from service.errors import NotFoundError
from service.handling.checks.kinds import CheckKind
from service.keeping.rounds.check_sheet import SheetWish, print_sheet
from service.keeping.rounds.due import ALL_KINDS
from service.keeping.rounds.isolation import IsolationWish, print_isolation
from service.keeping.rounds.slips import print_slips
from service.pipeline.documents.rounds import LABEL_PAPERS, SLIP_PAPERS
from service.store.handles import Connection
from service.store.kept.outs import Out, load_outs
from service.store.open import reading

app = typer.Typer()

Output = Annotated[Path, typer.Option("-o", "--output", help="The PDF to write.")]
Paper = Annotated[str, typer.Option(help="A4 or Letter.")]


@app.command("check-sheet")
def check_sheet(
    context: typer.Context,
    output: Output,
    within: Within = 0,
    kind: Annotated[
        list[CheckKind] | None, typer.Option(help="Only this kind of check; may be repeated.")
    ] = None,
    paper: Paper = "A4",
    place: Annotated[str, typer.Option(help="Only at this location and its parts.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Print what is due to walk with: photos, hazards, and boxes to tick."""
    at = at_desk(context)
    wish = SheetWish(within, kind or ALL_KINDS, choose_paper(paper, ("A4", "Letter")), place)
    with at.desk() as desk:
        hand_over(print_sheet(desk, wish, stamp=at.stamp(by)), output)
    _tell(output, as_json=as_json)


@app.command("slip")
def slip(
    context: typer.Context,
    output: Output,
    number: Annotated[
        list[str] | None, typer.Argument(help="Objects that are out; without one, all of them.")
    ] = None,
    paper: Annotated[str, typer.Option(help="A4 or Letter, four on each; A6, one on each.")] = "A4",
    as_json: Json = False,
) -> None:
    """Print the removal slips of what is out, to leave in the gaps."""
    chosen = choose_paper(paper, SLIP_PAPERS)
    with at_desk(context).desk() as desk:
        with reading(desk.engine) as connection:
            outs = find_outs(connection, number or [])
        hand_over(print_slips(desk, outs, paper=chosen), output)
    _tell(output, as_json=as_json)


@app.command("isolation-label")
def isolation_label(
    context: typer.Context,
    number: Annotated[str, typer.Argument(help="The number of a container or an object.")],
    output: Output,
    why: Annotated[str, typer.Option(help="Why, such as: pests found.")] = "",
    since: Annotated[str, typer.Option(help="Since when, such as 2026-11-25; else today.")] = "",
    until: Annotated[str, typer.Option(help="Until when; else a line to write on.")] = "",
    incoming: Annotated[bool, typer.Option("--incoming", help="It is in no record yet.")] = False,
    copies: Annotated[int, typer.Option(min=1, help="How many, for several sides.")] = 1,
    paper: Paper = "A4",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Print a label for what is kept apart: ISOLATED, since when, why and whom to ask."""
    at = at_desk(context)
    wish = IsolationWish(
        number,
        why,
        read_day(since) if since else None,
        read_day(until) if until else None,
        is_incoming=incoming,
        copies=copies,
        paper=choose_paper(paper, LABEL_PAPERS),
    )
    with at.desk() as desk:
        hand_over(print_isolation(desk, wish, stamp=at.stamp(by)), output)
    _tell(output, as_json=as_json)


def find_outs(connection: Connection, numbers: list[str]) -> tuple[Out, ...]:
    """Find the slips of objects that are out, of everything that is where none is named.

    Raises:
        NotFoundError: When one of them is not out.
    """
    if not numbers:
        return load_outs(connection)
    found: list[Out] = []
    for number in numbers:
        outs = load_outs(connection, object_number=number)
        if not outs:
            raise NotFoundError(number, what="object that is out")
        found += outs
    return tuple(found)


def choose_paper(named: str, papers: Iterable[str]) -> str:
    """Choose a paper by its name, whatever its case.

    Raises:
        BadParameter: When there is none of that name.
    """
    names = list(papers)
    for name in names:
        if name.casefold() == named.casefold():
            return name
    message = f"{named!r} is none of {', '.join(names)}"
    raise typer.BadParameter(message)


def hand_over(made: Path, output: Path) -> None:
    """Copy a finished paper to where it is wanted, whole or not at all."""
    output.parent.mkdir(parents=True, exist_ok=True)
    copy_whole(made, output)


def _tell(output: Path, *, as_json: bool) -> None:
    answer({"path": str(output)}, [f"{output}: every page was read back."], as_json=as_json)
