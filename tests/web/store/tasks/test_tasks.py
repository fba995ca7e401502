from __future__ import annotations

import shutil
import threading
import time
from pathlib import Path
from typing import Any

import httpx
import pytest

from service.jobs.open import JobsSetup, open_jobs
from service.keeping.desk import Desk
from service.pipeline.ready import Workshop
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.open import open_folder
from service.store.shelf.files import open_shelf
from service.web.app import make_app
from service.web.press import Presses
from service.web.store.counter import Backroom, Counter
from tests.web.sent import ONE_BOX, problem_of, running_app
from tests.web.store.intake.test_photos import picture
from tests.web.store.opened import ACTOR, BOX, MOMENT, SPIKE

LABELS = {"containers": [BOX], "kinds": ["end-label"]}


def test_a_print_waits_in_the_line(client: httpx.Client) -> None:
    """Asking answers at once with where to look; unless somebody works it goes on waiting."""
    asked = client.post("/api/tasks/prints", json=LABELS)
    assert asked.status_code == 202
    found = client.get(asked.headers["location"]).json()
    assert (found["state"], found["kind"], found["by"]) == ("waiting", "print", "Ada Quill")
    assert client.get("/api/tasks").json()["tasks"] == [found]


def test_the_same_key_is_one_task(client: httpx.Client) -> None:
    """A request that is sent again under its key asks for nothing more."""
    key = {"Idempotency-Key": "k1"}
    first = client.post("/api/tasks/prints", json=LABELS, headers=key)
    again = client.post("/api/tasks/prints", json=LABELS, headers=key)
    assert first.json() == again.json()
    other = client.post("/api/tasks/prints", json={"containers": []}, headers=key)
    assert problem_of(other)["code"] == "key-used"
    assert len(client.get("/api/tasks").json()["tasks"]) == 1


def test_what_cannot_be_printed_is_refused_at_once(client: httpx.Client) -> None:
    """Nobody waits in a line to hear that there is no such stock, printer or card."""
    reply = client.post("/api/tasks/prints", json={"stock": "none"})
    assert problem_of(reply)["code"] == "unknown-stock"
    reply = client.post("/api/tasks/prints", json={"printer": "none"})
    assert problem_of(reply)["code"] == "unknown-printer"
    reply = client.post("/api/tasks/prints", json={"cards": [1]})
    assert problem_of(reply)["code"] == "not-in-store"
    assert client.get("/api/tasks").json()["tasks"] == []


def test_a_task_can_be_ended(client: httpx.Client) -> None:
    """It says so from then on; what has ended stays as it is; a task of no name is not found."""
    where = client.post("/api/tasks/prints", json=LABELS).headers["location"]
    assert client.post(f"{where}/cancel").json()["state"] == "cancelled"
    assert client.post(f"{where}/cancel").json()["finished_at"] is not None
    assert problem_of(client.post("/api/tasks/none/cancel"))["status"] == 404


def test_tasks_come_in_pages(client: httpx.Client) -> None:
    """Following the links gives every task once."""
    wanted = {
        client.post("/api/tasks/prints", json=LABELS).json()["task_id"] for _number in range(5)
    }
    page = client.get("/api/tasks", params={"limit": 2})
    found = page.json()["tasks"]
    while "next" in page.links:
        page = client.get(page.links["next"]["url"])
        found += page.json()["tasks"]
    assert len(found) == 5
    assert {task["task_id"] for task in found} == wanted


@pytest.mark.slow
def test_long_work_is_done(tmp_path: Path, filled: Path, workshop: Workshop) -> None:
    """With somebody who works, import and photos are done, and tell what came of them."""
    folder = shutil.copytree(filled, tmp_path / "data")
    engine = open_folder(folder)
    desk = Desk(engine, open_shelf(folder / "files", scratch=folder), workshop, folder)
    turn = threading.Lock()
    with open_jobs(desk, JobsSetup(lambda: MOMENT, turn=turn)) as line:
        counter = Counter(desk, PangoRuler(FONTS_CONF), Backroom(line, turn), clock=lambda: MOMENT)
        with running_app(
            make_app(Presses([], patience_seconds=0), "127.0.0.1", counter=counter)
        ) as client:
            client.headers.update(ACTOR)
            taken = client.post(
                "/api/tasks/imports", files={"files": (ONE_BOX.name, ONE_BOX.read_bytes())}
            )
            photo = ("photos", (f"{SPIKE}_front.jpg", picture()))
            brought = client.post("/api/tasks/photos", files=[photo])
            ended = [await_end(client, reply) for reply in (taken, brought)]
    engine.dispose()
    assert [one["state"] for one in ended] == ["done", "done"], ended
    assert ended[0]["result"]["summary"]["objects new"] == 0
    assert ended[1]["result"]["new"] == 1


def await_end(client: httpx.Client, asked: httpx.Response) -> dict[str, Any]:
    """Ask until the task has ended, and say how far it was where that takes too long."""
    deadline = time.monotonic() + 180
    while True:
        task: dict[str, Any] = client.get(asked.headers["location"]).json()
        if task["finished_at"]:
            return task
        assert time.monotonic() < deadline, task
        time.sleep(0.05)
