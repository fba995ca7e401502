"""Whatever decides the words of a card is heeded, so that a newer program words all cards anew."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

from service.keeping.refresh import WORDING
from tests.contracts.sources import SERVICE, tree_of

_BEGINS = ("keeping/today.py", "keeping/tags/today.py", "cards/fingerprint.py")
_WORDLESS = ("store/", "sheets/", "pages/", "errors.py", "findings.py", "geometry.py")
"""What keeps records, and what only decides how a card looks or what else is told."""
_WORDLESS_FILES = {"pipeline/options.py"}


def test_all_that_words_a_card_is_heeded() -> None:
    """Nothing that wording a card imports is left out, and nothing is named in vain."""
    reached = set(_reach(_BEGINS))
    heeded = {name for name in reached if name.startswith(WORDING)}
    others = {name for name in reached - heeded if not name.startswith(_WORDLESS)}
    assert others == _WORDLESS_FILES
    assert {part for part in WORDING if not any(name.startswith(part) for name in heeded)} == set()


def _reach(names: tuple[str, ...]) -> set[str]:
    reached: set[str] = set()
    ahead = list(names)
    while ahead:
        name = ahead.pop()
        if name not in reached:
            reached.add(name)
            ahead.extend(_imports(SERVICE / name))
    return reached


def _imports(path: Path) -> Iterator[str]:
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.ImportFrom) and str(node.module).startswith("service."):
            inner = str(node.module).removeprefix("service.").replace(".", "/")
            file = SERVICE / f"{inner}.py"
            yield f"{inner}.py" if file.exists() else f"{inner}/__init__.py"
