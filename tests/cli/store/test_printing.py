"""Tests for printing from the store, with real ink."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from service.keeping.printing.printers_file import keep_saved
from service.sheets.printers.printer import Printer as KnownPrinter
from service.sheets.printers.saved import Saved
from tests.cli.store.conftest import Ask, Say
from tests.keeping.sending.printer import Printer, running_printer

pytestmark = [pytest.mark.print, pytest.mark.slow, pytest.mark.timeout(300)]


def test_the_whole_circle(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Print, attach, repack, see what is wrong, print that, attach it: everything holds again."""
    made = filled("print", "B-027", "-o", tmp_path / "a")
    assert len(made["cards"]) == 4
    assert all(Path(path).read_bytes().startswith(b"%PDF") for path in made["files"])
    assert len(filled("attached", "--run", made["run"])["attached"]) == 4
    assert filled("reprints")["reprints"] == []
    filled("pack", "B-027", "X.900", "--layer", 3)
    wrong = filled("reprints")["reprints"]
    shown = {card["kind"]: card for card in filled("show", "B-027")["attached"]}
    assert (shown["lid-card"]["holds"], "X.900 added" in shown["lid-card"]["reasons"]) == (0, 1)
    assert "Lid card r1 no longer holds: weight now" in say("show", "B-027")[1]
    assert {row["kind"] for row in wrong} == {"lid-card", "end-label", "contents-list"}
    assert "X.900 added" in next(row for row in wrong if row["kind"] == "lid-card")["reasons"]
    code, said = say("print", "--reprints", "-o", tmp_path / "b", "--continue", "--json")
    assert code == 1, "X.900 has no record, which is a finding of severity error"
    again = json.loads(said)
    labels = [card["places"] for card in again["cards"] if card["kind"] == "end-label"]
    assert labels == [[[1, 3]], [[1, 4]]]
    filled("attached", "--run", again["run"])
    assert filled("reprints")["reprints"] == []
    code, words = say("print", "--reprints", "-o", tmp_path / "c")
    assert (code, "no card on the 'reprint list'" in words) == (3, True)


def test_an_old_run_comes_again_byte_for_byte(filled: Ask, tmp_path: Path) -> None:
    """Whatever was repacked since."""
    made = filled("print", "B-027", "-o", tmp_path / "a", "--kind", "end-label")
    filled("pack", "B-027", "X.900")
    filled("again", made["run"], "-o", tmp_path / "b")
    (first,), (second,) = (list((tmp_path / name).iterdir()) for name in ("a", "b"))
    assert first.read_bytes() == second.read_bytes()
    assert filled("runs", "--before", made["run"])["runs"] == []
    (run,) = filled("runs")["runs"]
    assert (run["run"], run["by"]) == (made["run"], "Ada Quill")


def test_lost_cards_are_printed_again(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Named by their numbers, which `show` gives, and in one way only."""
    filled("print", "B-027", "-o", tmp_path / "a", "--kind", "end-label")
    filled("attached", "--run", 1)
    lost = [card["card"] for card in filled("show", "B-027")["attached"]]
    assert f"Card {lost[1]}: End label, side 2 r1 holds" in say("show", "B-027")[1]
    again = filled("print", "--card", lost[1], "-o", tmp_path / "b")
    assert [(card["kind"], card["side"]) for card in again["cards"]] == [("end-label", 2)]
    numbers = [part for card in lost for part in ("--card", card)]
    assert len(filled("print", *numbers, "-o", tmp_path / "c")["cards"]) == 2
    assert say("print", "--card", 999, "-o", tmp_path / "d")[0] == 3
    assert say("print", "B-027", "--card", lost[0], "-o", tmp_path / "d")[0] == 2


def test_a_spoiled_sheet_is_printed_alone(filled: Ask, tmp_path: Path) -> None:
    """Its cards and no others, on a fresh sheet."""
    made = filled("print", "B-027", "-o", tmp_path, "--kind", "end-label")
    (name,) = [Path(path).name for path in made["files"]]
    again = filled("spoiled", made["run"], "--file", name, "--sheet", 1, "-o", tmp_path / "b")
    assert [card["places"] for card in again["cards"]] == [[[1, 1]], [[1, 2]]]


def test_tags_go_the_same_circle(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Of all in a box or of single objects; a renamed object's tag is printed anew and replaced."""
    made = filled("print", "B-027", "-o", tmp_path / "a", "--kind", "object-tag")
    tagged = [card["object_number"] for card in made["cards"]]
    assert "1931.14.7" in tagged
    assert {card["container_number"] for card in made["cards"]} == {""}
    words = say("attached", "--run", made["run"])[1]
    assert "Object tag of 1931.14.7 is attached." in words
    assert filled("reprints")["reprints"] == []
    table = tmp_path / "objects.csv"
    table.write_text("object_number,title\n1931.14.7,Spike\n", encoding="utf-8")
    filled("import", table)
    (wrong,) = filled("reprints", "--csv", tmp_path / "list.csv")["reprints"]
    assert (wrong["object_number"], wrong["container_number"]) == ("1931.14.7", "B-027")
    assert wrong["printed_revision"] is None
    assert "B-027  Object tag of 1931.14.7  [wording]" in say("reprints")[1]
    (shown,) = filled("show", "1931.14.7")["attached"]
    assert (shown["kind"], shown["holds"]) == ("object-tag", False)
    assert "Object tag of 1931.14.7 no longer holds: title" in say("show", "1931.14.7")[1]
    again = filled("print", "--reprints", "-o", tmp_path / "b")
    assert [card["object_number"] for card in again["cards"]] == ["1931.14.7"]
    assert "in place of the one before" in say("attached", "--run", again["run"])[1]
    assert filled("reprints")["reprints"] == []
    single = filled("print", "--object", "1931.14.7", "-o", tmp_path / "c")
    assert [card["object_number"] for card in single["cards"]] == ["1931.14.7"]


def test_a_tag_is_asked_for_alone(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Beside objects neither containers, reprints nor other kinds are named; unknown ones fail."""
    assert filled("runs")["runs"] == []
    for others in (["B-027"], ["--reprints"], ["--kind", "lid-card"]):
        assert say("print", *others, "--object", "1931.14.7", "-o", tmp_path)[0] == 2
    code, words = say("print", "--object", "X.999", "-o", tmp_path)
    assert (code, "There is no object 'X.999'" in words) == (3, True)


def test_a_run_is_sent_to_a_printer_in_the_network(filled: Ask, say: Say, tmp_path: Path) -> None:
    """The job is told; a printer that is not known, or has no address, is refused."""
    made = filled("print", "B-027", "-o", tmp_path / "a", "--kind", "end-label")
    with running_printer(Printer()) as printer:
        known = KnownPrinter("Label desk", address=printer.address)
        keep_saved(tmp_path / "data", Saved((known, KnownPrinter("Copier"))))
        (sent,) = filled("send", made["run"], "--printer", "Label desk")["sent"]
    assert (sent["file"], sent["notes"]) == ("end-label, A4 2x4 99.1x67.7.pdf", [])
    assert printer.received[1].data.startswith(b"%PDF")
    code, words = say("send", made["run"], "--printer", "Copier")
    assert (code, "no address" in words) == (4, True)
    assert say("send", made["run"], "--printer", "Nobody")[0] == 2
