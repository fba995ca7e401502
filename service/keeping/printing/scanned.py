"""What was scanned or typed: the address that the symbol of a card holds, or a bare number."""

from __future__ import annotations

from urllib.parse import parse_qs, unquote, urlsplit

from service.keeping.printing.attach import ScannedCard
from service.records.record import Museum
from service.symbols.address import AddressPattern

_DIGITS = 10


def read_card(text: str, museum: Museum) -> ScannedCard | None:
    """Read the symbol of a dated card: the museum's address with number, r and k; else None.

    An address of another pattern, of before the museum changed it, has the number at its end.
    """
    try:
        query = parse_qs(urlsplit(text).query)
    except ValueError:
        return None
    revision, letters = query.get("r", [""])[0], query.get("k", [""])[0]
    if not (revision.isascii() and revision.isdigit() and len(revision) < _DIGITS and letters):
        return None
    return ScannedCard(read_number(text, museum), int(revision), letters)


def read_number(text: str, museum: Museum) -> str:
    """Read the number of a container from its address; what is no address is the number itself."""
    text = text.strip()
    if museum.container_address:
        pattern = AddressPattern(museum.container_address, upper_case=museum.upper_case_addresses)
        number = pattern.read(text)
        if number is not None:
            return number
    if "://" not in text:
        return text
    try:
        return unquote(urlsplit(text).path.rsplit("/", 1)[-1])
    except ValueError:
        return text
