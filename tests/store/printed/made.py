"""Printed cards that the tests of print runs begin with."""

from __future__ import annotations

from service.store.printed.card import MadeCard, NewRun, RunFile

LID = MadeCard("B-001", "lid-card", 1, "f" * 64, '{"count_words":"1 object"}')
END_1 = MadeCard("B-001", "end-label", 1, "e" * 64, "{}", side=1)
END_2 = MadeCard("B-001", "end-label", 1, "e" * 64, "{}", side=2)
OTHER = MadeCard("B-002", "lid-card", 1, "d" * 64, "{}")
RUN = NewRun((LID, END_1, END_2, OTHER), (RunFile("lid-cards.pdf", "a" * 64, 12_345),), {"p": "A4"})
TAG = MadeCard("", "object-tag", 0, "c" * 64, "{}", object_number="X.112")
