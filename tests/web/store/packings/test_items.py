from __future__ import annotations

import httpx
import pytest

from service.keeping.photos.sources import FILE_LIMIT_BYTES
from tests.web.sent import problem_of
from tests.web.store.intake.test_photos import picture
from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE

PATH = f"/api/containers/{EMPTY_BOX}/items"
FIELDS = {"object_number": "2026.3.1", "title": "Net needle", "layer": "2"}


def photo(data: bytes | None = None) -> dict[str, tuple[str, bytes]]:
    """Give the part of a photo as a camera sends it."""
    return {"photo": ("image.jpg", picture() if data is None else data)}


def test_record_photo_and_place_come_at_once(client: httpx.Client) -> None:
    """The answer tells what is needed to take it back."""
    reply = client.post(PATH, data=FIELDS, files=photo())
    assert reply.status_code == 201, reply.text
    told = reply.json()
    assert (told["is_new"], told["before"], told["revision"]) == (True, 0, 1)
    assert len(told["photo_sha256"]) == 64
    assert client.get("/api/objects/2026.3.1").json()["record"]["title"] == "Net needle"
    (place,) = client.get("/api/objects/2026.3.1/places").json()["places"]
    assert (place["container_number"], place["place"]["layer"]) == (EMPTY_BOX, 2)


def test_nothing_arrives_twice(client: httpx.Client) -> None:
    """Under its key the first answer comes again; another photo under it is refused."""
    key = {"Idempotency-Key": "k-1"}
    first = client.post(PATH, data=FIELDS, files=photo(), headers=key)
    again = client.post(PATH, data=FIELDS, files=photo(), headers=key)
    assert (again.status_code, again.json()) == (201, first.json())
    assert client.get(f"/api/containers/{EMPTY_BOX}").json()["revision"] == 1
    other = client.post(PATH, data=FIELDS, headers=key)
    assert problem_of(other)["code"] == "key-used"


def test_a_confirmed_hazard_says_by_whom(client: httpx.Client) -> None:
    """What is only presumed was looked into by nobody."""
    for code, state in (("lead", "confirmed"), ("mould", "presumed")):
        fields = FIELDS | {"hazard": code, "hazard_state": state, "hazard_note": "bloom"}
        assert client.post(PATH, data=fields).status_code == 201
    lead, mould = client.get("/api/objects/2026.3.1").json()["record"]["hazards"]
    assert (lead["checked_by"], lead["checked_on"]) == ("Ada Quill", "2026-11-25")
    assert (mould["state"], mould["checked_by"]) == ("presumed", "")


@pytest.mark.parametrize(
    ("changed", "status", "code"),
    [
        pytest.param({"object_number": "  "}, 422, "unusable-field", id="no number"),
        pytest.param({"object_number": SPIKE}, 409, "packed-elsewhere", id="elsewhere"),
        pytest.param({"hazard": "dragon"}, 422, "unusable-field", id="no hazard"),
        pytest.param({"layer": "0"}, 422, "unusable-field", id="no layer"),
    ],
)
def test_what_cannot_be_changes_nothing(
    client: httpx.Client, changed: dict[str, str], status: int, code: str
) -> None:
    """It is told with a code that a queue can act on."""
    reply = client.post(PATH, data=FIELDS | changed, files=photo())
    assert (reply.status_code, problem_of(reply)["code"]) == (status, code)
    assert client.get(f"/api/containers/{EMPTY_BOX}").json()["revision"] == 0


def test_it_can_be_moved_here(client: httpx.Client) -> None:
    """When that is said, it leaves where it lay."""
    reply = client.post(PATH, data=FIELDS | {"object_number": SPIKE, "move": "yes"})
    assert (reply.json()["moved_from"], reply.json()["is_new"]) == (BOX, False)


def test_no_photo_is_told_as_such(client: httpx.Client) -> None:
    """Nothing of it is kept, the record neither."""
    broken = client.post(PATH, data=FIELDS, files=photo(b"no photo"))
    assert problem_of(broken)["detail"].startswith("photo: ")
    large = client.post(PATH, data=FIELDS, files=photo(b"\xff" * (FILE_LIMIT_BYTES + 1)))
    assert problem_of(large)["code"] == "too-large"
    assert client.get("/api/objects/2026.3.1").status_code == 404


def test_an_unknown_container_is_told(client: httpx.Client) -> None:
    """It has to be begun first."""
    reply = client.post("/api/containers/none/items", data=FIELDS)
    assert problem_of(reply)["code"] == "not-in-store"
