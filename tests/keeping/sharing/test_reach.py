from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

from service.keeping.sharing.certificate import Certificate
from service.keeping.sharing.reach import Reach, reach_by_certificate, reach_by_proxy

ENDS_AT = datetime(2028, 2, 27, tzinfo=UTC)
NAMES = ("stores-pc", "stores-pc.local", "192.168.1.20")
CERTIFICATE = Certificate(Path("c.pem"), Path("k.pem"), NAMES, "AB:CD", ENDS_AT)


def test_addresses_in_figures_come_first() -> None:
    """They work on every telephone; a name without a dot on few."""
    assert reach_by_certificate(CERTIFICATE, 8443) == Reach(
        ("https://192.168.1.20:8443", "https://stores-pc.local:8443"), "AB:CD", ENDS_AT
    )


def test_a_proxy_answers_at_the_port_of_https() -> None:
    """What certificate it shows is not known here."""
    assert reach_by_proxy({"cards.museum.example"}) == Reach(("https://cards.museum.example",))
