from __future__ import annotations

import pytest

from service.errors import PasswordError
from service.keeping.people.passwords import (
    MOST_CHARACTERS,
    NOBODY,
    fits_password,
    hash_password,
    is_outdated,
)
from tests.keeping.people.made import OTHER_PASSWORD, PASSWORD


@pytest.mark.parametrize(
    "password", ["twelve signs", " " * 12, "ŵ" * MOST_CHARACTERS, "\ud800" * 12]
)
def test_anything_of_the_right_length_is_a_password(password: str) -> None:
    """No character is asked for and none refused; the hash holds neither it nor a fixed salt."""
    kept = hash_password(password)
    assert fits_password(kept, password)
    assert not fits_password(kept, OTHER_PASSWORD)
    assert password not in kept
    assert hash_password(password) != kept


@pytest.mark.parametrize("password", ["", "eleven sign", "x" * (MOST_CHARACTERS + 1)])
def test_other_lengths_are_refused(password: str) -> None:
    """Too short or too long is told with both limits, and fits nothing."""
    with pytest.raises(PasswordError, match="12 to 200"):
        hash_password(password)
    assert not fits_password(hash_password(PASSWORD), password)


def test_one_form_of_unicode() -> None:
    """A letter typed as one sign or as two is the same password."""
    assert fits_password(hash_password("caf\u00e9 in harbour"), "cafe\u0301 in harbour")


def test_nobody_has_a_password() -> None:
    """For a name nobody has a hash of today's cost is looked at, and nothing fits it."""
    assert not is_outdated(NOBODY)
    assert not fits_password(None, PASSWORD)
    assert not fits_password("no hash at all", PASSWORD)


def test_an_older_cost_is_noticed() -> None:
    """A hash that was cheaper to try is to be made anew."""
    assert is_outdated(NOBODY.replace("t=2", "t=1"))
