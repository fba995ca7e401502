"""Pairing: a code made on one device signs in another as the same user, once, for five minutes."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta

from service.errors import PairingError
from service.keeping.people.secret import hash_secret, make_code, read_code
from service.keeping.people.signing_in import SignedIn, begin_session
from service.store.canonical import check_text
from service.store.handles import Connection
from service.store.people.pairings import save_pairing, take_pairing
from service.store.people.users import find_user_by_id, load_user

HOLDS = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Pairing:
    """A code that has just been made."""

    code: str = field(repr=False)
    ends_at: datetime


def begin_pairing(connection: Connection, user_name: str, *, now: datetime) -> Pairing:
    """Make a code that signs one device in as a user; a code from before holds no longer.

    Raises:
        NotFoundError: When there is no such user.
    """
    user = load_user(connection, user_name)
    pairing = Pairing(make_code(), now + HOLDS)
    sha256 = hash_secret(read_code(pairing.code))
    save_pairing(connection, sha256, user.user_id, ends_at=pairing.ends_at)
    return pairing


def finish_pairing(connection: Connection, code: str, device: str, *, now: datetime) -> SignedIn:
    """Use a code up and begin the session of the device that sends it.

    Raises:
        PairingError: When there is no such code, or no longer.
        SignInError: When its user was disabled meanwhile.
        UnstorableTextError: When the device calls itself what nobody can write down.
    """
    check_text(device)
    user_id = take_pairing(connection, hash_secret(read_code(code)), now=now)
    user = None if user_id is None else find_user_by_id(connection, user_id)
    if user is None:
        raise PairingError
    return begin_session(connection, user, device, now=now)
