"""Tests for the calibrate commands, run in this process."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from service.cli.at_desk import now
from service.cli.calibrate import calibrate_app
from service.config import Settings
from service.errors import CalibrationError, ServiceError, StockError, UnknownPrinterError
from service.keeping.printing.printers_file import keep_saved, load_saved
from service.sheets.printers.saved import Saved
from service.sheets.printers.used_sheet import UsedSheet

# Two millimetres to the right and one too low, as far as a ruler shows.
MEASURED = ("A=17,16", "B=197,16", "C=17,283", "D=197,283", "E=107,16")


def _run(folder: Path, *arguments: str) -> str:
    """Run a command and give what it says; what it raises is raised."""
    settings = Settings(data=folder)
    done = CliRunner().invoke(
        calibrate_app, list(arguments), obj=settings, catch_exceptions=False, input=""
    )
    assert done.exit_code == 0, done.output
    return done.stdout


@pytest.mark.print
@pytest.mark.slow
def test_writes_the_ruler_sheet(tmp_path: Path) -> None:
    """The sheet is written into a folder that need not be there, and told in words and as JSON."""
    path = tmp_path / "new" / "ruler.pdf"
    assert "100 %" in _run(tmp_path, "sheet", "-o", str(path))
    assert path.read_bytes().startswith(b"%PDF")
    told = json.loads(_run(tmp_path, "sheet", "-o", str(path), "--paper", "a6", "--json"))
    assert told == {"path": str(path), "paper": "a6"}


def test_shows_what_is_left_over_and_saves(tmp_path: Path) -> None:
    """There is a line a cross, words say how the printer is off, and the way back is kept."""
    said = _run(tmp_path, "enter", "--printer", "Office  copier", "--tray", "2", *MEASURED)
    assert "E        +0.00   +0.00" in said
    assert "2.00 mm too far right and 1.00 mm too low" in said
    (printer,) = load_saved(tmp_path).printers
    (kept,) = printer.corrections
    assert (printer.name, kept.tray, kept.stock) == ("Office copier", "2", "")
    shift_mm = (kept.correction.shift_x_mm, kept.correction.shift_y_mm)
    assert shift_mm == pytest.approx((-2, -1), abs=1e-9)


def test_answers_as_json(tmp_path: Path) -> None:
    """Programs get the printer, the residuals and the words."""
    stock = ("--stock", "a4 card", "--edges", "4,4,12,4")
    told = json.loads(_run(tmp_path, "enter", "--printer", "X", *stock, *MEASURED, "--json"))
    assert [each["cross"] for each in told["residuals"]] == list("ABCDE")
    assert told["printer"][0]["edges"]["bottom_mm"] == 12
    assert told["printer"][0]["corrections"][0]["stock"] == "A4 card"
    assert "2.00 mm too far right" in told["is_off"]


def test_edges_can_be_entered_alone(tmp_path: Path) -> None:
    """What a printer cannot print is kept beside its corrections."""
    _run(tmp_path, "enter", "--printer", "X", *MEASURED)
    told = json.loads(_run(tmp_path, "enter", "--printer", "x", "--edges", "4,4,12,4", "--json"))
    assert "residuals" not in told
    (printer,) = load_saved(tmp_path).printers
    assert printer.edges is not None
    assert len(printer.corrections) == 1


def test_shows_everything(tmp_path: Path) -> None:
    """Printers, trays and part-used sheets are listed, in words and as JSON."""
    assert "No printer was measured yet" in _run(tmp_path, "show")
    keep_saved(tmp_path, Saved((), (UsedSheet("A4 card 4xA6", frozenset({2, 1})),)))
    _run(tmp_path, "enter", "--printer", "X", "--tray", "2", "--edges", "4,4,12,4", *MEASURED)
    said = _run(tmp_path, "show")
    assert "tray 2, every stock" in said
    assert "12 below" in said
    assert said.count(f"; measured {now().date()}") == 2
    assert "A4 card 4xA6: positions used: 1, 2" in said
    assert list(json.loads(_run(tmp_path, "show", "--json"))) == ["printers", "used_sheets"]


def test_forgets_one_thing_at_a_time(tmp_path: Path) -> None:
    """A tray, a part-used sheet and a whole printer go when they are named."""
    keep_saved(tmp_path, Saved((), (UsedSheet("A4 card 4xA6", frozenset({1})),)))
    for tray in ("1", "2"):
        _run(tmp_path, "enter", "--printer", "X", "--tray", tray, *MEASURED)
    _run(tmp_path, "forget", "--printer", "x", "--tray", "1")
    assert [each.tray for each in load_saved(tmp_path).printers[0].corrections] == ["2"]
    _run(tmp_path, "forget", "--sheet", "a4 card 4xa6")
    assert load_saved(tmp_path).used_sheets == ()
    _run(tmp_path, "forget", "--printer", "X")
    assert load_saved(tmp_path) == Saved()


@pytest.mark.parametrize(
    ("arguments", "error"),
    [
        (("enter", "--printer", "X"), CalibrationError),
        (("enter", "--printer", " ", *MEASURED), CalibrationError),
        (("enter", "--printer", "X", *MEASURED[:3]), CalibrationError),
        (("enter", "--printer", "X", "--edges", "4,4,four,4"), CalibrationError),
        (("enter", "--printer", "X", "--edges", "4,4,99,4"), CalibrationError),
        (("enter", "--printer", "X", "--paper", "A3", *MEASURED), StockError),
        (("enter", "--printer", "X", "--stock", "A3", *MEASURED), ServiceError),
        (("forget",), CalibrationError),
        (("forget", "--printer", "X"), UnknownPrinterError),
        (("forget", "--sheet", "X"), UnknownPrinterError),
    ],
)
def test_mistakes_save_nothing(
    tmp_path: Path, arguments: tuple[str, ...], error: type[ServiceError]
) -> None:
    """A mistake is an error in words and leaves what is kept as it is."""
    with pytest.raises(error):
        _run(tmp_path, *arguments)
    assert load_saved(tmp_path) == Saved()


def test_an_unknown_tray_is_not_forgotten(tmp_path: Path) -> None:
    """The trays that are known are told instead."""
    _run(tmp_path, "enter", "--printer", "X", "--tray", "2", *MEASURED)
    with pytest.raises(UnknownPrinterError, match="tray 2, every stock"):
        _run(tmp_path, "forget", "--printer", "X", "--tray", "3")
