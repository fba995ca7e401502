"""Paths of one import: what it was, and taking it back."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Query, Response
from pydantic import BaseModel

from service.keeping.intake.undo import preview_undo, undo_import
from service.store.handles import Connection
from service.store.kept.imports import load_import
from service.store.people.role import Role
from service.store.taking_back.plan import UndoPlan
from service.store.taking_back.states import ChangedState, StateKind
from service.store.taking_back.undo import Undone
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.store.asking import TheAsked, TheCounter
from service.web.store.intake.import_shapes import ImportLine, show_line
from service.web.store.once import Made, find_again, keep_made

router = APIRouter(route_class=GatedRoute)

ImportId = Annotated[int, Path(ge=1, le=2**31 - 1, examples=[1])]


class TouchedView(BaseModel):
    """A record, the museum's own choices, or what lies in a container."""

    kind: StateKind
    number: str


class UndoView(BaseModel):
    """What taking an import back does, or did.

    `back` goes back to what it was, packings as a new revision of the former contents; `removed`
    are records that the import made anew. `done` counts what is as before already, `left` what is
    left alone: each has its finding, with who changed it since and when, or what keeps it.
    `import_id` is the number by which this itself can be taken back; None where nothing was done.
    """

    of: int
    import_id: int | None
    back: list[TouchedView]
    removed: list[TouchedView]
    done: int
    left: int
    findings: list[FindingView]


@router.get("/api/imports/{import_id}", dependencies=[needs(Role.VIEW)])
def import_by_number(import_id: ImportId, counter: TheCounter) -> ImportLine:
    """Tell of one import: what it changed, who and when, and whether it was taken back."""
    with counter.reading() as connection:
        return show_line(load_import(connection, import_id))


@router.post(
    "/api/imports/{import_id}/undo", response_model=UndoView, dependencies=[needs(Role.MANAGE)]
)
def undo(
    import_id: ImportId,
    asked: TheAsked,
    preview: Annotated[bool, Query(description="Only say what would be done.")] = False,  # noqa: FBT002
) -> Response:
    """Take an import back, all that nobody has changed since; a second time nothing is done.

    It is a new state: the history is kept, and this can be taken back in turn.
    """
    engine = asked.counter.engine
    if preview:
        return Made(_show(preview_undo(engine, import_id), None), status=200).to_response()
    with asked.counter.reading() as connection:
        again = find_again(connection, asked, "")
    if again is not None:
        return again

    def also_save(connection: Connection, undone: Undone) -> None:
        keep_made(connection, asked, "", _tell(undone))

    undone = undo_import(engine, import_id, stamp=asked.stamp, also_save=also_save)
    return _tell(undone).to_response()


def _tell(undone: Undone) -> Made:
    return Made(_show(undone.plan, undone.import_id), status=200)


def _show(plan: UndoPlan, import_id: int | None) -> UndoView:
    return UndoView(
        of=plan.of.import_id,
        import_id=import_id,
        back=[_touched(one) for one in plan.back],
        removed=[_touched(one) for one in plan.removed],
        done=plan.done,
        left=plan.left,
        findings=show_findings(plan.findings),
    )


def _touched(one: ChangedState) -> TouchedView:
    return TouchedView(kind=one.kind, number=one.number)
