"""Sends one PDF to a printer: Internet Printing Protocol (RFC 8010 and 8011).

Only to the address that was typed for the printer, which may not lead on to another.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Mapping, Sequence
from contextlib import asynccontextmanager
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlsplit

import aiohttp
from pyipp import IPP
from pyipp.enums import IppOperation, IppTag
from pyipp.exceptions import IPPError
from pyipp.tags import ATTRIBUTE_TAG_MAP

from service.errors import NotSentError
from service.geometry import Size
from service.keeping.sending.refusals import (
    BROKEN_OFF,
    NO_JOBS,
    NO_PDF,
    NO_PRINTER,
    STATUSES,
    word_fault,
)
from service.sentence import Sentence
from service.sheets.printers.printer import Printer
from service.sheets.stocks import A4, A5, A6, LETTER

PDF = "application/pdf"
UNSCALED, ONE_SIDED = "none", "one-sided"
ANSWER_SECONDS = 15
WHOLE_SECONDS = 180.0
"""For one file, its sending included: common practice, no source."""
_PORT = 631
"""IANA's for ipp (RFC 8010, section 4.1)."""
_PATH = "/ipp/print"
_MEDIA = (
    (A4, "iso_a4_210x297mm"),
    (A5, "iso_a5_148x210mm"),
    (A6, "iso_a6_105x148mm"),
    (LETTER, "na_letter_8.5x11in"),
)
"""Names of paper sizes (PWG 5101.1, Media Standardized Names; from memory)."""
_KEYWORDS = ("media", "print-scaling")
"""Keywords (RFC 8011, section 5.2.11; PWG 5100.13) that pyipp sends as names, or leaves out."""
_ASKED = (
    *("document-format-supported", "media-supported", "print-scaling-supported"),
    *("sides-supported", "printer-is-accepting-jobs", "printer-state-reasons"),
)


@dataclass(frozen=True, slots=True)
class Document:
    """A PDF to send: its name, bytes, the size of its paper where that is known, and who sends."""

    name: str
    data: bytes
    paper: Size | None
    sender: str


@dataclass(frozen=True, slots=True)
class SentFile:
    """A file that a printer took: the number it gave, and what it left open."""

    file: str
    job_id: int
    notes: tuple[str, ...] = ()


def send_document(
    printer: Printer, document: Document, *, seconds: float = WHOLE_SECONDS
) -> SentFile:
    """Send one PDF unscaled and one-sided, and give the number of the job.

    Raises:
        NotSentError: When the printer has no address, cannot be reached, or refuses.
    """
    if not printer.address:
        raise NotSentError(printer.name, reason="no address is kept for it")
    try:
        return asyncio.run(asyncio.wait_for(_send(printer, document), seconds))
    except TimeoutError as error:
        reason = Sentence("it did not answer within {seconds:.0f} seconds", seconds=seconds)
        raise NotSentError(printer.name, reason=reason) from error
    except IPPError as error:
        raise NotSentError(printer.name, reason=word_fault(error)) from error
    except (aiohttp.ClientError, OSError) as error:
        raise NotSentError(printer.name, reason=BROKEN_OFF) from error
    except (ValueError, LookupError, TypeError) as error:
        # pyipp reads pages of other services as text, and trusts the shape of what it gets.
        raise NotSentError(printer.name, reason=NO_PRINTER) from error


def name_paper(paper: Size) -> str:
    """Name a size of paper as printers do; one that is not listed by its measures."""
    for size, name in _MEDIA:
        if size.holds(paper) and paper.holds(size):
            return name
    measures = f"{paper.width_mm:g}x{paper.height_mm:g}mm"
    return f"custom_{measures}_{measures}"


