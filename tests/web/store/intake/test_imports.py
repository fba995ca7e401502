from __future__ import annotations

import json

import httpx

from tests.web.sent import ONE_BOX, SAMPLES, problem_of
from tests.web.store.opened import BOX, SPIKE


def sent(data: bytes, name: str = "export.json") -> dict[str, tuple[str, bytes]]:
    """Give a file as a form sends it."""
    return {"files": (name, data)}


def changed() -> bytes:
    """Give the sample with one title changed."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    for record in records["objects"]:
        if record["object_number"] == SPIKE:
            record["title"] = "Fid, boxwood"
    return json.dumps(records).encode()


def test_the_preview_shows_the_cells_that_differ(client: httpx.Client) -> None:
    """The title before and after is told, and nothing is changed."""
    preview = client.post("/api/imports/preview", files=sent(changed())).json()
    assert preview["objects"]["changed"] == [SPIKE]
    assert preview["differences"][SPIKE]["record"]["after"] == {"title": "Fid, boxwood"}
    assert "Marlinspike" in client.get(f"/api/objects/{SPIKE}").text


def test_the_preview_shows_what_lies_otherwise(client: httpx.Client) -> None:
    """An object that a box loses is told with its place, and goes on lying there."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    places = records["packings"][0]["places"]
    records["packings"][0]["places"] = [one for one in places if one["object_number"] != SPIKE]
    sends = sent(json.dumps(records).encode())
    preview = client.post("/api/imports/preview", files=sends).json()
    assert preview["packings"]["changed"] == [BOX]
    (change,) = preview["repacked"][BOX]["places"]
    assert (change["course"], change["before"]["object_number"]) == ("out", SPIKE)
    assert (change["after"], change["other"]) == (None, "")
    assert client.get(f"/api/objects/{SPIKE}/places").json()["places"]


def test_a_file_is_taken_in_once_under_its_key(client: httpx.Client) -> None:
    """The same request again gives the first reply; the same file later changes nothing."""
    key = {"Idempotency-Key": "k-1"}
    first = client.post("/api/imports", files=sent(changed()), headers=key)
    assert first.status_code == 201
    assert first.json()["summary"]["objects changed"] == 1
    again = client.post("/api/imports", files=sent(changed()), headers=key)
    assert again.json() == first.json()
    later = client.post("/api/imports", files=sent(changed())).json()
    assert later["summary"]["objects changed"] == 0
    names = [one["name"] for one in client.get("/api/imports").json()["imports"]]
    assert names == ["export.json", "export.json"]


def test_exports_of_catalogues_are_taken_in(client: httpx.Client) -> None:
    """A LIDO file and a Darwin Core Archive are known by their endings, with tables beside them."""
    lido = (SAMPLES / "lido_export" / "objects.xml").read_bytes()
    files = [("files", ("Hand on.XML", lido)), ("files", ("containers.csv", b"Box\nB-042\n"))]
    preview = client.post("/api/imports/preview", files=files).json()
    assert len(preview["objects"]["new"]) > 1
    assert preview["containers"]["new"] == ["B-042"]
    archive = (SAMPLES / "darwin_archive" / "skins.zip").read_bytes()
    preview = client.post("/api/imports/preview", files=sent(archive, "skins.zip")).json()
    assert len(preview["objects"]["new"]) > 1


def test_what_cannot_be_read_is_refused(client: httpx.Client) -> None:
    """A file of another kind leaves everything as it was, whatever it is called."""
    for name in ("../../x.json", "x.xlsx", "x.csv"):
        problem = problem_of(client.post("/api/imports", files=sent(b"\0\1\2", name)))
        assert problem["status"] == 422
    assert client.get("/api/imports").json()["imports"] == []
    other = client.post("/api/imports", files=sent(changed()), headers={"Underlid-Actor": ""})
    assert problem_of(other)["code"] == "actor-missing"
