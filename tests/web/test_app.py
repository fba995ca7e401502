from __future__ import annotations

import logging

import httpx
import pytest

from service.web.app import make_app
from service.web.press import Presses
from service.web.work import Done, Failed, Job
from tests.web.sent import one_box, photo_part, problem_of, records_part, running_app


class _BrokenPresses(Presses):
    """Presses with a fault that is not in our tree."""

    def run(self, job: Job) -> Done | Failed:
        """Fail with words that must not leave the house.

        Raises:
            ZeroDivisionError: Always.
        """
        message = f"secret {len(job.records)}"
        raise ZeroDivisionError(message)


@pytest.mark.parametrize(
    ("method", "path", "status", "code"),
    [
        ("GET", "/nowhere", 404, "not-found"),
        ("GET", "/api/render", 405, "method-not-allowed"),
        ("GET", "/../../etc/passwd", 404, "not-found"),
        ("POST", "/api/render", 422, "unusable-field"),
    ],
)
def test_framework_refusals_are_problems(
    client: httpx.Client, method: str, path: str, status: int, code: str
) -> None:
    """What the framework refuses has the same shape as everything else."""
    problem = problem_of(client.request(method, path))
    assert (problem["status"], problem["code"]) == (status, code)


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("copies", "0"),
        ("copies", "many"),
        ("start", "-1"),
        ("dpi", "nan"),
        ("dpi", "1e9"),
        ("page", "0"),
        ("paper", "A0"),
        ("stock", "x" * 201),
        ("colour", "red"),
        ("photos", "no file"),
    ],
)
def test_unusable_field_is_named(client: httpx.Client, field: str, value: str) -> None:
    """A field that is wrong or unknown is named, and never left out silently."""
    reply = client.post("/api/render", files=records_part(one_box()), data={field: value})
    problem = problem_of(reply)
    assert (problem["status"], problem["code"]) == (422, "unusable-field")
    assert problem["detail"].startswith(field)


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"{}", "application/json"),
        (b"{}", "text/plain"),
        (b"records=%7B%7D&records=2", "text/html"),
        (b"no boundary", "multipart/form-data"),
        (b"--x\r\nbroken", "multipart/form-data; boundary=x"),
        (b"x" * 5000, "multipart/form-data; boundary=" + "x" * 3000),
    ],
    ids=lambda value: str(value)[:30],
)
def test_what_is_no_form_is_refused(client: httpx.Client, data: bytes, kind: str) -> None:
    """A body in another form is a problem of the sender, in the usual shape."""
    reply = client.post("/api/check", content=data, headers={"Content-Type": kind})
    assert problem_of(reply)["status"] in {400, 422}


def test_too_many_files_are_refused(client: httpx.Client) -> None:
    """More than 2,000 photos are not taken in one request."""
    photos = [part for n in range(2001) for part in photo_part(f"{n}.jpg", b"x")]
    problem = problem_of(client.post("/api/check", files=records_part({}) + photos))
    assert problem["status"] == 400
    assert "Too many files" in problem["detail"]


def test_own_fault_tells_nothing(caplog: pytest.LogCaptureFixture) -> None:
    """A fault nobody foresaw is logged under a mark; the reply holds the mark and no more."""
    broken = _BrokenPresses([], patience_seconds=0)
    with running_app(make_app(broken, "127.0.0.1")) as client, caplog.at_level(logging.ERROR):
        problem = problem_of(client.post("/api/check", files=records_part({})))
    assert (problem["status"], problem["code"]) == (500, "failed")
    assert "secret" not in problem["detail"]
    mark = problem["detail"].rstrip(".").split()[-1]
    assert any(mark in record.getMessage() for record in caplog.records)
