from __future__ import annotations

import io
import threading
import zipfile

import httpx
import pypdf
import pytest
import zxingcpp
from PIL import Image

from service.cards.kinds import CARD_KINDS
from service.render.raster import render_page_png
from service.sheets.stocks import STOCKS
from service.web.replies.problems import list_problems
from tests.web.sent import one_box, photo_part, problem_of, records_part, whole_box

LABELS = {"kind": "end-label", "stock": "A4 2x4 99.1x67.7"}


def _symbols(png: bytes) -> set[str]:
    with Image.open(io.BytesIO(png)) as image:
        return {found.text for found in zxingcpp.read_barcodes(image)}


def test_lid_card_comes_as_pdf(client: httpx.Client) -> None:
    """The sample box with its photos gives a PDF that a reader and a scanner understand."""
    reply = client.post("/api/render", files=whole_box(), data={"kind": "lid-card"})
    assert reply.status_code == 200
    assert reply.headers["content-type"] == "application/pdf"
    document = one_box()
    numbers = [each["object_number"] for each in document["objects"]]
    text = "".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(reply.content)).pages)
    assert all(number in "".join(text.split()) for number in numbers)
    symbols = _symbols(render_page_png(reply.content, 1, resolution_dpi=300))
    container = document["containers"][0]["container_number"]
    assert any(f"/c/{container}?" in symbol for symbol in symbols)
    found = client.post("/api/check", files=whole_box()).json()["findings"]
    assert "photo-missing" not in {each["code"] for each in found}
    assert int(reply.headers["underlid-findings"]) >= 0


def test_sheet_comes_as_picture(client: httpx.Client) -> None:
    """A sheet as PNG is the whole page at the dots an inch asked for, and can be scanned."""
    reply = client.post(
        "/api/render",
        files=records_part(one_box()),
        data={**LABELS, "dpi": "300"},
        headers={"Accept": "image/png"},
    )
    assert reply.headers["content-type"] == "image/png"
    with Image.open(io.BytesIO(reply.content)) as image:
        # ISO 216: A4 is 210 mm x 297 mm.
        assert image.width == pytest.approx(210 / 25.4 * 300, abs=1)
        assert image.height == pytest.approx(297 / 25.4 * 300, abs=1)
    assert _symbols(reply.content)


def test_all_files_come_as_archive(client: httpx.Client) -> None:
    """Without a choice the archive holds one file for each kind and stock, and the findings."""
    reply = client.post(
        "/api/render", files=records_part(one_box()), headers={"Accept": "application/zip"}
    )
    with zipfile.ZipFile(io.BytesIO(reply.content)) as archive:
        kinds = [name.split(",")[0] for name in archive.namelist()]
    assert kinds == ["lid-card", "end-label", "contents-list", "findings.json"]


def test_report_names_files_and_findings(client: httpx.Client) -> None:
    """As JSON a print names the files it makes, and as many findings as its header counts."""
    accept = {"Accept": "application/json"}
    reply = client.post("/api/render", files=records_part(one_box()), headers=accept)
    report = reply.json()
    assert [each["kind"] for each in report["files"]] == ["lid-card", "end-label", "contents-list"]
    assert len(report["findings"]) == int(reply.headers["underlid-findings"])
    assert set(report["findings"][0]) == {"code", "severity", "where", "message", "advice"}


def test_check_tells_what_is_missing(client: httpx.Client) -> None:
    """Checking takes what printing takes, and names each photo that was not sent."""
    reply = client.post("/api/check", files=records_part(one_box()), data=LABELS)
    missing = [each for each in reply.json()["findings"] if each["code"] == "photo-missing"]
    named = [photo["file"] for each in one_box()["objects"] for photo in each.get("photos", [])]
    assert {each["where"] for each in missing} == set(named)


