from __future__ import annotations

import shutil
from pathlib import Path

import httpx
import pytest
from pydantic import BaseModel

from service.keeping.printing.printers_file import keep_saved
from service.pipeline.ready import Workshop
from service.sheets.printers.printer import Printer as KnownPrinter
from service.sheets.printers.saved import Saved
from service.store.people.role import Role
from tests.keeping.sending.printer import Printer, running_printer
from tests.web.sent import problem_of
from tests.web.store.cards.test_swap_list import make_one_wrong
from tests.web.store.examples import add_run, document, list_examples, send_example
from tests.web.store.opened import open_client
from tests.web.store.people.people import ADA, add_pairing, add_people, add_token, enter

OF_WHOEVER_SIGNED_IN = ("/api/sessions", "/api/tokens", "/api/pairings")


OF_NO_HISTORY = "/api/own-stocks"
"""Measures of sheets lie beside the store, as those of printers do: no history tells of them."""


def test_reading_changes_nothing_and_changing_names_somebody(client: httpx.Client) -> None:
    """Every path that changes the store refuses a request without a person's name."""
    paths = client.get("/openapi.json").json()["paths"]
    stored = {
        path: each
        for path, each in paths.items()
        if path not in {"/api/render", "/api/check"}
        and not path.startswith((*OF_WHOEVER_SIGNED_IN, OF_NO_HISTORY))
    }
    filled = {"number": "1", "run": 1, "card": 1, "out": 1, "check": 1}
    filled |= {"name": "x", "task": "x", "import_id": 1, "sha256": "0" * 64}
    changing = [
        (path.format(**filled), method)
        for path, each in stored.items()
        for method in each
        if method in {"post", "put", "patch", "delete"} and not path.endswith("/preview")
    ]
    assert len(changing) > 12
    for path, method in changing:
        reply = client.request(method, path, headers={"Underlid-Actor": ""})
        assert problem_of(reply)["code"] in {"actor-missing", "unusable-field"}, path


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory, filled: Path) -> Path:
    """Fill one store with cards that were printed, to be copied."""
    folder = shutil.copytree(filled, tmp_path_factory.mktemp("printed") / "data")
    add_run(folder)
    return folder


# Some print, which takes long where much else runs. An alarm for what takes too long can ring while
# garbage is collected: then the clean-up of AnyIO's weak dictionary of event loops swallows it.
@pytest.mark.timeout(300)
@pytest.mark.parametrize("shown", list(list_examples()), ids=str)
def test_every_example_can_be_sent(
    shown: tuple[str, str, int], tmp_path: Path, printed: Path, workshop: Workshop
) -> None:
    """What the description shows is answered with the status and the shape that it promises."""
    path, method, at = shown
    folder = shutil.copytree(printed, tmp_path / "data")
    with open_client(folder, workshop) as client, running_printer(Printer()) as printer:
        if path.endswith("/send"):
            keep_saved(folder, Saved((KnownPrinter("Label desk", address=printer.address),)))
        if path.startswith(OF_WHOEVER_SIGNED_IN) or method == "patch":
            _let_in(client, folder, path)
        _prepare(client, path)
        reply = send_example(client, path, method, at)
    promised = next(iter(document()["paths"][path][method]["responses"]))
    assert reply.status_code == int(promised), reply.text
    promise = document()["paths"][path][method]["responses"][promised]["content"]
    if "application/json" in promise:
        name = promise["application/json"]["schema"]["$ref"].rsplit("/", 1)[-1]
        shape_called(name).model_validate_json(reply.content)
    else:
        assert reply.headers["content-type"].partition(";")[0] in promise


def _prepare(client: httpx.Client, path: str) -> None:
    """Bring about what an example speaks of."""
    if path == "/api/swap-list":
        make_one_wrong(client)
    if path.endswith("/taken-back"):
        client.post("/api/cards/1/attached")
    if path.endswith("/events"):
        client.post("/api/tasks/print-0/cancel")
    if path.endswith("/checks/{check}"):
        client.post("/api/containers/B-027/checks", json={"checked_on": "2026-11-20"})
    if path.startswith("/api/own-stocks/"):
        send_example(client, "/api/own-stocks", "post", 0)


def _let_in(client: httpx.Client, folder: Path, path: str) -> None:
    """Sign the manager in, who has a token and has made a code; whoever signs in is outside yet."""
    add_people(folder, [Role.MANAGE])
    add_token(folder, ADA, {Role.VIEW})
    add_pairing(folder, ADA)
    if path not in {"/api/sessions", "/api/pairings/finish"}:
        client.headers.update(enter(client, ADA))


def shape_called(name: str) -> type[BaseModel]:
    """Find a shape by its name, which the description uses.

    Raises:
        LookupError: When there is none.
    """
    waiting = BaseModel.__subclasses__()
    while waiting:
        shape = waiting.pop()
        if shape.__name__ == name and shape.__module__.startswith("service."):
            return shape
        waiting += shape.__subclasses__()
    raise LookupError(name)
