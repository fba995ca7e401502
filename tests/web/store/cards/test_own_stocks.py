from __future__ import annotations

import httpx

from tests.web.sent import problem_of

MEASURES = {
    "name": "Our sheet",
    "page": "A4",
    "columns": 2,
    "rows": 4,
    "label_width": "99.1 mm",
    "label_height": "67.7 mm",
}
PATH = "/api/own-stocks"


def test_a_stock_is_kept_and_forgotten(client: httpx.Client) -> None:
    """As it was understood; forgotten once, there is none to forget."""
    assert client.get(PATH).json() == {"stocks": []}
    made = client.post(PATH, json=MEASURES)
    assert (made.status_code, made.json()["positions"]) == (201, 8)
    assert client.get(PATH).json() == {"stocks": [made.json()]}
    assert client.delete(f"{PATH}/our sheet").json() == {"stocks": []}
    assert client.get(PATH).json() == {"stocks": []}
    assert problem_of(client.delete(f"{PATH}/our sheet"))["code"] == "unknown-stock"


def test_what_cannot_be_is_refused(client: httpx.Client) -> None:
    """The measure at fault is named."""
    refused = problem_of(client.post(PATH, json=MEASURES | {"columns": 3}))
    assert refused["code"] == "impossible-stock"
    assert "the last column" in refused["detail"]
