from __future__ import annotations

from pathlib import Path

import pytest
from starlette.datastructures import FormData, UploadFile

from service.jobs.line import open_line
from service.keeping.desk import Desk
from service.pipeline.ready import Workshop
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.open import open_folder
from service.store.shelf.files import open_shelf
from service.web.replies.refusals import RefusedError
from service.web.store.cards.wanted import KindStockBody, PrintBody, SheetInTrayBody
from service.web.store.counter import Backroom, Counter
from service.web.views.desk.form import Ordered, look_up, read_body, read_order
from service.web.views.desk.settings import usual_codes
from tests.web.store.opened import BOX, MOMENT, SPIKE

LABELS = "A4 2x4 99.1x67.7"
USUAL = [("usual", code) for code in sorted(usual_codes())]


@pytest.fixture
def order(filled: Path, workshop: Workshop) -> Reader:
    """Give what reads a form over the filled store."""
    return Reader(filled, workshop)


class Reader:
    """Reads forms over a store; nothing is changed."""

    def __init__(self, folder: Path, workshop: Workshop) -> None:
        """Take the store's folder."""
        self._folder = folder
        self._workshop = workshop

    def __call__(self, *fields: tuple[str, str]) -> Ordered:
        """Read a form."""
        engine = open_folder(self._folder)
        shelf = open_shelf(self._folder / "files", scratch=self._folder)
        desk = Desk(engine, shelf, self._workshop, self._folder)
        with open_line(engine) as line:
            counter = Counter(desk, PangoRuler(FONTS_CONF), Backroom(line), clock=lambda: MOMENT)
            ordered = read_order(counter, FormData(list(fields)))
            if not ordered.faults:
                look_up(counter, ordered.body)
        engine.dispose()
        return ordered


def test_the_usual_kinds_name_no_card(order: Reader) -> None:
    """Each container gets what it always gets, whatever that is when the work begins."""
    ordered = order(("what", "containers"), ("containers", BOX), *USUAL)
    assert ordered.body == PrintBody(containers=[BOX])
    assert order(("what", "all"), *USUAL).body == PrintBody()


def test_fewer_or_further_kinds_name_each_card(order: Reader) -> None:
    """A kind that is left out is not printed, and tags are those of what lies inside."""
    fields = [("what", "containers"), ("containers", BOX)]
    body = order(*fields, ("usual", "lid-card"), ("extra", "object-tag")).body
    assert [(one.kind, one.container_number) for one in body.cards if not isinstance(one, int)] == [
        ("lid-card", BOX)
    ]
    assert SPIKE in body.objects
    assert order(("what", "all"), ("extra", "warning-label")).body.kinds == ["warning-label"]


def test_how_it_is_printed_goes_along(order: Reader) -> None:
    """Paper, copies, and the stocks of single kinds."""
    ordered = order(
        ("what", "objects"),
        ("objects", SPIKE),
        ("paper", "Letter"),
        ("copies", "2"),
        ("stock-object-tag", "A4 card 2x5 90x50"),
        ("stock-lid-card", ""),
    )
    stocks = [KindStockBody(kind="object-tag", stock="A4 card 2x5 90x50")]
    assert ordered.body == PrintBody(objects=[SPIKE], paper="Letter", copies=2, stocks=stocks)


@pytest.mark.parametrize(
    ("fields", "fault"),
    [
        ([("what", "containers"), *USUAL], "wanted"),
        ([("what", "containers"), ("containers", BOX)], "wanted"),
        ([("what", "reprints"), ("card", "x")], "wanted"),
        ([("what", "lacking"), ("lacking", "x")], "wanted"),
        ([("what", "objects"), ("objects", "X" * 600)], "wanted"),
        ([("what", "all"), *USUAL, ("copies", "0")], "copies"),
        ([("what", "all"), *USUAL, ("copies", "many")], "copies"),
    ],
)
def test_faults_are_told_by_field(order: Reader, fields: list[tuple[str, str]], fault: str) -> None:
    """Nothing ticked is no order, and copies are few."""
    assert set(order(*fields).faults) == {fault}


def test_the_whole_list_is_one_order(order: Reader) -> None:
    """However long it is, it is looked up when the work begins."""
    ordered = order(("what", "lacking"), ("everything", "yes"))
    assert ordered.body == PrintBody(lacking=True)
    ticked = order(("what", "lacking"), ("lacking", f"end-label:2:{BOX}"))
    assert ticked.body.model_dump(exclude_defaults=True) == {
        "cards": [{"container_number": BOX, "kind": "end-label", "side": 2}]
    }


def test_ticked_positions_are_sheets() -> None:
    """Each stock with what is gone of it; a stock of which nothing is gone is not named."""
    wanted = PrintBody(containers=[BOX]).model_dump_json(exclude_defaults=True)
    fields: list[tuple[str, str | UploadFile]] = [("wanted", wanted)]
    fields += [("gone", f"{each}@{LABELS}") for each in (2, 5)]
    body = read_body(FormData([*fields, ("gone", "x@y")]))
    assert body.sheets == [SheetInTrayBody(stock=LABELS, positions=[2, 5])]
    assert body.containers == [BOX]


@pytest.mark.parametrize(
    "fields", [[("wanted", "{")], [("wanted", "{}"), ("gone", "0@A4 card")], []]
)
def test_what_we_did_not_write_is_refused(fields: list[tuple[str, str | UploadFile]]) -> None:
    """The order goes through the browser, where anybody may change it."""
    with pytest.raises(RefusedError):
        read_body(FormData(fields))
