"""Tests for the words of pages that are made in code."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from service.languages import saying
from service.languages.page_words import PageWords
from service.languages.saying import find_said, said, say, say_many, speaking, spoken
from service.sentence import Sentence

WEB = Path(__file__).parents[2] / "service" / "web"


class _Backwards(PageWords):
    """Says a few messages backwards."""

    def translate(self, english: str) -> str | None:
        return {"{a} in {b}": "{b}-ni {a}", "box": "xob"}.get(english)


def test_english_is_said_as_it_is_written() -> None:
    """Outside of a request, and in one that asks for English."""
    assert say("{number} is kept.", number="B-1") == "B-1 is kept."
    assert say_many("{num} card", "{num} cards", 1) == "1 card"
    assert say_many("{num} card of {it}", "{num} cards of {it}", 2, it="B-1") == "2 cards of B-1"
    with speaking("en"):
        assert spoken().code == "en"
        assert said("box") == "box"


def test_words_stand_in_the_order_of_the_language(monkeypatch: pytest.MonkeyPatch) -> None:
    """Sentences within are said too, data are not; what is not known stays English."""
    words = _Backwards("xx", spoken().messages)
    monkeypatch.setattr(saying, "load_page_words", lambda _: words)
    assert say("{a} in {b}", a="box", b=Sentence("box")) == "xob-ni box"
    assert find_said("lid") is None
    assert said(Sentence("{a} on {b}", a=1, b=Sentence("box"))) == "1 on box"
    assert say("{a}: {b}", a=Sentence("box"), b="box") == "xob: box"


def test_marks_are_written_out() -> None:
    """The catalogue is made by reading: what is said is a text, and not the name of one."""
    wrong = [
        f"{path.relative_to(WEB)}:{call.lineno}"
        for path in sorted(WEB.rglob("*.py"))
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name)
        for each in call.args[: {"say": 1, "say_many": 2}.get(call.func.id, 0)]
        if not isinstance(each, ast.Constant)
    ]
    assert wrong == []
