from __future__ import annotations

import httpx

from service.errors import CalibrationError
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.stocks import A6
from service.web.views.paper.measured import find_faults, name_fields, read_crosses
from service.web.views.shell.forms import WHOLE
from tests.web.views.opened import follow, send, show

# Two millimetres to the right and one too low, as far as a ruler shows.
TYPED = {
    "printer": "Office copier",
    "tray": "2",
    "paper": "A4",
    "A_across": "17",
    "A_down": "16",
    "B_across": "197",
    "B_down": "16",
    "C_across": "17",
    "C_down": "283",
    "D_across": "197",
    "D_down": "283,0",
}
PAGE = "/printers/measure"


def test_measures_become_a_correction(client: httpx.Client) -> None:
    """Told in words with what is left over; a printer that is new can be undone."""
    page = follow(client, send(client, PAGE, PAGE, TYPED))
    assert "2.00 mm too far right and 1.00 mm too low" in page
    assert "as exactly as a ruler can be read" in page
    assert 'action="/printers/forget"' in page
    page = follow(client, send(client, PAGE, PAGE, TYPED | {"A_across": "17.25"}))
    assert 'action="/printers/restore"' in page
    assert "Office copier" in show(client, PAGE)


def test_a_cross_that_cannot_be_right_is_named(client: httpx.Client) -> None:
    """Beside its field; the other measures stay, and nothing is kept."""
    more = {"E_across": "107", "E_down": "16", "F_across": "17", "F_down": "150"}
    more |= {"G_across": "197", "G_down": "150", "H_across": "107", "H_down": "283"}
    wrong = TYPED | more | {"D_across": "187"}
    answer = send(client, PAGE, PAGE, wrong, status=422)
    assert 'id="fault-D_across"' in answer.text
    assert 'value="283,0"' in answer.text
    assert client.get("/api/printers").json() == {"printers": []}


def test_small_paper_has_four_crosses(client: httpx.Client) -> None:
    """The form asks for no more than is printed; another paper is refused."""
    page = show(client, f"{PAGE}?paper=a6")
    assert 'name="D_down"' in page
    assert 'name="E_down"' not in page
    assert client.get(f"{PAGE}?paper=A7").status_code == 422


def test_faults_stand_by_their_field() -> None:
    """A printer without a name, half a cross, no length, and nothing at all."""
    crosses = crosses_on(A6)
    typed = {"A_across": "15.25", "B_across": "about 90", "B_down": "15"}
    assert set(dict(find_faults(typed, crosses))) == {"printer", "A_down", "B_across"}
    assert set(dict(find_faults({"printer": "X"}, crosses))) == {WHOLE}
    typed = {"printer": "X", "A_across": "15.25", "A_down": "15,5"}
    assert list(find_faults(typed, crosses)) == []
    assert list(read_crosses(typed, crosses)) == ["A=15.25/15,5"]


def test_each_measure_that_is_doubted_is_named() -> None:
    """Two of which one is wrong stand by both; what names none stands on top."""
    error = CalibrationError(
        ["one of these is wrong: cross A: down: measured 9; or cross B: across: measured 8", "Oh"]
    )
    assert set(name_fields(error)) == {"A_down", "B_across", WHOLE}
