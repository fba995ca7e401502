"""A small printer on loopback, written from RFC 8010 and RFC 8011, to send to in tests."""

from __future__ import annotations

import struct
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

# Delimiter tags (RFC 8010, section 3.5.1) and value tags (3.5.2).
OPERATION, JOB, END, PRINTER = 0x01, 0x02, 0x03, 0x04
INTEGER, BOOLEAN, ENUM = 0x21, 0x22, 0x23
KEYWORD, CHARSET, LANGUAGE, MIME_TYPE = 0x44, 0x47, 0x48, 0x49
# Operations (RFC 8011, section 5.4.15).
PRINT_JOB, GET_PRINTER_ATTRIBUTES = 0x0002, 0x000B
OK = 0x0000

ABILITIES: Mapping[str, tuple[int, tuple[object, ...]]] = {
    "document-format-supported": (MIME_TYPE, ("application/octet-stream", "application/pdf")),
    "media-supported": (KEYWORD, ("iso_a4_210x297mm", "custom_min_50x50mm_50x50mm")),
    "print-scaling-supported": (KEYWORD, ("auto", "none")),
    "sides-supported": (KEYWORD, ("one-sided", "two-sided-long-edge")),
    "printer-is-accepting-jobs": (BOOLEAN, (True,)),
}


@dataclass(frozen=True, slots=True)
class Received:
    """A request as it came: operation, attributes with their value tags, and the document."""

    operation: int
    path: str
    attributes: Mapping[str, tuple[int, tuple[object, ...]]]
    data: bytes


@dataclass
class Printer:
    """What the printer can do, how it answers a job, and what it was sent."""

    abilities: Mapping[str, tuple[int, tuple[object, ...]]] = field(
        default_factory=lambda: dict(ABILITIES)
    )
    status: int = OK
    http_status: int = 200
    location: str = ""
    waits_seconds: float = 0.0
    body: bytes | None = None
    received: list[Received] = field(default_factory=list)
    address: str = ""


@contextmanager
def running_printer(printer: Printer) -> Iterator[Printer]:
    """Let a printer answer on loopback."""

    class Handler(BaseHTTPRequestHandler):
        """Answers each request as the printer is set up."""

        def do_POST(self) -> None:
            """Take a request whole, and answer it."""
            raw = self.rfile.read(int(self.headers["Content-Length"]))
            time.sleep(printer.waits_seconds)
            answer = printer.body if printer.body is not None else _answer(printer, self.path, raw)
            self.send_response(printer.http_status)
            if printer.location:
                self.send_header("Location", printer.location)
            self.send_header("Content-Type", "application/ipp")
            self.send_header("Content-Length", str(len(answer)))
            self.end_headers()
            self.wfile.write(answer)

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    printer.address = f"ipp://127.0.0.1:{server.server_port}/ipp/print"
    try:
        yield printer
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


def _answer(printer: Printer, path: str, raw: bytes) -> bytes:
    """Answer one operation (RFC 8011, sections 4.2.1 and 4.2.5)."""
    request = read_request(raw, path)
    printer.received.append(request)
    is_job = request.operation == PRINT_JOB
    status = printer.status if is_job else OK
    # Version, status, the request's own number (RFC 8010, section 3.1.1).
    head = struct.pack(">bbHI", 2, 0, status, struct.unpack_from(">I", raw, 4)[0])
    groups = bytes([OPERATION])
    groups += _write("attributes-charset", CHARSET, ("utf-8",))
    groups += _write("attributes-natural-language", LANGUAGE, ("en",))
    if is_job and status == OK:
        groups += bytes([JOB]) + _write("job-id", INTEGER, (41 + len(printer.received),))
        groups += _write("job-state", ENUM, (3,))
    if not is_job:
        groups += bytes([PRINTER])
        for name, (tag, values) in printer.abilities.items():
            groups += _write(name, tag, values)
    return head + groups + bytes([END])


def read_request(raw: bytes, path: str) -> Received:
    """Read a request: groups of attributes to the end tag, then the document (RFC 8010, 3.1)."""
    operation = struct.unpack_from(">H", raw, 2)[0]
    attributes: dict[str, tuple[int, tuple[object, ...]]] = {}
    name, at = "", 8
    while raw[at] != END:
        if raw[at] < 0x10:
            at += 1
            continue
        tag, length = raw[at], struct.unpack_from(">H", raw, at + 1)[0]
        # A further value of the same attribute has an empty name (RFC 8010, section 3.1.5).
        name = raw[at + 3 : at + 3 + length].decode() or name
        at += 3 + length
        length = struct.unpack_from(">H", raw, at)[0]
        value = _read_value(tag, raw[at + 2 : at + 2 + length])
        at += 2 + length
        before = attributes.get(name, (tag, ()))[1]
        attributes[name] = (tag, (*before, value))
    return Received(operation, path, attributes, raw[at + 1 :])


def _read_value(tag: int, raw: bytes) -> object:
    if tag in {INTEGER, ENUM}:
        return struct.unpack(">i", raw)[0]
    return bool(raw[0]) if tag == BOOLEAN else raw.decode()


def _write(name: str, tag: int, values: tuple[object, ...]) -> bytes:
    written = b""
    for at, value in enumerate(values):
        key = b"" if at else name.encode()
        raw = _write_value(tag, value)
        written += struct.pack(">BH", tag, len(key)) + key + struct.pack(">H", len(raw)) + raw
    return written


def _write_value(tag: int, value: object) -> bytes:
    if tag in {INTEGER, ENUM}:
        return struct.pack(">i", value)
    return struct.pack(">?", value) if tag == BOOLEAN else str(value).encode()
