from __future__ import annotations

from service.cards.kinds import OBJECT_TAG
from service.keeping.printing.paper import Paper, choose_paper
from service.pages.ruler import Ruler
from service.pipeline.options import PrintOptions
from service.sheets.stocks import STOCKS, find_stock
from service.store.handles import Connection
from tests.keeping.made import BOX, COVER, JAR

LABELS, CARDS = find_stock("A4 2x4 99.1x67.7", STOCKS), find_stock("A4 card", STOCKS)


def test_the_stocks_of_a_run_are_known_before_it(connection: Connection, ruler: Ruler) -> None:
    """Two end labels go on the sheet of labels that a run would choose for them."""
    needed = choose_paper(connection, ruler, PrintOptions(containers=frozenset({BOX})))
    by_kind = {kind: paper for paper in needed.papers for kind in paper.kinds}
    assert by_kind["end-label"] == Paper(LABELS, ("end-label",), 2, 2)
    assert by_kind["contents-list"].stock == CARDS
    assert not needed.is_part


def test_what_fits_on_nothing_is_a_finding(connection: Connection, ruler: Ruler) -> None:
    """It is told before anything is printed, with the number of the box."""
    tiny = find_stock("A4 5x13 38.1x21.2", STOCKS)
    options = PrintOptions(containers=frozenset({BOX}), by_kind={"lid-card": tiny})
    needed = choose_paper(connection, ruler, options)
    assert tiny not in {paper.stock for paper in needed.papers}
    assert any(
        finding.code == "card-failed" and finding.where.container_number == BOX
        for finding in needed.findings
    )


def test_only_what_is_asked_for_counts(connection: Connection, ruler: Ruler) -> None:
    """Single cards and tags by their numbers, the tags of all that lies there, or everything."""
    only = frozenset({(BOX, "end-label", 2), (JAR, "object-tag", 1)})
    needed = choose_paper(connection, ruler, PrintOptions(only=only))
    assert {(paper.kinds, paper.cards) for paper in needed.papers} == {
        (("end-label",), 1),
        (("object-tag",), 1),
    }
    tags = PrintOptions(kinds=(OBJECT_TAG,), containers=frozenset({BOX, COVER}))
    assert sum(paper.cards for paper in choose_paper(connection, ruler, tags).papers) == 3
    everything = choose_paper(connection, ruler, PrintOptions())
    assert {"cover-card", "lid-card"} <= {kind for one in everything.papers for kind in one.kinds}
