"""Tests for attaching, the reprint list and scans."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
import typer

from service.cli.store.truth import read_scanned
from service.keeping.printing.attach import ScannedCard
from service.records.record import Museum
from tests.cli.store.conftest import Ask, Say


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_card_and_container_are_scanned(filled: Ask, say: Say, tmp_path: Path) -> None:
    """A card goes on its own container only, and a scan then says that it holds."""
    filled("print", "B-027", "-o", tmp_path, "--kind", "lid-card")
    scan = filled("scan", "B-027")
    assert scan["answer"] == "unknown"
    assert say("scan", "B-027")[1].startswith("UNKNOWN")
    code, words = say(
        "attached", "--scanned", "https://x.example/c/B-027?r=1&k=BBBB", "--on", "B-1"
    )
    assert (code, "card of B-027" in words) == (3, True)
    assert len(filled("attached", "--card", 1)["attached"]) == 1
    filled("pack", "B-027", "X.900")
    table = tmp_path / "list.csv"
    rows = filled("reprints", "--csv", table)["reprints"]
    assert [row["urgency"] for row in rows] == ["hazard or lift"]
    with table.open(encoding="utf-8-sig", newline="") as source:
        assert next(csv.DictReader(source))["container_number"] == "B-027"
    assert filled("reprints", "--why-not", "B-027")["reprints"] == rows
    assert "[hazard or lift]" in say("reprints")[1]
    filled("swap-list", "-o", tmp_path / "swap.pdf")
    assert (tmp_path / "swap.pdf").read_bytes().startswith(b"%PDF")
    records = tmp_path / "records"
    records.mkdir()
    (records / "museum.toml").write_text(
        'name = "Port Merrow"\ncontainer_address = "http://plain.example/{container_number}"\n'
    )
    (records / "objects.csv").write_text("object_number,title\nX.1,Lamp\n")
    filled("import", records)
    (failed,) = filled("reprints")["failed"]
    assert failed["number"] == "B-027"
    assert "[not compared] B-027: " in say("reprints")[1]


def test_one_way_of_naming_cards_at_a_time(filled: Ask, say: Say) -> None:
    """A run, a card, or a scan together with its container."""
    assert say("attached")[0] == say("attached", "--run", 1, "--card", 1)[0] == 2
    assert say("attached", "--scanned", "https://x.example/c/B-027?r=1&k=BBBB")[0] == 2
    assert say("attached", "--run", 99)[0] == 3
    assert filled("reprints")["reprints"] == []
    assert say("swap-list", "-o", "swap.pdf")[0] == 2


def test_what_a_symbol_says_is_read() -> None:
    """Number, revision and letters; a symbol of an end label has neither of the latter."""
    read = read_scanned("https://collections.portmerrow.example/c/B-042?r=7&k=KMTF", Museum())
    assert read == ScannedCard("B-042", 7, "KMTF")
    own = Museum(container_address="https://x.example/?id={container_number}")
    assert read_scanned("https://x.example/?id=B-042&r=7&k=KMTF", own) == read
    assert read_scanned("https://x.example/c/B-042?r=7&k=KMTF", own) == read
    slash = read_scanned("https://x.example/c/B%2F42%20a?r=7&k=KMTF", own)
    assert slash.container_number == "B/42 a"
    for text in ("B-042", "https://x.example/c/B-042", "https://x.example/c/B-042?r=x&k=KMTF"):
        with pytest.raises(typer.BadParameter):
            read_scanned(text, own)
