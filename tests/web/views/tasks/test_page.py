from __future__ import annotations

from pathlib import Path

import httpx
import pytest

from service.findings import Where, make_finding
from service.jobs.results import tell_findings
from service.pipeline.ready import Workshop
from service.sentence import Sentence
from service.store.kept.tasks import TaskState, add_task, finish_task
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder, writing
from tests.web.store.opened import BOX, MOMENT, STAMP, open_client
from tests.web.views.opened import follow, send, show


def test_a_task_shows_how_far_it_is_and_can_be_stopped(client: httpx.Client) -> None:
    """Without script the page loads itself again; stopped, it says so and stays."""
    task = client.post("/api/tasks/prints", json={"containers": [BOX]}).json()["task_id"]
    page = show(client, f"/tasks/{task}")
    assert '<noscript><meta http-equiv="refresh" content="3"></noscript>' in page
    assert f'data-events="/api/tasks/{task}/events"' in page
    answer = send(client, f"/tasks/{task}", "/tasks/cancel", {"task": task})
    page = follow(client, answer)
    assert "stopped" in page
    assert "refresh" not in page
    again = send(client, "/you", "/tasks/cancel", {"task": task})
    assert "ended already" in follow(client, again)
    assert f'href="/tasks/{task}"' in show(client, "/tasks")
    show(client, "/tasks/none", status=404)


@pytest.mark.parametrize(
    ("state", "result", "words"),
    [
        (
            TaskState.DONE,
            {"run_id": 4, "cards": 2, "files": [{"name": "a.pdf"}]},
            ["2 cards are ready to print", 'href="/run/4"', "a.pdf"],
        ),
        (
            TaskState.DONE,
            {"import_id": 1, "summary": {"objects new": 3}},
            ["Objects new", "<dd>3</dd>"],
        ),
        (
            TaskState.FAILED,
            {"code": "x", "message": "The paper is out.", "advice": "Fill the tray."},
            ["The paper is out.", "Fill the tray."],
        ),
    ],
    ids=["print", "import", "failed"],
)
def test_what_came_of_it_is_told(
    tmp_path: Path,
    workshop: Workshop,
    state: TaskState,
    result: dict[str, object],
    words: list[str],
) -> None:
    """Each kind of task tells its own, and what was noticed with what to do."""
    finding = {
        "code": "no-photo",
        "severity": "warning",
        "where": BOX,
        "message": "No photo.",
        "advice": "Take one.",
    }
    with open_client(tmp_path / "data", workshop) as client:
        engine = open_folder(tmp_path / "data")
        with writing(engine) as connection:
            add_task(connection, "t-1", "print", {}, stamp=STAMP)
            told = {**result, "findings": [finding], "findings_left_out": 2}
            finish_task(connection, "t-1", state, told, at=MOMENT)
        engine.dispose()
        page = show(client, "/tasks/t-1")
    for each in (*words, "No photo.", "Take one.", "2 more were noticed"):
        assert each in page


def test_what_was_kept_is_said_in_the_readers_language(tmp_path: Path, workshop: Workshop) -> None:
    """A finding of a run that ended long ago, too; programs read it in English."""
    words = Sentence("{object_number} has no photo that can be printed.", object_number="X.1")
    noticed = tell_findings([make_finding("no-photo", Where(object_number="X.1"), words)])
    engine = open_folder(tmp_path)
    upgrade_store(engine)
    with writing(engine) as connection:
        add_task(connection, "print-9", "print", {}, stamp=STAMP)
        result = {"run_id": 4, "cards": 2, "files": [], **noticed}
        finish_task(connection, "print-9", TaskState.DONE, result, at=MOMENT)
    engine.dispose()
    with open_client(tmp_path, workshop) as client:
        (told,) = client.get("/api/tasks/print-9").json()["result"]["findings"]
        assert set(told) == {"code", "severity", "where", "message", "advice"}
        assert told["message"] == words
        client.cookies.set("underlid-language", "cy")
        page = show(client, "/tasks/print-9")
    assert "Nid oes gan X.1 lun y gellir ei argraffu." in page
    assert 'lang="en"' not in page
