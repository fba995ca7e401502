"""Every printed word stands in one catalogue: marks are found, and what has none is noticed.

The rule by which words are told from names of things: a text with a blank or a capital, or one with
values put in. What it cannot see, single words in small letters, is looked for on printed pages.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

import pytest

from service.cards.kinds import CARD_KINDS, compose_cards
from service.contents.arrange import arrange_packings
from service.geometry import Size
from service.handling.hazards import reword_hazards
from service.handling.presume import presume_hazards
from service.languages.printed_words import PRINTING, TEMPLATE, find_printed, write_template
from service.pages.fit import Fitting, fit_card
from service.pages.page import TextBlock
from service.pipeline.read import open_source, parse_files
from tests.contracts.sources import (
    ROOT,
    SERVICE,
    TEMPLATES,
    name_of,
    python_files,
    text_of,
    tree_of,
)
from tests.pages.fake_ruler import FakeRuler

DEMO = ROOT / "sample_records" / "port_merrow"
MARK = "to_print"
COMPOSING = [
    path
    for path in (
        *python_files(SERVICE / "cards"),
        *python_files(SERVICE / "pages"),
        *(
            SERVICE / "handling" / "lifting" / f"{name}.py"
            for name in ("advice", "place", "written")
        ),
        SERVICE / "keeping" / "rounds" / "check_sheet.py",
        SERVICE / "keeping" / "swap_list.py",
        SERVICE / "sheets" / "calibration" / "ruler_page.py",
    )
    if name_of(path)
    not in {
        # What a phone shows after a scan is never printed.
        "service/cards/standing.py",
        # Phrases of handling and precautions come into the catalogue from their tables.
        "service/cards/second/phrases.py",
        "service/cards/second/phrasebook.py",
        "service/cards/papers/precautions.py",
        # Types, and how a card is kept.
        "service/cards/card.py",
        "service/cards/parts.py",
        "service/cards/fingerprint.py",
        "service/cards/kept_text.py",
        # What kinds of change there are is told by the words of each, and read by programs.
        "service/cards/changes/change.py",
        "service/cards/changes/facts.py",
        "service/cards/changes/views.py",
    }
]
NOT_PRINTED = {
    "A4", "Letter", "NFC", "T", "HTTPS://", "Restricted", "ABCDEFGH",
    # Names of parts in errors, and of documents in a file's outline.
    "back of the cover card", "check sheet", "handling strip", "list of contents", "object tag",
    "row of marks", "swap list", "warning label",
    # What is looked for in a text, never written.
    "at least", "weight ",
}  # fmt: skip
WORDS = re.compile(r"[^\W\d_]+")


def _is_mark(node: ast.AST) -> bool:
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == MARK


def _leaves(tree: ast.AST) -> Iterator[ast.Constant | ast.JoinedStr]:
    """Give the texts that stand outside marks, documentation, errors and declarations of types."""
    for child in ast.iter_child_nodes(tree):
        if isinstance(child, ast.JoinedStr) or (
            isinstance(child, ast.Constant) and isinstance(child.value, str)
        ):
            yield child
        elif isinstance(child, ast.Call) and _is_mark(child):
            for value in child.keywords:
                yield from _leaves(value)
        elif not _is_silent(child):
            yield from _leaves(child)


def _is_silent(node: ast.AST) -> bool:
    """Tell whether a part of the code prints nothing of its texts."""
    return (
        isinstance(node, ast.Raise)
        or (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant))
        or (isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "message")
        or (isinstance(node, ast.Call) and getattr(node.func, "id", "") == "TypeVar")
    )


def _looks_printed(leaf: ast.Constant | ast.JoinedStr) -> bool:
    if isinstance(leaf, ast.JoinedStr):
        own = "".join(str(part.value) for part in leaf.values if isinstance(part, ast.Constant))
        return bool(WORDS.search(own)) and own not in {"[U+]", " s"}
    text = str(leaf.value)
    worded = re.search(r"\s", text) or re.search(r"[A-Z]", text)
    return bool(worded and WORDS.search(text)) and text not in NOT_PRINTED


@pytest.mark.parametrize("path", COMPOSING, ids=name_of)
def test_every_printed_text_is_marked(path: Path) -> None:
    """No text of the code that composes cards and pages is printed without its mark."""
    found = [ast.unparse(leaf) for leaf in _leaves(tree_of(path)) if _looks_printed(leaf)]
    assert found == []


def _marks() -> Iterator[tuple[Path, ast.Call]]:
    for name in PRINTING:
        for path in python_files(SERVICE / name):
            yield from (
                (path, node)
                for node in ast.walk(tree_of(path))
                if _is_mark(node) and isinstance(node, ast.Call)
            )


def test_marks_can_be_read() -> None:
    """Each marks a text that is written out, with just the values that are put in."""
    for path, call in _marks():
        (text,) = call.args
        assert isinstance(text, ast.Constant), name_of(path)
        assert isinstance(text.value, str), name_of(path)
        fields = {name for _, name, _, _ in Formatter().parse(text.value) if name}
        if call.keywords:
            assert {keyword.arg for keyword in call.keywords} == fields, text.value


def test_marks_stand_where_the_catalogue_looks() -> None:
    """No package outside those that are read has a mark, which nobody would find."""
    marked = {
        path.relative_to(SERVICE).parts[0]
        for path in python_files(SERVICE)
        if f" {MARK}\n" in text_of(path)
    }
    assert marked <= {*PRINTING}


def test_the_catalogue_is_what_the_code_prints() -> None:
    """Reading code and tables yields nothing new, and nothing that is printed no more is left."""
    assert TEMPLATE.read_text(encoding="utf-8") == write_template()


def test_templates_have_no_words_of_their_own() -> None:
    """Whatever a card says was composed: templates place it, and name the document."""
    for path in sorted((TEMPLATES / "print").rglob("*.html")):
        text = re.sub(r"\{\{.*?\}\}|\{%.*?%\}|\{#.*?#\}|<style>.*?</style>|<[^>]*>", " ",
                      text_of(path), flags=re.DOTALL)  # fmt: skip
        words = set(WORDS.findall(text)) - {"left", "top", "width", "height"}
        assert words <= {"Underlid"}, name_of(path)


@pytest.mark.slow
def test_every_word_on_a_page_is_known() -> None:
    """On all cards of the demo each word is from a record or in the catalogue, small ones too."""
    files = [path for path in DEMO.iterdir() if path.suffix in {".csv", ".toml"}]
    known = _words(*(text_of(path) for path in files), *find_printed())
    presumed, _ = presume_hazards(parse_files(dict(open_source(DEMO).files)))
    collection = reword_hazards(presumed)
    unknown = set()
    for packing in arrange_packings(collection).packings:
        for card in compose_cards(packing, collection.museum, kinds=CARD_KINDS):
            for page in fit_card(card, Size(210, 297), Fitting(FakeRuler())):
                texts = (block for block in page.blocks if isinstance(block, TextBlock))
                said = " ".join(block.whole for block in texts)
                own = _words(card.head.check_letters)
                unknown |= _words(said) - known - own
    assert unknown == set()


def _words(*texts: str) -> set[str]:
    return {word.casefold() for text in texts for word in WORDS.findall(text)}
