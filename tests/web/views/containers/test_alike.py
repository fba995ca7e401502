from __future__ import annotations

from service.findings import Where, make_finding
from service.sentence import Sentence
from service.web.views.containers.alike import show_few


def test_of_many_alike_a_few_are_shown() -> None:
    """Kind by kind, with the number of the others at the last one."""
    words = Sentence("Seen.")
    silent = [make_finding("no-photo", Where(object_number=str(n)), words) for n in range(9)]
    light = [make_finding("heavy-above-light", Where(object_number="9"), words)]
    shown = list(show_few([*silent[:3], *light, *silent[3:]]))
    assert [one.finding.where.object_number for one in shown] == [*"012345", "9"]
    assert [one.more for one in shown] == [0, 0, 0, 0, 0, 3, 0]
    assert [one.more for one in show_few(silent[:6])] == [0] * 6
