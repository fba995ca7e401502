from __future__ import annotations

import hashlib
import re

from service.keeping.people.secret import (
    hash_secret,
    make_code,
    make_session_secret,
    make_token_secret,
    read_code,
)


def test_secrets_are_long_and_new() -> None:
    """256 bits are 43 letters of base 64; none comes twice."""
    assert len({make_session_secret() for _ in range(100)}) == 100
    assert len(make_session_secret()) == 43
    assert re.fullmatch(r"underlid_[\w-]{43}", make_token_secret())


def test_a_code_is_read_as_people_type_it() -> None:
    """Case, hyphens, spaces, and letters taken for digits make no difference."""
    code = make_code()
    assert re.fullmatch(r"(?:[0-9A-HJKMNP-TV-Z]{4}-){2}[0-9A-HJKMNP-TV-Z]{4}", code)
    assert read_code(code.lower().replace("-", " ")) == read_code(code) == code.replace("-", "")
    assert read_code("o0il-1") == "00111"


def test_a_secret_is_kept_as_its_digest() -> None:
    """SHA-256, also of what is no text at all."""
    assert hash_secret("a") == hashlib.sha256(b"a").hexdigest()
    assert len(hash_secret("\ud800")) == 64