async def _send(printer: Printer, document: Document) -> SentFile:
    for name in _KEYWORDS:
        ATTRIBUTE_TAG_MAP[name] = IppTag.KEYWORD
    parts = urlsplit(printer.address)
    async with _open_session() as session:
        ipp = IPP(
            parts.hostname or "",
            base_path=parts.path or _PATH,
            port=parts.port or _PORT,
            request_timeout=ANSWER_SECONDS,
            session=session,
        )
        known = await _ask(ipp)
        job, notes = _plan(printer, document, known)
        # The whole file is sent before the answer comes.
        ipp.request_timeout = int(WHOLE_SECONDS)
        said = await ipp.execute(
            IppOperation.PRINT_JOB,
            {
                "operation-attributes-tag": {
                    "requesting-user-name": document.sender,
                    "job-name": document.name,
                    "document-format": PDF,
                    "ipp-attribute-fidelity": True,
                },
                "job-attributes-tag": job,
                "data": document.data,
            },
        )
    return SentFile(document.name, _job_id(said), notes)


@asynccontextmanager
async def _open_session() -> AsyncIterator[aiohttp.ClientSession]:
    """Open a session that follows nowhere, and closes every answer: pyipp leaves some open."""
    answers: list[aiohttp.ClientResponse] = []
    tracing = aiohttp.TraceConfig()

    async def keep(_session: object, _context: object, end: aiohttp.TraceRequestEndParams) -> None:
        answers.append(end.response)

    async def refuse(
        _session: object, _context: object, led: aiohttp.TraceRequestRedirectParams
    ) -> None:
        answers.append(led.response)
        raise aiohttp.ClientError

    tracing.on_request_end.append(keep)
    tracing.on_request_redirect.append(refuse)
    async with aiohttp.ClientSession(trace_configs=[tracing]) as session:
        try:
            yield session
        finally:
            for answer in answers:
                answer.close()


async def _ask(ipp: IPP) -> Mapping[str, object]:
    said = await ipp.execute(
        IppOperation.GET_PRINTER_ATTRIBUTES,
        {"operation-attributes-tag": {"requested-attributes": list(_ASKED)}},
    )
    return next(iter(said["printers"]), {})


def _plan(
    printer: Printer, document: Document, known: Mapping[str, object]
) -> tuple[dict[str, object], tuple[str, ...]]:
    """Choose the attributes of the job among what the printer can do, and note what it cannot.

    Raises:
        NotSentError: When it takes no jobs, no PDF, or has no such paper.
    """
    if known.get("printer-is-accepting-jobs") is False:
        raise NotSentError(printer.name, reason=STATUSES[NO_JOBS])
    if PDF not in _list(known, "document-format-supported", PDF):
        raise NotSentError(printer.name, reason=STATUSES[NO_PDF])
    job: dict[str, object] = {"copies": 1}
    notes = []
    if UNSCALED in _list(known, "print-scaling-supported", ""):
        job["print-scaling"] = UNSCALED
    else:
        notes.append("It does not say that it prints unscaled: measure the first sheet.")
    if ONE_SIDED in _list(known, "sides-supported", ONE_SIDED):
        job["sides"] = ONE_SIDED
    if document.paper is not None:
        job["media"] = _media(printer, name_paper(document.paper), known)
    return job, tuple(notes)


def _media(printer: Printer, wanted: str, known: Mapping[str, object]) -> str:
    offered = _list(known, "media-supported", wanted)
    takes_any = any(name.startswith("custom_min") for name in offered)
    if wanted in offered or (wanted.startswith("custom_") and takes_any):
        return wanted
    raise NotSentError(
        printer.name, reason=Sentence("it has no paper of the size {wanted}", wanted=wanted)
    )


def _list(known: Mapping[str, object], name: str, otherwise: str) -> Sequence[str]:
    """List the texts of an attribute; a printer that says nothing of it is taken at best."""
    value = known.get(name, otherwise)
    return [str(each) for each in value] if isinstance(value, list) else [str(value)]


def _job_id(said: Mapping[str, Any]) -> int:
    jobs = said["jobs"]
    return int(jobs[0].get("job-id", 0)) if jobs else 0