@pytest.mark.parametrize("name", ["../../x.jpg", "/etc/hostname", "<b>.jpg", "../" * 99])
def test_photo_is_found_by_the_name_in_the_records(client: httpx.Client, name: str) -> None:
    """A hostile name is compared with the records and means nothing else."""
    document = one_box()
    for each in document["objects"]:
        each["photos"] = [{"file": name, "role": "front"}]
    data = (photo_part("X.112_front.jpg")[0][1])[1]
    reply = client.post("/api/check", files=records_part(document) + photo_part(name, data))
    assert reply.status_code == 200
    codes = {each["code"] for each in reply.json()["findings"]}
    assert not codes & {"photo-missing", "photo-unusable"}


@pytest.mark.parametrize(
    ("records", "code"),
    [
        pytest.param(b"{", "unreadable-file", id="not JSON"),
        pytest.param(b"[]", "unreadable-file", id="not an object"),
        pytest.param(b"[" * 99_999, "unreadable-file", id="nested"),
        pytest.param(b'{"museum": "\xff"}', "unreadable-file", id="not UTF-8"),
        pytest.param(b"{}", "nothing-to-print", id="empty"),
    ],
)
def test_unusable_records_are_a_problem(client: httpx.Client, records: bytes, code: str) -> None:
    """Records that leave nothing to print are told with a stable code and what to do."""
    problem = problem_of(client.post("/api/render", files=records_part(records)))
    assert (problem["status"], problem["code"]) == (422, code)


@pytest.mark.parametrize(
    ("data", "accept", "code"),
    [
        pytest.param({"kind": "poster"}, "*/*", "unknown-card-kind", id="kind"),
        pytest.param({"stock": "A9"}, "*/*", "unknown-stock", id="stock"),
        pytest.param({**LABELS, "start": "9"}, "*/*", "start-position", id="start"),
        pytest.param({"container": "none"}, "*/*", "nothing-to-print", id="container"),
        pytest.param({}, "*/*", "several-files", id="several"),
        pytest.param({}, "text/html", "not-acceptable", id="media type"),
        pytest.param({**LABELS, "page": "7"}, "image/png", "no-such-page", id="page"),
    ],
)
def test_impossible_choice_is_a_problem(
    client: httpx.Client, data: dict[str, str], accept: str, code: str
) -> None:
    """A choice that cannot be printed is told with a stable code and what to do."""
    sent = records_part(one_box())
    reply = client.post("/api/render", files=sent, data=data, headers={"Accept": accept})
    problem = problem_of(reply)
    assert (problem["status"], problem["code"]) == (406 if "html" in accept else 422, code)


def test_problem_tells_what_was_noticed(client: httpx.Client) -> None:
    """When nothing can be printed, the findings say why."""
    sent = records_part(one_box())
    problem = problem_of(client.post("/api/render", files=sent, data={"kind": "cover-card"}))
    assert problem["code"] == "nothing-to-print"
    assert "photo-missing" in {each["code"] for each in problem["findings"]}


def test_health_answers_while_printing(client: httpx.Client) -> None:
    """Work goes on in other processes, so the service answers meanwhile."""
    replies: list[httpx.Response] = []
    accept = {"Accept": "application/zip"}
    thread = threading.Thread(
        target=lambda: replies.append(
            client.post("/api/render", files=whole_box(), data={"copies": "9"}, headers=accept)
        )
    )
    thread.start()
    answered = [client.get("/health").json()["status"]]
    while thread.is_alive():
        answered.append(client.get("/health").json()["status"])
        thread.join(timeout=0.05)
    assert set(answered) == {"ok"}
    assert len(answered) > 2
    assert replies[0].status_code == 200


def test_lists_are_whole(client: httpx.Client) -> None:
    """Kinds, stocks and problems are those there are."""
    assert [each["code"] for each in client.get("/api/kinds").json()] == [
        kind.code for kind in CARD_KINDS
    ]
    listed = {each["name"]: each for each in client.get("/api/stocks").json()}
    assert set(listed) == {stock.name for stock in STOCKS}
    assert listed[LABELS["stock"]]["position_mm"] == [99.1, 67.7]
    assert {each["code"] for each in client.get("/api/problems").json()} == set(list_problems())
