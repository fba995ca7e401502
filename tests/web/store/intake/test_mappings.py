from __future__ import annotations

import httpx

from service.records.mapping.document import mapping_data
from tests.records.mapping.made import MAPPING, TABLE
from tests.web.sent import problem_of
from tests.web.store.opened import seen

PATH = "/api/mappings/Catalogue%20export"
BODY = {"mapping": mapping_data(MAPPING)}


def test_a_mapping_is_saved_changed_and_taken_away(client: httpx.Client) -> None:
    """A new one needs no tag; a change needs that of the one that was seen."""
    assert client.put(PATH, json=BODY).status_code == 200
    assert client.put(PATH, json=BODY).status_code == 200
    other = {"mapping": {**mapping_data(MAPPING), "encoding": "utf-8"}}
    assert problem_of(client.put(PATH, json=other))["code"] == "if-match-missing"
    stale = problem_of(client.put(PATH, json=other, headers={"If-Match": '"x"'}))
    assert (stale["code"], stale["current"]["encoding"]) == ("stale", "")
    kept = client.put(PATH, json=other, headers=seen(client.get(PATH))).json()
    assert (kept["name"], kept["by"]) == ("Catalogue export", "Ada Quill")
    assert client.get("/api/mappings").json()["mappings"] == [kept]
    assert client.delete(PATH).json() == {"mappings": []}
    assert problem_of(client.get(PATH))["code"] == "not-in-store"


def test_what_is_wrong_is_said(client: httpx.Client) -> None:
    """The sentences name everything."""
    wrong = {"mapping": {"headings": {"A": "title", "B": "title"}}}
    problem = problem_of(client.put(PATH, json=wrong))
    assert problem["code"] == "unusable-mapping"
    assert "“A”, “B” are both to be title" in problem["detail"]
    assert "object_number" in problem["detail"]


def test_a_look_into_a_file_gives_a_mapping_to_begin_with(client: httpx.Client) -> None:
    """What was guessed and completed can be saved, and then fits."""
    files = {"file": ("export.csv", TABLE.encode())}
    sample = client.post("/api/imports/sample", files=files).json()
    assert sample["headings"][0] == "Inventarnummer"
    assert sample["missing"] == ["object_number"]
    client.put(PATH, json=BODY)
    again = client.post("/api/imports/sample", files=files, data={"delimiter": ";"}).json()
    assert again["saved"] == "Catalogue export"
    odd = client.post("/api/imports/sample", files=files, data={"encoding": "rot13"})
    assert problem_of(odd)["code"] == "unusable-mapping"


def test_imports_name_their_mapping(client: httpx.Client) -> None:
    """Preview, import and task take the name; one that is not there is refused at once."""
    files = {"files": ("export.csv", TABLE.encode())}
    for path in ("/api/imports/preview", "/api/imports", "/api/tasks/imports"):
        refused = client.post(path, files=files, data={"mapping": "Catalogue export"})
        assert problem_of(refused)["code"] == "not-in-store", path
    client.put(PATH, json=BODY)
    asked = {"mapping": "Catalogue export"}
    preview = client.post("/api/imports/preview", files=files, data=asked).json()
    assert preview["objects"]["new"] == ["1931.14.2"]
    taken = client.post("/api/imports", files=files, data=asked).json()
    assert taken["summary"]["objects new"] == 1
    assert client.post("/api/tasks/imports", files=files, data=asked).status_code == 202
