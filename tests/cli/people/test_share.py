from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from service.cli.people.share import list_addresses, settings_to_share
from service.config import Settings
from service.keeping.sharing.certificate import Certificate
from tests.cli.people.conftest import PASSWORD, Ask, Say

CERTIFICATE = Certificate(
    Path("c.pem"),
    Path("k.pem"),
    ("stores-pc", "stores-pc.local", "192.168.1.20"),
    "AB:CD",
    datetime(2028, 2, 27, tzinfo=UTC),
)


def test_the_first_start_prepares_everything(ask: Ask, say: Say) -> None:
    """A manager, a certificate, and what others type and compare; the second keeps all of it."""
    first = ask("share", "--prepare", "--name", "Ada Quill")
    assert first["first_manager"] == "Ada Quill"
    assert Path(first["certificate"]).is_file()
    again = ask("share", "--prepare", typed="")
    assert again["first_manager"] == ""
    assert again["fingerprint_sha256"] == first["fingerprint_sha256"]
    said = say("share", "--prepare")[1]
    assert first["fingerprint_sha256"] in said
    assert "compare" in said
    assert [user["role"] for user in ask("users", "list")["users"]] == ["manage"]


def test_nothing_is_asked_where_nobody_sits(say: Say, tmp_path: Path) -> None:
    """Without a name or a password it stops and says what to do, and has made no certificate."""
    assert say("share", "--prepare", typed=f"{PASSWORD}\n")[0] == 2
    code, said = say("share", "--prepare", "--name", "Ada Quill")
    assert (code, "standard input" in " ".join(said.split())) == (2, True)
    assert not (tmp_path / "data" / "certificate.pem").exists()


def test_others_are_answered_by_the_names_of_the_certificate() -> None:
    """On every address unless one is set, and by the names that are set besides."""
    shared = settings_to_share(Settings(allowed_hosts="cards.museum.example"), CERTIFICATE)
    assert shared.hosts == {*CERTIFICATE.names, "cards.museum.example"}
    assert (shared.host, shared.certificate, shared.key) == ("0.0.0.0", "c.pem", "k.pem")  # noqa: S104 - what sharing is
    assert settings_to_share(Settings(host="192.168.1.20"), CERTIFICATE).host == "192.168.1.20"


def test_addresses_in_figures_come_first() -> None:
    """They work on every telephone; a name without a dot on few."""
    assert list_addresses(Settings(port=8443), CERTIFICATE) == [
        "https://192.168.1.20:8443",
        "https://stores-pc.local:8443",
    ]


def test_a_certificate_of_ones_own_is_used(
    ask: Ask, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One that is set is read, and none is made."""
    made = ask("share", "--prepare", "--name", "Ada Quill")
    own = tmp_path / "own.pem"
    Path(made["certificate"]).rename(own)
    monkeypatch.setenv("UNDERLID_CERTIFICATE", str(own))
    monkeypatch.setenv("UNDERLID_KEY", str(own.with_name("key.pem")))
    assert ask("share", "--prepare")["fingerprint_sha256"] == made["fingerprint_sha256"]
    assert not Path(made["certificate"]).exists()
