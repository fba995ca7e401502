from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import ACTOR, BOX, SPIKE, seen

NEW = {"record": {"object_number": "1931/14 9", "title": "Fid"}}


def test_objects_come_in_natural_order_page_by_page(client: httpx.Client) -> None:
    """Following the links gives every object once, the 9th before the 10th."""
    numbers: list[str] = []
    address = "/api/objects?limit=2"
    while address:
        reply = client.get(address)
        numbers += [each["object_number"] for each in reply.json()["objects"]]
        address = reply.links.get("next", {}).get("url", "")
    assert len(numbers) == 9
    assert numbers[:2] == ["1931.14.2a-c", "1931.14.7"]
    assert numbers.index("1954.3.19") < numbers.index("1987.412.10") < numbers.index("2003.8.1")


def test_object_is_added_once(client: httpx.Client) -> None:
    """A new number is kept under its own address, slash and blank included, and taken then."""
    reply = client.post("/api/objects", json=NEW)
    assert reply.status_code == 201
    kept = client.get(reply.headers["location"])
    assert kept.json()["record"]["title"] == "Fid"
    assert kept.headers["etag"] == reply.headers["etag"]
    problem = problem_of(client.post("/api/objects", json=NEW))
    assert (problem["status"], problem["code"]) == (409, "already-there")


def test_object_is_changed_from_the_state_seen(client: httpx.Client) -> None:
    """The second of two who changed the same state gets both states, and nothing is lost."""
    path = f"/api/objects/{SPIKE}"
    first = client.get(path)
    record = first.json()["record"]
    changed = client.put(path, json={"record": record | {"title": "Fid"}}, headers=seen(first))
    assert changed.status_code == 200
    assert changed.headers["etag"] != first.headers["etag"]
    late = client.put(path, json={"record": record | {"title": "Pricker"}}, headers=seen(first))
    problem = problem_of(late)
    assert (problem["status"], problem["code"]) == (412, "stale")
    assert (problem["yours"]["title"], problem["current"]["title"]) == ("Pricker", "Fid")
    assert client.get(path).json()["record"]["title"] == "Fid"


def test_source_row_stays(client: httpx.Client) -> None:
    """Whoever leaves the source row out does not lose it."""
    path = f"/api/objects/{SPIKE}"
    first = client.get(path)
    record = first.json()["record"]
    source = record.pop("source")
    assert source
    changed = client.put(path, json={"record": record | {"title": "Fid"}}, headers=seen(first))
    assert changed.json()["record"]["source"] == source


def test_change_needs_the_state_seen(client: httpx.Client) -> None:
    """A change that names no state is refused: it could undo another's."""
    record = client.get(f"/api/objects/{SPIKE}").json()["record"]
    for headers in ({}, {"If-Match": "*"}):
        reply = client.put(f"/api/objects/{SPIKE}", json={"record": record}, headers=headers)
        problem = problem_of(reply)
        assert (problem["status"], problem["code"]) == (428, "if-match-missing")


@pytest.mark.parametrize(
    ("body", "named"),
    [
        pytest.param({}, "record", id="nothing"),
        pytest.param({"record": {"object_number": ""}}, "record", id="no number"),
        pytest.param({"record": {"object_number": "a\nb"}}, "record", id="line break"),
        pytest.param({"record": {"object_number": "a", "colour": "red"}}, "colour", id="unknown"),
        pytest.param(
            {"record": {"object_number": "a", "weight": {"weight_g": "NaN"}}}, "weight", id="NaN"
        ),
        pytest.param(
            {"record": {"object_number": "a", "hazards": [{"code": "lead", "state": "none"}]}},
            "hazards.0.state",
            id="state",
        ),
    ],
)
def test_odd_record_is_refused(client: httpx.Client, body: object, named: str) -> None:
    """A field that is wrong or unknown is named, and nothing is kept."""
    problem = problem_of(client.post("/api/objects", json=body))
    assert (problem["status"], problem["code"]) == (422, "unusable-field")
    assert named in problem["detail"]


def test_unstorable_text_is_refused(client: httpx.Client) -> None:
    """A NUL is no text that every database keeps."""
    body = {"record": {"object_number": "a", "title": "x\0y"}}
    problem = problem_of(client.post("/api/objects", json=body))
    assert (problem["status"], problem["code"]) == (422, "unstorable-text")


def test_number_cannot_be_changed(client: httpx.Client) -> None:
    """A record with another number than the path is refused."""
    first = client.get(f"/api/objects/{SPIKE}")
    reply = client.put(f"/api/objects/{SPIKE}", json=NEW, headers=seen(first))
    assert problem_of(reply)["code"] == "unusable-field"


def test_object_is_found_in_one_step(client: httpx.Client) -> None:
    """Asked where an object is, the container, its title and its location come at once."""
    (place,) = client.get(f"/api/objects/{SPIKE}/places").json()["places"]
    assert place["container_number"] == BOX
    assert place["title"]
    assert place["location"]
    assert place["place"]["object_number"] == SPIKE


@pytest.mark.parametrize("path", ["/api/objects/none", "/api/objects/none/places"])
def test_unknown_object_is_a_problem(client: httpx.Client, path: str) -> None:
    """A number that names nothing is told as such."""
    problem = problem_of(client.get(path))
    assert (problem["status"], problem["code"]) == (404, "not-in-store")


@pytest.mark.parametrize("name", ["", "%00", "%E9", "x" * 300, "%20"])
def test_change_needs_a_person(client: httpx.Client, name: str) -> None:
    """Without the name of a person nothing is changed."""
    reply = client.post("/api/objects", json=NEW, headers=ACTOR | {"Underlid-Actor": name})
    problem = problem_of(reply)
    assert (problem["status"], problem["code"]) == (422, "actor-missing")
    assert client.get("/api/objects/1931/14%209").status_code == 404


def test_a_number_like_a_path_is_found(client: httpx.Client) -> None:
    """What ends in the name of another path is found by its number, exactly, or not at all."""
    record = {"object_number": "1931/places", "title": "Odd"}
    assert client.post("/api/objects", json={"record": record}).status_code == 201
    found = client.get("/api/objects", params={"number": "1931/places"}).json()
    assert found == {"objects": [{"object_number": "1931/places", "title": "Odd"}]}
    assert client.get("/api/objects", params={"number": "1931"}).json() == {"objects": []}
