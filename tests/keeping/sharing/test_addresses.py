from __future__ import annotations

import pytest

from service.keeping.sharing import addresses
from service.keeping.sharing.addresses import Names, choose_names, find_names


def test_a_machine_goes_by_its_name_and_its_private_addresses() -> None:
    """Public addresses, loopback, link-local and the newer protocol are left out."""
    found = [
        "192.168.1.20",
        "10.0.0.7",
        "192.168.1.20",
        "127.0.1.1",
        "169.254.3.4",
        "93.184.216.34",
        "fd00::1",
        "0.0.0.0",  # noqa: S104 - one that is left out
    ]
    assert choose_names("Stores-PC", found, ()) == Names(
        ("stores-pc", "stores-pc.local"), ("192.168.1.20", "10.0.0.7")
    )


@pytest.mark.parametrize(
    ("name", "names"),
    [
        ("stores.local", ("stores", "stores.local")),
        ("stores.museum.example", ("stores", "stores.local", "stores.museum.example")),
        ("", ()),
        ("the stores' pc", ()),
    ],
)
def test_names_that_can_stand_in_a_certificate(name: str, names: tuple[str, ...]) -> None:
    """With and without what stands behind the first dot; an odd one is left out."""
    assert choose_names(name, [], ()).names == names


def test_what_a_setting_names_is_added() -> None:
    """Names and addresses, whatever they are, but nothing that is neither."""
    found = choose_names("pc", [], ["Cards.Museum.example", "203.0.113.5", "no name!"])
    assert found.names[2:] == ("cards.museum.example",)
    assert found.all[-1] == "203.0.113.5"


def test_this_machine_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever it answers can stand in a certificate, and nobody is called for it."""
    monkeypatch.setattr(addresses, "NOWHERE", ("127.0.0.1", 9))
    assert "cards.museum.example" in find_names(besides=["cards.museum.example"]).names
