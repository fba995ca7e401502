"""What came of a print, in the media type that was asked for."""

from __future__ import annotations

import io
import json
import secrets
import zipfile
from collections.abc import Callable
from urllib.parse import quote

from fastapi import Response
from pydantic import BaseModel

from service.sentence import Sentence
from service.web.replies.problems import FindingView, show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.work import Done, DoneFile

CHECK_PATH = "/api/check"


class Findings(BaseModel):
    """Everything noticed in records, packings, photos and the fit."""

    findings: list[FindingView]


class FileView(BaseModel):
    """One file a print makes: all cards of one kind on one stock."""

    name: str
    kind: str
    stock: str
    cards: int
    sheets: int


class Report(Findings):
    """What a print makes and everything noticed, without the ink."""

    files: list[FileView]


def reply(done: Done, media_type: str, *, page: int) -> Response:
    """Put what was made into one reply; its header counts the findings.

    Raises:
        RefusedError: When one file is wanted and several were made, or it has no such page.
    """
    response = _REPLIES[media_type](done, page)
    response.headers["Underlid-Findings"] = str(len(done.findings))
    response.headers["Link"] = f'<{CHECK_PATH}>; rel="describedby"; type="application/json"'
    response.headers["Vary"] = "Accept"
    return response


def _as_pdf(done: Done, _page: int) -> Response:
    file = _only_file(done)
    disposition = f"inline; filename*=UTF-8''{quote(file.name)}"
    return Response(
        file.pdf, media_type="application/pdf", headers={"Content-Disposition": disposition}
    )


def _as_png(done: Done, page: int) -> Response:
    """Give the sheet that the press has drawn.

    Raises:
        RefusedError: When the file has no such sheet.
    """
    file = _only_file(done)
    if not done.picture:
        raise RefusedError(
            Refusal.NO_SUCH_PAGE,
            Sentence(
                "Sheet {page} is asked for; there are {sheets}.", page=page, sheets=file.sheets
            ),
        )
    return Response(done.picture, media_type="image/png")


def _as_zip(done: Done, _page: int) -> Response:
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as archive:
        for file in done.files:
            archive.writestr(zipfile.ZipInfo(file.name), file.pdf)
        archive.writestr(zipfile.ZipInfo("findings.json"), _findings_json(done))
    return Response(
        data.getvalue(),
        media_type="application/zip",
        headers={"Content-Disposition": 'attachment; filename="cards.zip"'},
    )


def _as_multipart(done: Done, _page: int) -> Response:
    """Every PDF, then the findings (RFC 2046, section 5.1)."""
    boundary = secrets.token_hex(16)
    parts = [
        *(_part(boundary, "application/pdf", file.name, file.pdf) for file in done.files),
        _part(boundary, "application/json", "findings.json", _findings_json(done)),
        f"--{boundary}--\r\n".encode("ascii"),
    ]
    return Response(b"".join(parts), media_type=f"multipart/mixed; boundary={boundary}")


def _as_json(done: Done, _page: int) -> Response:
    files = [
        FileView(
            name=file.name,
            kind=file.kind,
            stock=file.stock,
            cards=file.cards,
            sheets=file.sheets,
        )
        for file in done.files
    ]
    report = Report(files=files, findings=show_findings(done.findings))
    return Response(report.model_dump_json(), media_type="application/json")


_REPLIES: dict[str, Callable[[Done, int], Response]] = {
    "application/pdf": _as_pdf,
    "application/zip": _as_zip,
    "image/png": _as_png,
    "multipart/mixed": _as_multipart,
    "application/json": _as_json,
}
OFFERED = tuple(_REPLIES)


def _only_file(done: Done) -> DoneFile:
    """Give the one file.

    Raises:
        RefusedError: When several were made.
    """
    if len(done.files) > 1:
        made = "; ".join(f"{file.kind} on {file.stock}" for file in done.files)
        raise RefusedError(
            Refusal.SEVERAL_FILES,
            Sentence("{files} files would result: {made}.", files=len(done.files), made=made),
        )
    return done.files[0]


def _part(boundary: str, media_type: str, name: str, body: bytes) -> bytes:
    head = (
        f"--{boundary}\r\nContent-Type: {media_type}\r\n"
        f"Content-Disposition: attachment; filename*=UTF-8''{quote(name)}\r\n\r\n"
    )
    return head.encode("ascii") + body + b"\r\n"


def _findings_json(done: Done) -> bytes:
    findings = [view.model_dump() for view in show_findings(done.findings)]
    return json.dumps({"findings": findings}, ensure_ascii=False, indent=2).encode()
