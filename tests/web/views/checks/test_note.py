from __future__ import annotations

from datetime import date

import httpx

from service.handling.checks.kinds import CheckKind, CheckResult
from service.store.kept.checks import Looked
from service.web.views.checks.note import find_faults, read_looks
from tests.web.store.opened import BOX
from tests.web.views.opened import follow, send, show

LOOK = f"/checks/look?container={BOX}"
TODAY = date(2026, 11, 25)


def test_a_look_is_noted_and_leads_on(client: httpx.Client) -> None:
    """The last one leads back to the list; with one press it is taken back."""
    said = {"container": BOX, "pests": "ok", "tissue": "not-done", "note": "lid sticks"}
    page = follow(client, answer := send(client, LOOK, "/checks/note", said))
    assert answer.headers["location"] == "/checks"
    assert f"{BOX} is noted" in page
    (check,) = client.get(f"/api/containers/{BOX}/checks").json()["checks"]
    assert check["note"] == "lid sticks"
    assert [look["result"] for look in check["results"]] == ["ok", "not-done"]
    key = page.split('name="check" value="')[1].split('"')[0]
    back = {"container": BOX, "check": key}
    assert "is taken back" in follow(client, send(client, LOOK, "/checks/take-back", back))
    assert client.get(f"/api/containers/{BOX}/checks").json()["checks"] == []
    send(client, LOOK, "/checks/take-back", back | {"check": "x"}, status=404)


def test_the_next_on_the_way_is_named(client: httpx.Client) -> None:
    """Another box with something in it follows, and the choice goes along."""
    place = {"place": {"object_number": "N.1", "layer": 1}}
    seen = {"If-Match": '"r0"'}
    assert client.post("/api/containers/B-028/put-in", json=place, headers=seen).status_code < 300
    first = client.get("/api/checks/due").json()["due"][0]["container_number"]
    other = ({BOX, "B-028"} - {first}).pop()
    said = {"container": first, "everything": "pests labels tissue corrosion", "within": "30"}
    answer = send(client, LOOK, "/checks/note", said)
    assert answer.headers["location"] == f"/checks/look?container={other}&within=30"
    assert f"Next on your way: {other}" in follow(client, answer)


def test_pests_lead_to_what_they_ask_for(client: httpx.Client) -> None:
    """Not to the next box."""
    said = {"container": BOX, "pests": "found", "note_pests": "frass"}
    answer = send(client, LOOK, "/checks/note", said)
    assert answer.headers["location"] == f"/checks/pests?container={BOX}"


def test_nothing_said_is_not_noted(client: httpx.Client) -> None:
    """The page comes again with what is missing, and what was typed stays."""
    answer = send(client, LOOK, "/checks/note", {"container": BOX, "note": "hm"}, status=422)
    assert "Nothing is chosen yet" in answer.text
    assert 'value="hm"' in answer.text
    assert "Overdue" in show(client, "/checks")


def test_faults_stand_by_their_field() -> None:
    """A day that is none or to come, and a note without end."""
    said = {"pests": "ok"}
    assert find_faults(said, TODAY) == {}
    assert set(find_faults(said | {"on": "yesterday"}, TODAY)) == {"on"}
    assert set(find_faults(said | {"on": "2026-11-26"}, TODAY)) == {"on"}
    assert set(find_faults(said | {"note_pests": "x" * 1001}, TODAY)) == {"note_pests"}
    assert set(find_faults(said | {"note": "x" * 1000, "on": "2026-11-25"}, TODAY)) == set()


def test_one_button_leaves_what_was_answered() -> None:
    """All else that stood open is in order; what was folded away, and weighing, are not."""
    shown = {"everything": "pests tissue weight", "pests": "found", "note_pests": "moth"}
    looks = read_looks(shown)
    assert looks == (
        Looked(CheckKind.PESTS, CheckResult.FOUND, "moth"),
        Looked(CheckKind.TISSUE, CheckResult.OK),
    )
    assert read_looks({"pests": "perhaps"}) == ()
