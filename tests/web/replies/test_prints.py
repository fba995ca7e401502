from __future__ import annotations

import io
import zipfile
from email import message_from_bytes, policy

import pytest

from service.findings import Where, make_finding
from service.sentence import Sentence
from service.web.replies.prints import OFFERED, reply
from service.web.replies.refusals import Refusal, RefusedError
from service.web.work import Done, DoneFile

LIST = DoneFile("contents-list, A4 card.pdf", "contents-list", "A4 card", 1, 2, b"%PDF list\r\n")
LABEL = DoneFile("end-label, 99,1 → 67.pdf", "end-label", "99,1 → 67", 2, 1, b"%PDF label")
FINDING = make_finding("no-photo", Where(object_number="X.112"), Sentence("X.112 has no photo."))
ONE = Done((LIST,), (FINDING,))
TWO = Done((LIST, LABEL), (FINDING,))


@pytest.mark.parametrize("media_type", [each for each in OFFERED if each != "image/png"])
def test_every_reply_counts_its_findings(media_type: str) -> None:
    """Whatever is asked for, the header counts the findings and links to where they are told."""
    response = reply(ONE, media_type, page=1)
    assert response.headers["underlid-findings"] == "1"
    assert response.headers["link"].startswith('</api/check>; rel="describedby"')
    assert response.headers["content-type"].startswith(media_type)


@pytest.mark.parametrize("media_type", ["application/pdf", "image/png"])
def test_one_file_is_asked_for(media_type: str) -> None:
    """Where one file is wanted and two were made, both are named, so that one can be chosen."""
    with pytest.raises(RefusedError) as refused:
        reply(TWO, media_type, page=1)
    assert refused.value.code is Refusal.SEVERAL_FILES
    assert "contents-list on A4 card; end-label on 99,1 → 67" in refused.value.detail


def test_missing_page_is_told() -> None:
    """A sheet the file does not have is refused with the number it has."""
    with pytest.raises(RefusedError) as refused:
        reply(ONE, "image/png", page=3)
    assert refused.value.code is Refusal.NO_SUCH_PAGE
    assert "there are 2" in refused.value.detail


def test_archive_holds_everything() -> None:
    """The archive has every file under its name, and the findings."""
    with zipfile.ZipFile(io.BytesIO(bytes(reply(TWO, "application/zip", page=1).body))) as archive:
        assert archive.namelist() == [LIST.name, LABEL.name, "findings.json"]
        assert archive.read(LABEL.name) == LABEL.pdf
        assert b"X.112 has no photo." in archive.read("findings.json")


def test_multipart_is_read_by_others() -> None:
    """The parser of Python's e-mail package finds the same bytes in the parts (RFC 2046)."""
    response = reply(TWO, "multipart/mixed", page=1)
    head = f"Content-Type: {response.headers['content-type']}\r\n\r\n".encode()
    message = message_from_bytes(head + bytes(response.body), policy=policy.HTTP)
    parts = list(message.iter_parts())
    assert [part.get_filename() for part in parts] == [LIST.name, LABEL.name, "findings.json"]
    assert [part.get_content_type() for part in parts] == [
        "application/pdf",
        "application/pdf",
        "application/json",
    ]
    assert f"\r\n\r\n{LIST.pdf.decode()}\r\n--".encode() in bytes(response.body)
