from __future__ import annotations

from pathlib import Path

import httpx
import pytest

from service.keeping.printing.printers_file import NAME, keep_saved
from tests.web.sent import problem_of
from tests.web.store.cards.test_prints import LABELS, made
from tests.web.store.examples import PRINTERS


@pytest.fixture
def data_folder(tmp_path: Path, client: httpx.Client) -> Path:
    """Give the data folder of the service that the client asks."""
    assert client.get("/health").status_code == 200
    return tmp_path / "data"


def test_printers_are_told_as_they_were_measured(client: httpx.Client, data_folder: Path) -> None:
    """Before there are any, and as soon as one is kept: names, trays, map, edges and days."""
    assert client.get("/api/printers").json() == {"printers": []}
    keep_saved(data_folder, PRINTERS)
    (printer,) = client.get("/api/printers").json()["printers"]
    assert (printer["name"], printer["trays"]) == ("Office copier", ["2"])
    assert printer["edges"]["bottom_mm"] == 12
    assert printer["address"] == ""
    (tray,) = printer["corrections"]
    assert (tray["tray"], tray["stock"], tray["measured_on"]) == ("2", "", "2026-11-25")
    assert (tray["correction"]["shift_x_mm"], tray["correction"]["xx"]) == (-2, 1)
    assert "2.00 mm too far right and 1.00 mm too low" in tray["is_off"]


def test_a_spoiled_file_is_told(client: httpx.Client, data_folder: Path) -> None:
    """A file that somebody broke is a problem in words, not an empty list."""
    (data_folder / NAME).write_text("{")
    assert problem_of(client.get("/api/printers"))["code"] == "calibration"


@pytest.mark.print
@pytest.mark.slow
def test_a_print_is_corrected_for_its_tray(client: httpx.Client, data_folder: Path) -> None:
    """The run names printer and tray as they are kept; its ink is not where it would be without."""
    keep_saved(data_folder, PRINTERS)
    plain = client.get(f"/api/prints/{made(client, LABELS)}").json()
    body = {**LABELS, "printer": "office COPIER", "tray": "2"}
    run = client.get(f"/api/prints/{made(client, body)}").json()
    assert (run["options"]["printer"], run["options"]["tray"]) == ("Office copier", "2")
    assert run["files"][0]["sha256"] != plain["files"][0]["sha256"]
    sheet = {"file": run["files"][0]["name"], "sheet": 1}
    path = f"/api/prints/{run['run']}/spoiled"
    unknown = client.post(path, json={**sheet, "printer": "office copier", "tray": "3"})
    assert problem_of(unknown)["code"] == "unknown-printer"
    assert "tray '3'; known: 2" in problem_of(unknown)["detail"]
    again = client.post(path, json={**sheet, "printer": "office copier", "tray": "2"})
    assert again.json()["options"]["printer"] == "Office copier"
