"""The path of moves between containers."""

from __future__ import annotations

from fastapi import APIRouter, Response

from service.keeping.checks.packings import check_container
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.packing.move import Move, move_object
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheAsked
from service.web.store.once import Made, make_once
from service.web.store.packings.shapes import MoveBody, MoveView

router = APIRouter(route_class=GatedRoute)


@router.post(
    "/api/moves", dependencies=[needs(Role.PACK)], status_code=201, response_model=MoveView
)
def move(body: MoveBody, asked: TheAsked) -> Response:
    """Move an object, or named parts of it: both containers get a revision, or neither.

    Raises:
        RefusedError: When both containers are one.
    """
    if body.from_container == body.to_container:
        detail = Sentence(
            "to_container: it is the container that the object lies in; place it anew there"
        )
        raise RefusedError(Refusal.UNUSABLE_FIELD, detail)
    wanted = Move(
        body.place,
        from_container=body.from_container,
        from_revision=body.from_revision,
        to_container=body.to_container,
        to_revision=body.to_revision,
        reason=body.reason,
    )

    def make(connection: Connection) -> Made:
        left, entered = move_object(connection, wanted, stamp=asked.stamp)
        findings = [
            finding
            for one in (left, entered)
            for finding in check_container(
                connection, one.container_number, today=asked.stamp.at.date()
            )
        ]
        return Made(MoveView(left=left, entered=entered, findings=show_findings(findings)))

    return make_once(asked, body.model_dump_json(), make)
