"""Passwords: what may be one, and how it is kept.

At least 12 characters of anything at all and at most 200, no rule of composition and no end after
some months: NIST SP 800-63B (2017), 5.1.1.2 asks for 8 or more, for 64 and more to be taken, for
one form of Unicode, and forbids such rules.
"""

from __future__ import annotations

import unicodedata

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from service.errors import PasswordError

LEAST_CHARACTERS = 12
MOST_CHARACTERS = 200

# Argon2id with 19 MiB, two passes, one lane: OWASP, "Password Storage Cheat Sheet"; from memory.
# Eight requests with a body at once are the most there are, so that 152 MiB are the most it takes.
_HASHER = PasswordHasher(time_cost=2, memory_cost=19 * 1024, parallelism=1)

NOBODY = (
    "$argon2id$v=19$m=19456,t=2,p=1$AAAAAAAAAAAAAAAAAAAAAA"
    "$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"
)
"""The hash of no password: looked at for a name nobody has, so that this takes as long."""


def hash_password(password: str) -> str:
    """Hash a new password with a salt of its own.

    Raises:
        PasswordError: When it is too short or too long.
    """
    if not LEAST_CHARACTERS <= len(_normal(password)) <= MOST_CHARACTERS:
        raise PasswordError(least=LEAST_CHARACTERS, most=MOST_CHARACTERS)
    return _HASHER.hash(_written(password))


def fits_password(kept: str | None, password: str) -> bool:
    """Tell whether a password belongs to a hash; None, for nobody, takes as long and never does."""
    if len(password) > MOST_CHARACTERS:
        password = ""
    try:
        _HASHER.verify(kept or NOBODY, _written(password))
    except (VerificationError, InvalidHashError):
        return False
    return kept is not None


def is_outdated(kept: str) -> bool:
    """Tell whether a hash was made at another cost than today's."""
    return _HASHER.check_needs_rehash(kept)


def _normal(password: str) -> str:
    return unicodedata.normalize("NFKC", password)


def _written(password: str) -> bytes:
    return _normal(password).encode("utf-8", "surrogatepass")
