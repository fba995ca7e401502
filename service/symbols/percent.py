"""Percent-encoding of addresses by RFC 3986."""

from __future__ import annotations

import re
from string import ascii_letters, digits

UNRESERVED = frozenset(ascii_letters + digits + "-._~")
"""The signs that mean themselves everywhere in an address (RFC 3986, section 2.3)."""

_ENCODED = re.compile(r"(?:%[0-9A-Fa-f]{2})+")


def percent_encode(text: str) -> str:
    """Encode everything but the unreserved signs, as UTF-8 with capital hexadecimal digits.

    The slash is encoded too, so that a number which holds one stays one segment of the path.
    """
    return "".join(sign if sign in UNRESERVED else _encode_sign(sign) for sign in text)


def percent_decode(text: str) -> str:
    """Decode what was encoded; bytes that are no UTF-8 become replacement characters.

    What only looks encoded stays as it is, as in "50 % & more".
    """
    return _ENCODED.sub(lambda found: _decode_bytes(found[0]), text)


def _decode_bytes(encoded: str) -> str:
    return bytes.fromhex(encoded.replace("%", "")).decode("utf-8", errors="replace")


def _encode_sign(sign: str) -> str:
    return "".join(f"%{byte:02X}" for byte in sign.encode("utf-8"))
