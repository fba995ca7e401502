"""Where a card's QR symbol leads: the museum's address pattern, filled with a number.

What is printed cannot be called back, so a pattern is checked when it is built: only an https
address of a named host, with the number in exactly one place.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from service.errors import AddressError
from service.symbols.percent import percent_decode, percent_encode

PLACEHOLDERS = ("object_number", "container_number")
NO_QUERY: Mapping[str, str] = MappingProxyType({})

_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:")
_HTTPS = "https://"
# The authority ends at the first of these (RFC 3986, section 3.2).
_END_OF_AUTHORITY = re.compile(r"[/?#\\]")
_PLACEHOLDER = re.compile(r"\{([a-z_]+)\}")
# What may follow the host as it stands (RFC 3986, sections 3.3 and 3.4).
_REST = re.compile(r"(?:[A-Za-z0-9._~!$&'()*+,;=:@/?-]|%[0-9A-Fa-f]{2})*")
# One label of a host name (RFC 1123, section 2.1).
_LABEL = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?")
# Browsers read a host whose last label is a number as an IPv4 address (WHATWG URL standard).
_NUMBER_LABEL = re.compile(r"[0-9]+|0[xX][0-9A-Fa-f]*")
_HIGHEST_PORT = 65_535


@dataclass(frozen=True, slots=True)
class AddressPattern:
    """An https address with one placeholder, such as `https://host.example/o/{object_number}`.

    Attributes:
        text: The pattern as the museum wrote it.
        upper_case: Print the filled address in capitals, which makes the symbol smaller. Paths are
            case-sensitive (RFC 3986, section 6.2.2.1): only for a server known to accept capitals.

    Raises:
        AddressError: When built from a pattern that could not give a lasting https address.
    """

    text: str
    upper_case: bool = False

    def __post_init__(self) -> None:
        """Refuse what should never be printed.

        Raises:
            AddressError: With what is wrong in plain words.
        """
        reason = _fault_of(self.text)
        if reason:
            raise AddressError(self.text, reason=reason)

    @property
    def placeholder(self) -> str:
        """Which number fills the pattern: `object_number` or `container_number`."""
        return next(name for name in PLACEHOLDERS if f"{{{name}}}" in self.text)

    def fill(self, number: str, *, query: Mapping[str, str] = NO_QUERY) -> str:
        """Give the address for `number`, with `query` behind it in the order it comes.

        Capitals are for the pattern and number alone; the query keeps its case.

        Raises:
            AddressError: When `number` is empty or only dots: browsers take dots for a way up.
        """
        if number in {"", ".", ".."}:
            raise AddressError(self.text, reason=f"the number {number!r} would lead elsewhere")
        address = _PLACEHOLDER.sub(lambda _: percent_encode(number), self.text)
        if self.upper_case:
            address = address.upper()
        return address + _query_behind(address, query)

    def read(self, address: str) -> str | None:
        """Give the number in an address that `fill` made, None where the pattern does not fit.

        Of a number that was printed in capitals nobody knows the small letters any more.
        """
        before, after = map(re.escape, _PLACEHOLDER.sub("\0", self.text).split("\0"))
        found = re.fullmatch(
            f"{before}([^/?#&]+){after}(?:[?&].*)?",
            address,
            re.IGNORECASE if self.upper_case else re.NOFLAG,
        )
        return percent_decode(found[1]) if found else None


def payload_for_number(
    number: str, *, pattern: AddressPattern | None, query: Mapping[str, str] = NO_QUERY
) -> str:
    """Give the text to encode: the filled address, or the bare number where no pattern is set."""
    return number if pattern is None else pattern.fill(number, query=query)


def _query_behind(address: str, query: Mapping[str, str]) -> str:
    if not query:
        return ""
    pairs = (f"{percent_encode(name)}={percent_encode(value)}" for name, value in query.items())
    return ("&" if "?" in address else "?") + "&".join(pairs)


def _fault_of(pattern: str) -> str:
    """Say what is wrong with a pattern, "" when nothing is."""
    # Hidden signs come first: nothing else can be judged while they are there.
    if not (pattern.isascii() and pattern.isprintable()) or " " in pattern:
        return "it holds a blank, an unseen sign or a sign outside plain ASCII"
    if not pattern.lower().startswith(_HTTPS):
        return _scheme_fault(pattern)
    authority, rest = _split_authority(pattern[len(_HTTPS) :])
    return _authority_fault(authority) or _placeholder_fault(rest) or _rest_fault(rest)


def _scheme_fault(pattern: str) -> str:
    scheme = _SCHEME.match(pattern)
    if scheme is None or scheme.group().lower() == "https:":
        return "it does not begin with https://"
    return f"only https is allowed, not {scheme.group()[:-1]}"


def _split_authority(text: str) -> tuple[str, str]:
    end = _END_OF_AUTHORITY.search(text)
    cut = len(text) if end is None else end.start()
    return text[:cut], text[cut:]


def _authority_fault(authority: str) -> str:
    if "@" in authority:
        return "it holds a user name or password"
    if authority.startswith("["):
        return "its host is a bare IP address"
    host, colon, port = authority.partition(":")
    if colon and not _is_port(port):
        return f"{port!r} is no port"
    return _host_fault(host)


def _is_port(port: str) -> bool:
    # Five digits at most: a long one would be read for nothing.
    return re.fullmatch(r"[0-9]{1,5}", port) is not None and 0 < int(port) <= _HIGHEST_PORT


def _host_fault(host: str) -> str:
    labels = host.lower().split(".")
    faults = (
        (not host, "it names no host"),
        (_NUMBER_LABEL.fullmatch(labels[-1]), "its host is a bare IP address"),
        (labels[-1] == "localhost", "localhost is another machine for everybody who scans it"),
        (not all(map(_LABEL.fullmatch, labels)), f"{host!r} is no host name"),
        (
            any(label.startswith("xn--") for label in labels),
            "its host stands for signs outside plain ASCII, which can pass for another host",
        ),
    )
    return next((reason for is_wrong, reason in faults if is_wrong), "")


def _placeholder_fault(rest: str) -> str:
    wanted = " or ".join(f"{{{name}}}" for name in PLACEHOLDERS)
    names = _PLACEHOLDER.findall(rest)
    if any(name not in PLACEHOLDERS for name in names):
        return f"it may hold only {wanted} in curly brackets"
    if len(names) != 1:
        return f"it must hold {wanted} exactly once"
    return ""


def _rest_fault(rest: str) -> str:
    if "#" in rest:
        return "what follows # never reaches the server"
    if not _REST.fullmatch(_PLACEHOLDER.sub("", rest)):
        return "it holds a sign that an address may not hold as it stands"
    return ""
