from __future__ import annotations

import pytest

from service.errors import (
    LastManagerError,
    NotFoundError,
    PasswordError,
    SignInError,
    UserNameError,
    UserTakenError,
)
from service.keeping.people.pairing import begin_pairing
from service.keeping.people.passwords import fits_password
from service.keeping.people.signing_in import begin_session
from service.keeping.people.users import (
    NewUser,
    add_user,
    change_own_password,
    change_password,
    change_role,
    disable_user,
    enable_user,
)
from service.store.handles import Connection
from service.store.people.pairings import take_pairing
from service.store.people.role import Role
from service.store.people.sessions import load_sessions
from service.store.people.users import User, load_users
from tests.keeping.people.made import (
    ADA,
    BEN,
    OTHER_PASSWORD,
    PASSWORD,
    add_manager,
    add_somebody,
)
from tests.store.made import MOMENT, STAMP, changes


def test_the_first_user_is_a_manager(connection: Connection) -> None:
    """From then on everybody signs in, so that somebody must be able to let others in."""
    with pytest.raises(LastManagerError, match=BEN):
        add_somebody(connection)
    assert load_users(connection) == ()
    ada = add_manager(connection, "  Ada   Quill ")
    assert (ada.name, ada.role, ada.is_disabled) == (ADA, Role.MANAGE, False)
    assert fits_password(ada.password_hash, PASSWORD)
    assert add_somebody(connection).role is Role.VIEW


@pytest.mark.parametrize("name", ["", " ", "a\x00b", "a\u202eb", "x" * 101], ids=ascii)
def test_odd_names_are_refused(connection: Connection, name: str) -> None:
    """What stands in the history can be seen and read aloud."""
    with pytest.raises(UserNameError):
        add_manager(connection, name)


def test_a_user_is_added_once(connection: Connection) -> None:
    """Neither a name that is taken nor a short password adds anybody."""
    add_manager(connection)
    with pytest.raises(UserTakenError):
        add_manager(connection, "ADA QUILL")
    with pytest.raises(PasswordError):
        add_user(connection, NewUser(BEN, Role.VIEW, "short"), stamp=STAMP)
    assert len(load_users(connection)) == 1


def test_the_last_manager_stays(connection: Connection) -> None:
    """Neither another role nor a lock leaves the store without one; a locked one does not count."""
    add_manager(connection)
    add_manager(connection, BEN)
    disable_user(connection, BEN, stamp=STAMP)
    for role in (Role.VIEW, Role.PRINT):
        with pytest.raises(LastManagerError, match=ADA):
            change_role(connection, "ada quill", role, stamp=STAMP)
    with pytest.raises(LastManagerError, match=ADA):
        disable_user(connection, ADA, stamp=STAMP)
    enable_user(connection, BEN, stamp=STAMP)
    assert change_role(connection, ADA, Role.VIEW, stamp=STAMP).role is Role.VIEW


def test_what_is_so_already_is_no_change(connection: Connection) -> None:
    """The same role, a lock on the locked and none on the free write no history."""
    add_manager(connection)
    ben = add_somebody(connection)
    disable_user(connection, BEN, stamp=STAMP)
    before = changes(connection)
    change_role(connection, BEN, ben.role, stamp=STAMP)
    disable_user(connection, BEN, stamp=STAMP)
    enable_user(connection, ADA, stamp=STAMP)
    assert changes(connection) == before
    with pytest.raises(NotFoundError):
        change_role(connection, "Nobody", Role.VIEW, stamp=STAMP)


@pytest.mark.parametrize("act", ["password", "own password", "disable"])
def test_another_password_and_a_lock_end_everything(connection: Connection, act: str) -> None:
    """Sessions and codes that were under way sign nobody in any more; others are left alone."""
    add_manager(connection)
    ben, eve = (add_somebody(connection, name) for name in (BEN, "Eve Dunn"))
    for user in (ben, ben, eve):
        begin_session(connection, user, "", now=MOMENT)
    begin_pairing(connection, BEN, now=MOMENT)
    _do(connection, ben, act)
    assert load_sessions(connection, ben.user_id) == ()
    assert len(load_sessions(connection, eve.user_id)) == 1
    left = connection.exec_driver_sql("SELECT sha256 FROM pairings").scalars()
    assert [take_pairing(connection, sha256, now=MOMENT) for sha256 in left] == []


def test_ones_own_password_needs_the_one_there_is(connection: Connection) -> None:
    """Whoever finds a telephone lying about cannot lock its owner out."""
    add_manager(connection)
    with pytest.raises(SignInError):
        change_own_password(
            connection, ADA, current=OTHER_PASSWORD, password=OTHER_PASSWORD, stamp=STAMP
        )
    assert fits_password(load_users(connection)[0].password_hash, PASSWORD)


def _do(connection: Connection, user: User, act: str) -> None:
    if act == "disable":
        disable_user(connection, user.name, stamp=STAMP)
    elif act == "password":
        change_password(connection, user.name, OTHER_PASSWORD, stamp=STAMP)
    else:
        change_own_password(
            connection, user.name, current=PASSWORD, password=OTHER_PASSWORD, stamp=STAMP
        )
