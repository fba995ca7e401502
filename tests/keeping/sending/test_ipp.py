from __future__ import annotations

import shutil
import socket
import subprocess
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

import pytest

from service.errors import NotSentError
from service.geometry import Size
from service.keeping.sending.ipp import Document, name_paper, send_document
from service.sheets.printers.printer import Printer as KnownPrinter
from service.sheets.stocks import A4, LETTER
from tests.keeping.sending.printer import (
    ABILITIES,
    BOOLEAN,
    GET_PRINTER_ATTRIBUTES,
    KEYWORD,
    MIME_TYPE,
    PRINT_JOB,
    Printer,
    running_printer,
)

DOCUMENT = Document("end-label, A4.pdf", b"%PDF-1.7 of the test", A4, "Ada Quill")
EVE = shutil.which("ippeveprinter", path="/usr/sbin:/usr/bin")


def _known(printer: Printer) -> KnownPrinter:
    return KnownPrinter("Label desk", address=printer.address)


def test_a_file_is_sent_unscaled_one_sided_and_on_its_paper() -> None:
    """The printer is asked what it can (RFC 8011, 4.2.5), then gets the job (4.2.1)."""
    with running_printer(Printer()) as printer:
        sent = send_document(_known(printer), DOCUMENT)
    asked, job = printer.received
    assert (asked.operation, job.operation) == (GET_PRINTER_ATTRIBUTES, PRINT_JOB)
    assert (sent.job_id, sent.notes) == (43, ())
    assert job.data == DOCUMENT.data
    assert job.path == "/ipp/print"
    said = {name: values for name, (_, values) in job.attributes.items()}
    # Charset and language come first, the address of the printer next (RFC 8011, 4.1.4 and 4.1.5).
    assert list(said)[:3] == ["attributes-charset", "attributes-natural-language", "printer-uri"]
    assert said["printer-uri"] == (printer.address,)
    assert said["document-format"] == ("application/pdf",)
    assert said["job-name"] == ("end-label, A4.pdf",)
    assert said["requesting-user-name"] == ("Ada Quill",)
    assert said["ipp-attribute-fidelity"] == (True,)
    assert said["sides"] == ("one-sided",)
    # Keywords by their tag (RFC 8011, 5.2.11; PWG 5100.13 for print-scaling, from memory).
    assert job.attributes["media"] == (KEYWORD, ("iso_a4_210x297mm",))
    assert job.attributes["print-scaling"] == (KEYWORD, ("none",))


def test_a_printer_that_may_scale_is_told_of() -> None:
    """The file is sent, and whoever prints is to measure the first sheet."""
    abilities = {
        name: each for name, each in ABILITIES.items() if name != "print-scaling-supported"
    }
    with running_printer(Printer(abilities)) as printer:
        sent = send_document(_known(printer), DOCUMENT)
    assert "print-scaling" not in printer.received[1].attributes
    assert "measure the first sheet" in sent.notes[0]


@pytest.mark.parametrize(
    ("ability", "words"),
    [
        ({"document-format-supported": (MIME_TYPE, ("image/pwg-raster",))}, "does not print PDF"),
        ({"media-supported": (KEYWORD, ("na_letter_8.5x11in",))}, "no paper of the size iso_a4"),
        ({"printer-is-accepting-jobs": (BOOLEAN, (False,))}, "takes no jobs"),
    ],
    ids=["format", "paper", "stopped"],
)
def test_what_it_cannot_do_is_not_sent(
    ability: Mapping[str, tuple[int, tuple[object, ...]]], words: str
) -> None:
    """It is told before the file goes, and nothing is printed wrongly."""
    printer = Printer({**ABILITIES, **ability})
    with running_printer(printer), pytest.raises(NotSentError, match=words):
        send_document(_known(printer), DOCUMENT)
    assert [each.operation for each in printer.received] == [GET_PRINTER_ATTRIBUTES]


