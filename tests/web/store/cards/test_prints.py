from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.cards.test_wanted import OURS
from tests.web.store.opened import BOX, LAMP, SPIKE, seen

pytestmark = [pytest.mark.print, pytest.mark.slow]

LABELS: dict[str, object] = {"containers": [BOX], "kinds": ["end-label"]}


def made(client: httpx.Client, body: dict[str, object], key: str = "") -> int:
    """Print, and give the number of the run."""
    headers = {"Idempotency-Key": key} if key else {}
    reply = client.post("/api/prints", json=body, headers=headers)
    assert reply.status_code == 201, reply.text
    assert reply.headers["location"] == f"/api/prints/{reply.json()['run']}"
    return int(reply.json()["run"])


def test_a_run_is_made_and_read(client: httpx.Client) -> None:
    """Files and cards are told, and each file comes byte for byte."""
    run = made(client, LABELS)
    shown = client.get(f"/api/prints/{run}").json()
    assert [(card["side"], card["places"]) for card in shown["cards"]] == [
        (1, [[1, 1]]),
        (2, [[1, 2]]),
    ]
    (file,) = shown["files"]
    pdf = client.get(f"/api/prints/{run}/files/{file['name']}")
    assert pdf.headers["content-type"] == "application/pdf"
    assert pdf.headers["etag"] == f'"{file["sha256"]}"'
    assert len(pdf.content) == file["length_bytes"]
    assert problem_of(client.get(f"/api/prints/{run}/files/none.pdf"))["status"] == 404
    assert problem_of(client.get("/api/prints/999"))["code"] == "not-in-store"


def test_the_same_key_prints_once(client: httpx.Client) -> None:
    """The first reply comes again; another request under the key is refused."""
    run = made(client, LABELS, key="k-1")
    assert made(client, LABELS, key="k-1") == run
    assert made(client, LABELS, key="k-2") == run + 1
    key = {"Idempotency-Key": "k-3"}
    first, again = (client.post("/api/prints", json=LABELS, headers=key) for _ in range(2))
    assert first.json()["findings"]
    assert again.json() == first.json()
    assert client.get("/api/prints").json()["runs"][0]["run"] == run + 2
    other = client.post("/api/prints", json={}, headers={"Idempotency-Key": "k-1"})
    assert problem_of(other)["code"] == "key-used"
    page = client.get("/api/prints?limit=1")
    assert [one["run"] for one in page.json()["runs"]] == [run + 2]
    rest = client.get(page.links["next"]["url"]).json()["runs"]
    assert [one["run"] for one in rest] == [run + 1]


def test_what_went_out_of_date_is_printed(client: httpx.Client) -> None:
    """Nothing is wrong at first; after a repack just the attached cards are, on begun sheets."""
    run = made(client, LABELS)
    for card in client.get(f"/api/prints/{run}").json()["cards"]:
        assert client.post(f"/api/cards/{card['card']}/attached").status_code == 201
    assert problem_of(client.post("/api/prints", json={"reprints": True}))["status"] == 404
    body = {"object_number": LAMP}
    taken = client.post(f"/api/containers/{BOX}/take-out", json=body, headers={"If-Match": '"r1"'})
    assert taken.status_code == 201
    wrong = client.get("/api/reprints").json()["reprints"]
    assert {one["kind"] for one in wrong} == {"end-label"}
    again = made(client, {"reprints": True, "go_on": True})
    cards = client.get(f"/api/prints/{again}").json()["cards"]
    assert [card["places"] for card in cards] == [[[1, 3]], [[1, 4]]]


def test_a_spoiled_sheet_is_printed_alone(client: httpx.Client) -> None:
    """Its cards come on a fresh sheet, and are marked."""
    run = made(client, LABELS)
    (file,) = client.get(f"/api/prints/{run}").json()["files"]
    body = {"file": file["name"], "sheet": 1}
    assert client.post(f"/api/prints/{run}/spoiled", json=body).status_code == 201
    states = {card["state"] for card in client.get(f"/api/prints/{run}").json()["cards"]}
    assert states == {"spoiled"}
    assert problem_of(client.post(f"/api/prints/{run}/spoiled", json=body))["status"] == 404


