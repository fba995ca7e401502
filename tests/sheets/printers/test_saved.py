from __future__ import annotations

import json
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.errors import CalibrationError
from service.geometry import Insets
from service.sheets.correction import Correction
from service.sheets.printers.printer import Printer, TrayCorrection
from service.sheets.printers.saved import (
    Saved,
    checked_address,
    checked_edges,
    read_saved,
    saved_as_data,
    write_saved,
)
from service.sheets.printers.used_sheet import UsedSheet

CORRECTION = Correction(0.995, 0.001, -0.001, 1.002, -2.0, 1.5)
COPIER = Printer(
    "Office copier",
    Insets(4.2, 4.2, 12, 4.2),
    (TrayCorrection("2", "A4 card", CORRECTION, 0.125, date(2026, 10, 14)),),
    date(2026, 10, 15),
    "ipp://printer.example/ipp/print",
)
DESK = Printer("Zebra crossing", address="ipp://192.0.2.7:631/ipp/print")
SAVED = Saved((COPIER, DESK), (UsedSheet("A4 card 4xA6", frozenset({2, 1})),))


def test_comes_back_as_it_was() -> None:
    """What is written is read again, number for number."""
    assert read_saved(write_saved(SAVED)) == SAVED
    assert read_saved(write_saved(Saved())) == Saved()


def test_a_file_without_days_is_read() -> None:
    """What was kept before the day of measuring was noted comes back without one."""
    data: Any = saved_as_data(SAVED)
    del (
        data["printers"][0]["edges_measured_on"],
        data["printers"][0]["corrections"][0]["measured_on"],
    )
    copier = read_saved(json.dumps(data)).printers[0]
    assert (copier.edges_measured_on, copier.corrections[0].measured_on) == (None, None)
    assert copier.corrections[0].correction == CORRECTION


def test_a_file_without_addresses_is_read() -> None:
    """What was kept before jobs could be sent comes back without one."""
    data: Any = saved_as_data(SAVED)
    del data["printers"][0]["address"]
    assert read_saved(json.dumps(data)).printers[0].address == ""


@pytest.mark.parametrize(
    "address",
    ["", "ipp://printer.example", "ipp://192.0.2.7:631/ipp/print", "ipp://[2001:db8::7]/ipp"],
)
def test_an_address_of_a_printer_is_one(address: str) -> None:
    """A name or an address, a port and a path where they are not the usual ones."""
    assert checked_address(address) == address


@pytest.mark.parametrize(
    "address",
    [
        *("printer.example", "http://printer.example", "ipp://", "ipp://a b", "ipp://u:p@host"),
        *("ipp://host:port", "ipp://host/x?y", "ipp://host/#x", "file:///etc/x"),
    ],
)
def test_anything_else_is_refused(address: str) -> None:
    """Nothing is sent but by this protocol, and no password stands in a file."""
    with pytest.raises(ValueError, match="looks like ipp:"):
        checked_address(address)


@given(st.text(min_size=1).filter(str.strip), st.text())
def test_any_name_comes_back(name: str, tray: str) -> None:
    """Names hold whatever people type."""
    saved = Saved((Printer(name, None, (TrayCorrection(tray, "", CORRECTION, 0.0),)),))
    assert read_saved(write_saved(saved)) == saved


def test_one_printer_a_name() -> None:
    """A printer replaces the one of its name, however it is typed."""
    changed = SAVED.with_printer(Printer("office  COPIER"))
    assert [printer.name for printer in changed.printers] == ["office  COPIER", "Zebra crossing"]
    assert changed.used_sheets == SAVED.used_sheets
    assert len(SAVED.without_printer("zebra crossing").printers) == 1


def _changed(**changes: object) -> str:
    data: Any = saved_as_data(SAVED)
    data["printers"][0] |= changes
    return json.dumps(data, default=list)


def _with_map(**changes: object) -> str:
    data: Any = saved_as_data(SAVED)
    data["printers"][0]["corrections"][0]["correction"] |= changes
    return json.dumps(data)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "cannot be read"),
        ("[]", "no table"),
        ("{}", "it lacks 'printers'"),
        ('{"printers": {}, "used_sheets": []}', "no list"),
        ('{"printers": [], "used_sheets": [{"stock": "x", "positions": [0]}]}', "whole numbers"),
        ('{"printers": [], "used_sheets": [{"stock": "", "positions": [1]}]}', "empty"),
        ("[" * 100_000, "cannot be read"),
        (_changed(name=7), "no text"),
        (_changed(edges=[1, 2, 3, 4]), "no table"),
        (_changed(edges_measured_on="soon"), "isoformat"),
        (_changed(edges={"top_mm": 1, "right_mm": 1, "bottom_mm": 99, "left_mm": 1}), "0 to 50"),
        (_changed(corrections=[{"tray": "2"}]), "it lacks 'correction'"),
        (_with_map(xx="1"), "no number"),
        (_with_map(xx=True), "no number"),
        (_with_map(xx=float("nan")), "no number"),
        (_with_map(xx=1.5), "at 100 %"),
        (_with_map(shift_x_mm=400), "shifted"),
        (_with_map(xx=0, xy=0), "flattens"),
    ],
    ids=[
        "nothing",
        "a list",
        "no keys",
        "no list",
        "position 0",
        "no stock",
        "a tower",
        "name",
        "edges",
        "no day",
        "wide edge",
        "half a correction",
        "text",
        "truth",
        "nan",
        "stretch",
        "shift",
        "flat",
    ],
)
def test_refuses_what_was_spoiled(text: str, reason: str) -> None:
    """A file somebody broke is told with what is wrong in it, and nothing of it is used."""
    with pytest.raises(CalibrationError) as trouble:
        read_saved(text)
    assert reason in str(trouble.value)


@pytest.mark.parametrize("edges_mm", [[1, 2, 3], [-1, 2, 3, 4], [1, 2, 3, 51], [float("nan")] * 4])
def test_edges_are_four_and_possible(edges_mm: list[float]) -> None:
    """Edges that no printer has are refused."""
    with pytest.raises(ValueError, match="edge"):
        checked_edges(edges_mm)
