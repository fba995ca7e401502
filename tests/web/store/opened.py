"""Stores that the tests of the API begin with: the sample box, and an empty one beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import httpx

from service.jobs.line import open_line
from service.keeping.desk import Desk
from service.pipeline.read import parse_files
from service.pipeline.ready import Workshop
from service.records.record import Collection, ContainerRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.history import Stamp
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder, writing
from service.store.save_records import save_records
from service.store.shelf.files import open_shelf
from service.web.app import Front, make_app
from service.web.press import Presses
from service.web.store.counter import Backroom, Clock, Counter
from tests.web.sent import ONE_BOX, running_app

BOX, EMPTY_BOX = "B-027", "B-028"
SPIKE, LAMP = "1931.14.7", "X.112"
MOMENT = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
STAMP = Stamp("Ada Quill", MOMENT)
ACTOR = {"Underlid-Actor": "Ada%20Quill"}


def fill_store(folder: Path) -> None:
    """Make a store with the sample box in it."""
    engine = open_folder(folder)
    upgrade_store(engine)
    sample = parse_files({ONE_BOX.name: ONE_BOX.read_bytes()})
    with writing(engine) as connection:
        save_records(connection, sample, stamp=STAMP)
        empty = Collection(containers=(ContainerRecord(EMPTY_BOX, title="Spare box"),))
        save_records(connection, empty, stamp=STAMP)
    # The line makes its tables, which takes a while; copies of the store have them then.
    with open_line(engine):
        pass
    engine.dispose()


@contextmanager
def open_client(
    folder: Path,
    workshop: Workshop,
    *,
    clock: Clock = lambda: MOMENT,
    front: Front | None = None,
) -> Iterator[httpx.Client]:
    """Run the service over the store in a folder and give a client that acts as one person."""
    engine = open_folder(folder)
    upgrade_store(engine)
    desk = Desk(engine, open_shelf(folder / "files", scratch=folder), workshop, folder)
    with open_line(engine) as line:
        counter = Counter(desk, PangoRuler(FONTS_CONF), Backroom(line), clock=clock)
        at_front = front or Front(default_actor=STAMP.actor)
        presses = Presses([], patience_seconds=0)
        app = make_app(presses, "127.0.0.1", counter=counter, front=at_front)
        with running_app(app) as client:
            client.headers.update(ACTOR)
            yield client
    engine.dispose()


def seen(response: httpx.Response) -> Mapping[str, str]:
    """Give the header that says which state was seen."""
    assert response.status_code == 200
    return {"If-Match": response.headers["etag"]}