@pytest.mark.parametrize(
    ("printer", "words"),
    [
        # Status codes: RFC 8011, appendix B.
        (Printer(status=0x040B), "cannot print as asked"),
        (Printer(status=0x0506), "takes no jobs"),
        (Printer(status=0x0507), "busy"),
        (Printer(status=0x0402), "password"),
        (Printer(status=0x04FF), "0x04ff"),
        (Printer(status=0x0503), "another version"),
        (Printer(http_status=404, body=b"none"), "HTTP 404"),
        (Printer(http_status=404, body=b"\xf3"), "no printer"),
        (Printer(http_status=426), "encrypted"),
        (Printer(body=b"<html>"), "no printer"),
    ],
    ids=[
        "values",
        "stopped",
        "busy",
        "password",
        "unknown",
        "version",
        "page",
        "bytes",
        "tls",
        "garbage",
    ],
)
def test_each_refusal_has_its_words(printer: Printer, words: str) -> None:
    """Whoever stands at the desk reads what to look at."""
    with running_printer(printer), pytest.raises(NotSentError, match=words):
        send_document(_known(printer), DOCUMENT)


def test_a_printer_that_leads_elsewhere_is_not_followed() -> None:
    """What was typed is one address; a file goes to no other."""
    with running_printer(Printer()) as other:
        lure = Printer(http_status=307, location=other.address.replace("ipp://", "http://"))
        with running_printer(lure), pytest.raises(NotSentError, match="cannot be reached"):
            send_document(_known(lure), DOCUMENT)
    assert other.received == []


def test_waiting_has_an_end() -> None:
    """Nobody hangs on a printer that took the call and says nothing."""
    printer = Printer(waits_seconds=1.0)
    with running_printer(printer), pytest.raises(NotSentError, match="did not answer within"):
        send_document(_known(printer), DOCUMENT, seconds=0.2)


def test_nobody_there_and_no_address_are_told() -> None:
    """A wrong figure in the address, or none at all."""
    with running_printer(Printer()) as printer:
        gone = _known(printer)
    with pytest.raises(NotSentError, match="cannot be reached"):
        send_document(gone, DOCUMENT)
    with pytest.raises(NotSentError, match="no address"):
        send_document(KnownPrinter("Label desk"), DOCUMENT)


@pytest.mark.parametrize(
    ("paper", "name"),
    [
        (A4, "iso_a4_210x297mm"),
        (LETTER, "na_letter_8.5x11in"),
        (Size(62.0, 100.0), "custom_62x100mm_62x100mm"),
        (Size(101.6, 152.4), "custom_101.6x152.4mm_101.6x152.4mm"),
    ],
)
def test_paper_has_the_name_that_printers_use(paper: Size, name: str) -> None:
    """Sizes that nobody lists go by their measures (PWG 5101.1, section 5; from memory)."""
    assert name_paper(paper) == name


@pytest.mark.slow
@pytest.mark.skipif(EVE is None, reason="the small printer of CUPS is not installed")
def test_another_hand_s_printer_takes_the_file(tmp_path: Path) -> None:
    """CUPS' own test printer, which was not written from our reading of the documents."""
    with _eve(tmp_path) as address:
        sent = send_document(KnownPrinter("Eve", address=address), DOCUMENT)
        assert sent.job_id >= 1
        deadline = time.monotonic() + 20
        while not (kept := list(tmp_path.glob("spool/*"))) and time.monotonic() < deadline:
            time.sleep(0.1)
    assert [path.read_bytes() for path in kept if path.is_file()] == [DOCUMENT.data]


@contextmanager
def _eve(folder: Path) -> Iterator[str]:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    (folder / "spool").mkdir()
    command = [
        *(str(EVE), "-k", "-d", str(folder / "spool"), "-n", "localhost", "-p", str(port)),
        *("-r", "off", "-f", "application/pdf", "Eve"),
    ]
    with (folder / "log").open("wb") as log:
        child = subprocess.Popen(command, stdout=log, stderr=log)
    try:
        deadline = time.monotonic() + 20
        while time.monotonic() < deadline:
            if child.poll() is not None:
                pytest.skip("the small printer of CUPS cannot start: it needs a running Avahi")
            with socket.socket() as probe:
                if probe.connect_ex(("127.0.0.1", port)) == 0:
                    break
            time.sleep(0.1)
        yield f"ipp://127.0.0.1:{port}/ipp/print"
    finally:
        child.terminate()
        child.wait()
