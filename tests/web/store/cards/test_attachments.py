from __future__ import annotations

import httpx
import pytest

from service.cards.fingerprint import check_letters
from tests.web.sent import problem_of
from tests.web.store.opened import BOX, EMPTY_BOX


@pytest.mark.print
@pytest.mark.slow
def test_card_and_container_are_scanned(client: httpx.Client) -> None:
    """A card goes on its own container only; a spoiled one goes on none."""
    run = client.post("/api/prints", json={"containers": [BOX], "kinds": ["lid-card"]}).json()[
        "run"
    ]
    (card,) = client.get(f"/api/prints/{run}").json()["cards"]
    scanned = {
        "card_of": BOX,
        "revision": 1,
        "letters": check_letters(card["fingerprint"]),
        "container_number": BOX,
    }
    wrong = client.post("/api/attachments", json=scanned | {"container_number": EMPTY_BOX})
    assert problem_of(wrong)["code"] == "wrong-container"
    done = client.post("/api/attachments", json=scanned)
    assert done.status_code == 201
    assert (done.json()["card"]["state"], done.json()["replaced"]) == ("attached", None)
    back = client.post(f"/api/cards/{card['card']}/taken-back")
    assert back.json()["state"] == "made"
    assert client.post(f"/api/cards/{card['card']}/spoiled").json()["state"] == "spoiled"
    again = client.post(f"/api/cards/{card['card']}/attached")
    assert problem_of(again)["status"] == 409


def test_a_card_nobody_printed_is_not_attached(client: httpx.Client) -> None:
    """Neither by number nor by what somebody typed."""
    assert problem_of(client.post("/api/cards/1/attached"))["status"] == 404
    typed = {"card_of": BOX, "revision": 1, "letters": "KMTF", "container_number": BOX}
    assert problem_of(client.post("/api/attachments", json=typed))["status"] == 404
