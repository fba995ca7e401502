from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from service.config import Settings
from service.errors import ConfigError
from service.keeping.people.users import NewUser, add_user
from service.keeping.sharing.addresses import Names
from service.keeping.sharing.certificate import Certificate, keep_certificate
from service.store.history import Stamp
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder, writing
from service.store.people.role import Role
from service.web.sharing import check_reach, check_users, is_shared

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
OPEN_HOST = "0.0.0.0"  # noqa: S104 - what is asked about


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Certificate:
    """Make a certificate with its key."""
    return keep_certificate(tmp_path_factory.mktemp("made"), Names(("pc",), ()), now=NOW)


def _settings(made: Certificate, host: str, wanted: str) -> Settings:
    """Give settings with what the letters say: certificate and key, names, a proxy."""
    return Settings(
        host=host,
        certificate=str(made.path) if "c" in wanted else "",
        key=str(made.key_path) if "k" in wanted else "",
        allowed_hosts="Cards.museum.example, pc" if "n" in wanted else "",
        behind_proxy="p" in wanted,
    )


@pytest.mark.parametrize(
    ("host", "wanted", "told"),
    [
        ("127.0.0.1", "", ""),
        ("127.0.0.1", "ckn", ""),
        ("127.0.0.1", "pn", ""),
        (OPEN_HOST, "ckn", ""),
        (OPEN_HOST, "", "service share"),
        (OPEN_HOST, "n", "https only"),
        (OPEN_HOST, "pn", "https only"),
        (OPEN_HOST, "ck", "UNDERLID_ALLOWED_HOSTS"),
        ("127.0.0.1", "p", "UNDERLID_ALLOWED_HOSTS"),
        ("127.0.0.1", "c", "together"),
        (OPEN_HOST, "kn", "together"),
    ],
)
def test_what_is_missing_is_told(made: Certificate, host: str, wanted: str, told: str) -> None:
    """Nobody but this machine is answered in clear or by any name, and it is said what to do."""
    settings = _settings(made, host, wanted)
    if not told:
        check_reach(settings)
        return
    with pytest.raises(ConfigError, match=told):
        check_reach(settings)


def test_files_that_are_no_pair_are_told(made: Certificate, tmp_path: Path) -> None:
    """Before anything is opened, in words."""
    for key in (tmp_path / "none.pem", made.path):
        settings = Settings(certificate=str(made.path), key=str(key), allowed_hosts="pc")
        with pytest.raises(ConfigError, match="cannot be used together"):
            check_reach(settings)


def test_names_are_read_as_people_write_them(made: Certificate) -> None:
    """With commas between; spaces and capitals do not matter."""
    assert _settings(made, "127.0.0.1", "n").hosts == {"cards.museum.example", "pc"}
    assert Settings(allowed_hosts=" , ").hosts == frozenset()


def test_others_are_answered_only_where_there_are_users(made: Certificate, tmp_path: Path) -> None:
    """This machine alone needs none; behind a proxy, or on the network, nobody comes in unasked."""
    engine = open_folder(tmp_path)
    upgrade_store(engine)
    check_users(_settings(made, "127.0.0.1", ""), engine)
    shared = [_settings(made, OPEN_HOST, "ckn"), _settings(made, "127.0.0.1", "pn")]
    for settings in shared:
        assert is_shared(settings)
        with pytest.raises(ConfigError, match="users add"):
            check_users(settings, engine)
    with writing(engine) as connection:
        new = NewUser("Ada Quill", Role.MANAGE, "nine lamps by the harbour")
        add_user(connection, new, stamp=Stamp("Ada Quill", NOW))
    for settings in shared:
        check_users(settings, engine)
    engine.dispose()
