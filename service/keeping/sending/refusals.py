"""What a printer that did not take a file said, in words for whoever stands at the desk."""

from __future__ import annotations

from pyipp.exceptions import (
    IPPConnectionError,
    IPPConnectionUpgradeRequired,
    IPPError,
    IPPParseError,
    IPPResponseError,
    IPPVersionNotSupportedError,
)

NO_JOBS, NO_PDF = 0x0506, 0x040A
NO_PRINTER = "what answers at its address is no printer"
BROKEN_OFF = "the connection to it broke off"
STATUSES = {
    0x0401: "it refuses this machine",
    0x0402: "it asks for a password, which cannot be given here",
    0x0403: "it does not let this machine print",
    0x0404: "it cannot do that now",
    0x0406: "it knows no such queue; look at the path of its address",
    0x0408: "the file is too large for it",
    0x040A: "it does not print PDF",
    0x040B: "it cannot print as asked: unscaled, one-sided and on this paper",
    0x0500: "it reports a fault of its own",
    0x0501: "it does not know how to print files sent so",
    0x0502: "it is out of service for the moment",
    0x0504: "it reports a fault: paper, toner or a jam",
    0x0505: "it reports a fault that may pass; try again",
    0x0506: "it takes no jobs at the moment",
    0x0507: "it is busy; try again",
}
"""What a status says to whoever stands at the desk (RFC 8011, appendix B)."""


_FAULTS: tuple[tuple[type[IPPError], str], ...] = (
    (IPPConnectionUpgradeRequired, "it wants an encrypted connection, which is not supported"),
    (IPPConnectionError, "it cannot be reached at its address"),
    (IPPParseError, NO_PRINTER),
    (IPPVersionNotSupportedError, "it speaks another version of the protocol"),
)


def word_fault(error: IPPError) -> str:
    """Say what went wrong."""
    status = error.args[1].get("status-code") if len(error.args) > 1 else None
    if isinstance(error, IPPResponseError):
        return f"{NO_PRINTER} (HTTP {status})"
    for kind, words in _FAULTS:
        if isinstance(error, kind):
            return words
    return STATUSES.get(status or 0, f"it refuses (status {status or 0:#06x})")
