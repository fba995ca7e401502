"""The demo's problems, listed by hand: what a check must find in it, and nothing else.

Whoever planted a problem wrote it down here first. The list was made by reading the tables, with
the rules of trade named beside each row in `service/handling`.
"""

from __future__ import annotations

from collections import Counter
from datetime import date
from pathlib import Path

import pytest

from service.pipeline.options import PrintOptions
from service.pipeline.read import open_source, read_source
from service.pipeline.run import check_collection
from service.wiring import open_workshop

pytestmark = [pytest.mark.slow, pytest.mark.print, pytest.mark.timeout(300)]

DEMO = Path(__file__).parents[2] / "sample_records" / "port_merrow"
DAY = date(2026, 11, 30)

# Code, container, object, and a word of the message that tells why.
PLANTED = {
    ("unreadable-dimensions", "", "1931.14.5a-e", "each H 4-9"),
    ("no-photo", "B-031", "1964.22.4", "no photo"),
    ("no-photo", "GC-009", "1991.8.15", "no photo"),
    ("temporary-material", "B-031", "", "bubble wrap"),
    ("stacking-limit-disagrees", "B-031", "", "1999.103.2"),
    ("covered-lid", "B-036", "", "clear"),
    ("conflicting-materials", "B-036", "1978.55.2", "celluloid, presumed"),
    ("pins-in-textile", "B-036", "1978.55.1a-c", "two pins"),
    ("unpadded-fold", "B-036", "1978.55.1a-c", "sash folded"),
    ("conflicting-materials", "B-042", "1987.412.10a", "rubber"),
    ("conflicting-materials", "B-042", "1987.412.3", "nitrate"),
    ("under-others", "B-058", "1902.7", "1946.9.1"),
    ("object-too-large", "B-058", "1926.18", "520 mm"),
    ("unsuitable-material", "D-11", "", "polyurethane foam"),
    ("conflicting-materials", "GC-009", "1991.8.15", "wool"),
    ("hung-against-advice", "GC-009", "1991.8.15", "knitted"),
    ("metal-against-textile", "GC-009", "1991.8.15", "Rust"),
    ("pins-in-textile", "GC-009", "1991.8.15", "safety pins"),
    ("repack-overdue", "GC-009", "", "2026-09-30"),
    ("folded-against-record", "T-02", "1972.2.8", "folded under"),
}
LEAST_KINDS = 15


def test_just_what_was_planted_is_found(tmp_path: Path) -> None:
    """Every planted problem is told once, and no finding is noise."""
    source = open_source(DEMO)
    with open_workshop(tmp_path, processes=1) as workshop:
        collection = read_source(source.files, workshop.workers)
        options = PrintOptions(today=DAY)
        findings = check_collection(collection, source.photos, options, workshop)
    found = Counter(
        (one.code, one.where.container_number, one.where.object_number) for one in findings
    )
    assert found == Counter(row[:3] for row in PLANTED)
    for code, container, number, word in PLANTED:
        (message,) = (
            one.message
            for one in findings
            if (one.code, one.where.container_number, one.where.object_number)
            == (code, container, number)
        )
        assert word in message


def test_the_demo_shows_many_kinds_of_problem() -> None:
    """Whoever tries the demo sees what a check can notice."""
    assert len({code for code, *_ in PLANTED}) >= LEAST_KINDS
