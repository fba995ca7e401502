"""Secrets that are made here: shown once, kept as their SHA-256."""

from __future__ import annotations

import hashlib
import secrets

_BYTES = 32
_TOKEN = "underlid_"  # noqa: S105 - what every token begins with, so that a search finds them

# No letter that can be taken for another: Crockford's base 32.
_SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_MISREAD = str.maketrans("OIL", "011", " -")
_GROUPS, _GROUP_LENGTH = 3, 4


def make_session_secret() -> str:
    """Make the secret of a session: 256 random bits."""
    return secrets.token_urlsafe(_BYTES)


def make_token_secret() -> str:
    """Make what a program signs in with: 256 random bits behind a prefix."""
    return _TOKEN + secrets.token_urlsafe(_BYTES)


def make_code() -> str:
    """Make a code to be typed or scanned within minutes: 60 random bits, as `7KMT-F4RQ-9XWN`."""
    groups = ("".join(secrets.choice(_SIGNS) for _ in range(_GROUP_LENGTH)) for _ in range(_GROUPS))
    return "-".join(groups)


def read_code(typed: str) -> str:
    """Read a code as people type it: any case, with or without hyphens, O for 0, I and L for 1."""
    return typed.upper().translate(_MISREAD)


def hash_secret(secret: str) -> str:
    """Give the SHA-256 under which a secret is kept."""
    return hashlib.sha256(secret.encode("utf-8", "surrogatepass")).hexdigest()
