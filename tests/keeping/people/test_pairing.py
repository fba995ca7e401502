from __future__ import annotations

from datetime import timedelta

import pytest

from service.errors import PairingError, SignInError
from service.keeping.people.pairing import HOLDS, begin_pairing, finish_pairing
from service.keeping.people.signing_in import find_signed_in
from service.store.handles import Connection
from service.store.history import begin_change
from service.store.people.users import load_user, save_disabled
from tests.keeping.people.made import ADA, BEN, add_manager, add_somebody
from tests.store.made import MOMENT, STAMP

SECOND = timedelta(seconds=1)


@pytest.fixture
def connection(connection: Connection) -> Connection:
    """Give a store with a manager and somebody."""
    add_manager(connection)
    add_somebody(connection)
    return connection


def test_a_code_signs_one_device_in(connection: Connection) -> None:
    """As the user who made it, however it is typed, and only once."""
    pairing = begin_pairing(connection, BEN, now=MOMENT)
    typed = pairing.code.lower().replace("-", " ")
    signed = finish_pairing(connection, typed, "Telephone", now=MOMENT + HOLDS - SECOND)
    found = find_signed_in(connection, signed.secret, now=MOMENT)
    assert found is not None
    assert found.name == BEN
    with pytest.raises(PairingError):
        finish_pairing(connection, pairing.code, "Telephone", now=MOMENT)


def test_a_code_is_soon_too_old(connection: Connection) -> None:
    """After five minutes, or when another is made; a code nobody made was never any."""
    pairing = begin_pairing(connection, BEN, now=MOMENT)
    assert pairing.ends_at == MOMENT + timedelta(minutes=5)
    with pytest.raises(PairingError):
        finish_pairing(connection, pairing.code, "", now=pairing.ends_at)
    first = begin_pairing(connection, BEN, now=MOMENT)
    other = begin_pairing(connection, ADA, now=MOMENT)
    begin_pairing(connection, BEN, now=MOMENT)
    for code in (first.code, "0000-0000-0000", ""):
        with pytest.raises(PairingError):
            finish_pairing(connection, code, "", now=MOMENT)
    assert finish_pairing(connection, other.code, "", now=MOMENT).user.name == ADA


def test_a_locked_user_cannot_pair(connection: Connection) -> None:
    """A code that outlived its user's rights signs nobody in."""
    pairing = begin_pairing(connection, BEN, now=MOMENT)
    ben = load_user(connection, BEN)
    save_disabled(connection, begin_change(connection, STAMP), ben, disabled=True)
    with pytest.raises(SignInError):
        finish_pairing(connection, pairing.code, "", now=MOMENT)