def test_a_lost_card_is_printed_again(client: httpx.Client) -> None:
    """Just its side of the label, as it is worded today; the lost one is withdrawn by the new."""
    first = client.get(f"/api/prints/{made(client, LABELS)}").json()["cards"][1]
    client.post(f"/api/cards/{first['card']}/attached")
    body = {"object_number": LAMP}
    client.post(f"/api/containers/{BOX}/take-out", json=body, headers={"If-Match": '"r1"'})
    run = client.get(f"/api/prints/{made(client, {'cards': [first['card']]})}").json()
    (card,) = run["cards"]
    assert (card["kind"], card["side"], card["revision"]) == ("end-label", 2, 2)
    assert card["fingerprint"] != first["fingerprint"]
    done = client.post(f"/api/cards/{card['card']}/attached").json()
    assert done["replaced"]["card"] == first["card"]
    assert problem_of(client.post("/api/prints", json={"cards": [999]}))["status"] == 404


def test_a_sheet_of_ones_own_is_printed_on(client: httpx.Client) -> None:
    """Its labels lie where its measures say, and the sheet that was begun is gone on with."""
    body = {**LABELS, "stock": OURS | {"rows": 2}}
    run = client.get(f"/api/prints/{made(client, body)}").json()
    assert run["options"]["stock"] == "Ours"
    assert [file["name"] for file in run["files"]] == ["end-label, Ours.pdf"]
    assert [card["places"] for card in run["cards"]] == [[[1, 1]], [[1, 2]]]
    again = client.get(f"/api/prints/{made(client, {**body, 'go_on': True})}").json()
    assert [card["places"] for card in again["cards"]] == [[[1, 3]], [[1, 4]]]


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ({"kinds": ["flag"]}, "unknown-card-kind"),
        ({"stock": "A9"}, "unknown-stock"),
        ({"stock": OURS | {"rows": 40}}, "impossible-stock"),
        ({"stock": OURS | {"name": "a4 card"}}, "impossible-stock"),
        ({"stock": OURS, "start_position": 9}, "start-position"),
        ({"printer": "Office copier"}, "unknown-printer"),
        ({"tray": "2"}, "unknown-printer"),
        ({"containers": ["none"]}, "nothing-to-print"),
        ({"copies": 0}, "unusable-field"),
        ({"colour": "red"}, "unusable-field"),
    ],
)
def test_what_cannot_be_printed_is_refused(
    client: httpx.Client, body: dict[str, object], code: str
) -> None:
    """No run is made of it."""
    problem = problem_of(client.post("/api/prints", json=body))
    assert (problem["status"], problem["code"]) == (422, code)
    assert client.get("/api/prints").json()["runs"] == []


def test_tags_of_objects_are_printed(client: httpx.Client) -> None:
    """Named by their objects, or with their box; once attached, listed where the object lies."""
    run = made(client, {"objects": [SPIKE]})
    (card,) = client.get(f"/api/prints/{run}").json()["cards"]
    assert (card["object_number"], card["container_number"]) == (SPIKE, "")
    assert client.post(f"/api/cards/{card['card']}/attached").status_code == 201
    path = f"/api/objects/{SPIKE}"
    first = client.get(path)
    record = first.json()["record"] | {"title": "Spike"}
    assert client.put(path, json={"record": record}, headers=seen(first)).status_code == 200
    (wrong,) = client.get("/api/reprints").json()["reprints"]
    assert (wrong["object_number"], wrong["container_number"]) == (SPIKE, BOX)
    assert (wrong["kind"], wrong["is_wanted"]) == ("object-tag", True)
    table = client.get("/api/reprints", headers={"Accept": "text/csv"}).text
    assert f"wording,{BOX},{SPIKE}," in table
    assert f",{card['letters']}," in table
    again = made(client, {"reprints": True})
    assert len(client.get(f"/api/prints/{again}").json()["cards"]) == 1
    in_box = made(client, {"containers": [BOX], "kinds": ["object-tag"]})
    tagged = {one["object_number"] for one in client.get(f"/api/prints/{in_box}").json()["cards"]}
    assert {SPIKE, LAMP} <= tagged
    unknown = client.post("/api/prints", json={"objects": ["X.999"]})
    assert problem_of(unknown)["code"] == "not-in-store"
