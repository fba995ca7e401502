"""Paths of the history: who did what and when."""

from __future__ import annotations

from fastapi import APIRouter

from service.store.history import load_history
from service.store.load_records import load_container, load_object
from service.store.packing.stays import load_object_history
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import ContainerNumber, ObjectNumber, TheCounter
from service.web.store.records.shapes import HistoryView, show_event

router = APIRouter(route_class=GatedRoute)


@router.get("/api/objects/{number:path}/history", dependencies=[needs(Role.VIEW)])
def history_of_object(number: ObjectNumber, counter: TheCounter) -> HistoryView:
    """Tell what was done to an object's record, and into what it came and went, oldest first."""
    with counter.reading() as connection:
        load_object(connection, number)
        events = load_object_history(connection, number)
    return HistoryView(events=[show_event(event) for event in events])


@router.get("/api/containers/{number:path}/history", dependencies=[needs(Role.VIEW)])
def history_of_container(number: ContainerNumber, counter: TheCounter) -> HistoryView:
    """Tell what was done to a container, its contents and its cards, oldest first."""
    with counter.reading() as connection:
        load_container(connection, number)
        events = load_history(connection, container_number=number)
    return HistoryView(events=[show_event(event) for event in events])
