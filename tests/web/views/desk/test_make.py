from __future__ import annotations

import html
import re
from urllib.parse import urlencode

import httpx
import pytest

from service.web.views.desk.settings import usual_codes
from tests.web.store.opened import BOX
from tests.web.views.opened import HTML, show

LABELS = "A4 2x4 99.1x67.7"


def _post(client: httpx.Client, path: str, fields: list[tuple[str, str]]) -> httpx.Response:
    token = re.search(
        r'name="form_token" value="([^"]+)"', show(client, f"/print?containers={BOX}")
    )
    assert token is not None
    sent = urlencode([*fields, ("form_token", token[1])])
    form = {**HTML, "Content-Type": "application/x-www-form-urlencoded"}
    return client.post(path, content=sent, headers=form)


def _choose(client: httpx.Client, *more: tuple[str, str]) -> httpx.Response:
    usual = [("usual", code) for code in usual_codes()]
    return _post(
        client, "/print/sheets", [("what", "containers"), ("containers", BOX), *usual, *more]
    )


def _wanted(page: str) -> str:
    found = re.search(r'name="wanted" value="([^"]+)"', page)
    assert found is not None
    return html.unescape(found[1])


def test_the_first_sheet_of_each_stock_is_shown(client: httpx.Client) -> None:
    """Labels with eight boxes to tick, and a card that fills its sheet with none."""
    page = _choose(client)
    assert page.status_code == 200
    assert page.text.count(f'@{LABELS}"') == 8
    assert "One to a sheet" in page.text
    style = re.search(r'href="(/print/drawn/[^"]+)"', page.text)
    assert style is not None
    assert "aspect-ratio" in client.get(style[1]).text
    assert client.get("/print/drawn/0/stocks.css").status_code == 404


def test_a_stock_of_the_museum_is_chosen_and_drawn(client: httpx.Client) -> None:
    """It stands first in the lists, with its own picture of boxes to tick."""
    measures = {
        "page": "A4",
        "columns": 2,
        "rows": 3,
        "label_width": "99.1",
        "label_height": "67.7",
    }
    kept = client.post("/api/own-stocks", json={**measures, "unit": "mm", "name": "Ours"})
    assert kept.status_code == 201, kept.text
    offered = show(client, f"/print?containers={BOX}")
    assert offered.index(">Ours</option>") < offered.index(f">{LABELS}</option>")
    page = _choose(client, ("stock-end-label", "ours")).text
    assert page.count('@Ours"') == 6
    style = re.search(r'href="(/print/drawn/[^"]+)"', page)
    look = re.search(r'class="[^"]*(stock-[0-9a-f]{10})', page)
    assert style is not None
    assert look is not None
    assert f".{look[1]} {{" in client.get(style[1]).text
    made = _post(client, "/print/make", [("wanted", _wanted(page)), ("gone", "1@Ours")])
    assert made.status_code == 303


def test_what_is_missing_from_the_order_is_told_beside_it(client: httpx.Client) -> None:
    """The page comes back with what was chosen."""
    page = _choose(client, ("copies", "0"))
    assert page.status_code == 422
    assert 'href="#field-copies"' in page.text
    assert f'value="{BOX}" checked' in page.text


def test_a_stock_that_is_not_there_is_told(client: httpx.Client) -> None:
    """On the page of the sheets nothing has to be guessed."""
    page = _choose(client, ("stock-end-label", "A9"))
    assert page.status_code == 422
    assert "A9" in page.text


def test_making_puts_the_order_in_the_line(client: httpx.Client) -> None:
    """The request that is kept is the one the API would have kept, with the positions ticked."""
    wanted = _wanted(_choose(client).text)
    answer = _post(
        client,
        "/print/make",
        [("wanted", wanted), ("gone", f"1@{LABELS}"), ("gone", f"4@{LABELS}")],
    )
    assert answer.status_code == 303
    assert answer.headers["location"].startswith("/tasks/print-")
    (task,) = client.get("/api/tasks").json()["tasks"]
    assert (task["kind"], task["state"]) == ("print", "waiting")


def test_positions_stay_ticked_unless_a_fresh_sheet_is_put_in(client: httpx.Client) -> None:
    """Printing begins at the first that is free."""
    wanted = ("wanted", _wanted(_choose(client).text))
    page = _post(client, "/print/sheets", [wanted, ("gone", f"1@{LABELS}")]).text
    assert "<output>2</output>" in page
    fresh = ("fresh", LABELS)
    page = _post(client, "/print/sheets", [wanted, ("gone", f"1@{LABELS}"), fresh]).text
    assert "<output>1</output>" in page


@pytest.mark.parametrize("path", ["/print/sheets", "/print/make"])
def test_an_order_that_was_tampered_with_is_refused(client: httpx.Client, path: str) -> None:
    """What comes back is read as strictly as a request of a program."""
    assert _post(client, path, [("wanted", '{"copies": 1000}')]).status_code == 422
