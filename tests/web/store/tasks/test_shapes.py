from __future__ import annotations

from service.store.kept.tasks import Task, TaskState
from service.web.store.tasks.shapes import show_task
from tests.web.store.opened import STAMP


def test_a_task_does_not_repeat_what_was_asked() -> None:
    """A request may name a hundred thousand boxes; its task tells how far it is."""
    request = {"containers": ["B-1"] * 1000}
    task = Task("print-1", "print", request, TaskState.RUNNING, 3, 9, {}, STAMP, None)
    shown = show_task(task)
    assert (shown.done, shown.of, shown.by) == (3, 9, "Ada Quill")
    assert "B-1" not in shown.model_dump_json()
