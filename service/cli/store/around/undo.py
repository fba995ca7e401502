"""The command that takes a whole import back, and the list of imports."""

from __future__ import annotations

from typing import Annotated

import typer

from service.cards.words import count, write_date
from service.cli.at_desk import By, Json, answer, at_desk, leave, open_console
from service.cli.report import finding_as_data, show_findings
from service.keeping.intake.undo import preview_undo, undo_import
from service.store.kept.imports import Import, list_imports
from service.store.open import reading
from service.store.taking_back.plan import UndoPlan
from service.store.taking_back.states import ChangedState

app = typer.Typer()

_SHOWN = 40
"""How many things are shown to people; as JSON all are."""


@app.command("imports")
def imports(context: typer.Context, as_json: Json = False) -> None:
    """List what was taken in, the latest first; `undo-import` takes the numbers."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        found = list_imports(connection)
    lines = list(map(_import_line, found)) or ["Nothing was taken in."]
    answer({"imports": list(map(_import_data, found))}, lines, as_json=as_json)


@app.command("undo-import")
def undo_import_(
    context: typer.Context,
    import_id: Annotated[int, typer.Argument(metavar="ID", help="The number of the import.")],
    preview: Annotated[bool, typer.Option("--preview", help="Only say what would change.")] = False,
    by: By = "",
    as_json: Json = False,
) -> None:
    """Take an import back, all that nobody has changed since; it can be taken back in turn."""
    at = at_desk(context)
    with at.store() as engine:
        if preview:
            plan, made = preview_undo(engine, import_id), None
        else:
            undone = undo_import(engine, import_id, stamp=at.stamp(by))
            plan, made = undone.plan, undone.import_id
    end = _say_end(made, is_preview=preview)
    answer({**_plan_data(plan), "import": made}, [*_plan_lines(plan), end], as_json=as_json)
    if not as_json:
        show_findings(open_console(), plan.findings)
    leave(plan.findings)


def _import_data(one: Import) -> dict[str, object]:
    return {
        "import": one.import_id,
        "name": one.name,
        "by": one.stamp.actor,
        "at": one.stamp.at,
        "summary": dict(one.summary),
        "undoes": one.undoes,
        "undone_by": one.undone_by,
    }


def _import_line(one: Import) -> str:
    changed = {what: n for what, n in one.summary.items() if n and "unchanged" not in what}
    said = ", ".join(f"{n} {what}" for what, n in changed.items()) or "nothing changed"
    undone = f"; taken back by import {one.undone_by[-1]}" if one.undone_by else ""
    on = write_date(one.stamp.at.date())
    return f"{one.import_id}  {one.name}  {one.stamp.actor}, {on}: {said}{undone}"


def _plan_data(plan: UndoPlan) -> dict[str, object]:
    return {
        "of": plan.of.import_id,
        "back": [{"kind": one.kind.value, "number": one.number} for one in plan.back],
        "removed": [{"kind": one.kind.value, "number": one.number} for one in plan.removed],
        "done": plan.done,
        "left": plan.left,
        "findings": [finding_as_data(one) for one in plan.findings],
    }


def _plan_lines(plan: UndoPlan) -> list[str]:
    head = (
        f"Import {plan.of.import_id}: {len(plan.back)} to go back to what was,"
        f" {count(len(plan.removed), 'record')} to take out, {plan.done} as before already,"
        f" {plan.left} left alone."
    )
    lines = [head]
    lines += [f"  {_name(one)} goes back" for one in plan.back[:_SHOWN]]
    return [*lines, *(f"  {_name(one)} goes" for one in plan.removed[:_SHOWN])]


def _say_end(made: int | None, *, is_preview: bool) -> str:
    if is_preview:
        return "Nothing has been changed yet; without --preview it will be."
    if made is None:
        return "There was nothing to take back."
    return f"Done as import {made}: store undo-import {made} would take this back."


def _name(one: ChangedState) -> str:
    return f"{one.kind.value} {one.number}".rstrip()
