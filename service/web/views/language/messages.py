"""Finds every message that pages show, for the catalogue of translators: by reading, not running.

Templates are read with the extractor of Jinja, code for the marks of `MARKS`, and the tables whose
words pages show. Phrases of handling are left out where `handling.po` has them already.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from pathlib import Path

from jinja2.ext import babel_extract

from service.cards.second.phrases import list_phrases
from service.languages.catalogue import LOCALE
from service.languages.page_catalogue import Message
from service.sentence import has_words
from service.web.views.language.tables import list_table_words

TEMPLATES = LOCALE.parent / "web"
SERVICE = LOCALE.parents[1] / "service"
SHOWN = (
    *("cards/changes", "cards/compose/objects.py", "cards/kinds.py", "cards/reprints.py"),
    *("cards/standing.py", "cards/swap_list.py"),
    *("contents", "errors.py", "findings.py", "handling", "jobs/results.py", "keeping", "pipeline"),
    *("records", "render/pictures", "render/worker.py"),
    *("sheets/calibration/calibrate.py", "sheets/calibration/limits.py"),
    *("sheets/calibration/readings.py", "sheets/own_stock.py", "sheets/printers/saved.py"),
    *("sheets/stock.py", "store", "web"),
)
"""What makes words that pages show."""
MARKS: Mapping[str, tuple[int, ...]] = {
    "say": (0,),
    "say_many": (0, 1),
    "Sentence": (0,),
    "to_print": (0,),
    "__init__": (0,),
    "JobError": (0,),
    "ServiceError": (0,),
    "RefusedError": (1,),
    "refuse": (1,),
    "_RefusalKind": (1,),
    "FindingCode": (1,),
}
"""What marks a word, and which of its arguments it is; `__init__` is that of errors."""
NAMED_MARKS = frozenset(("reason", "tried", "what", "advice"))
"""Arguments by name that are words."""
_EXTENSIONS = {"trim_blocks": "true", "lstrip_blocks": "true", "newstyle_gettext": "true"}
_KEYWORDS = ("_", "gettext", "ngettext")


def find_shown() -> Mapping[Message, tuple[str, ...]]:
    """Find every message, with the files it stands in."""
    found: dict[str, tuple[Message, dict[str, None]]] = {}
    ours = set(list_phrases())
    for place, message in _find_all():
        one = message if isinstance(message, str) else message[0]
        # Templates ask this catalogue alone.
        is_ours = one in ours and not place.endswith(".html")
        if is_ours or not has_words(one):
            continue
        known, places = found.setdefault(one, (message, {}))
        if isinstance(known, str):
            found[one] = (message, places)
        places[place] = None
    return {message: tuple(places) for message, places in found.values()}


def _find_all() -> Iterator[tuple[str, Message]]:
    for path in sorted(TEMPLATES.rglob("*.html")):
        yield from ((_name(path), message) for message in _read_template(path))
    for part in (SERVICE / name for name in SHOWN):
        for path in sorted(part.rglob("*.py") if part.is_dir() else [part]):
            yield from ((_name(path), message) for message in _read_code(path))
    yield from (("tables", message) for message in list_table_words())


def _read_template(path: Path) -> Iterator[Message]:
    with path.open("rb") as source:
        for _, _, message, _ in babel_extract(source, _KEYWORDS, [], _EXTENSIONS):
            # A message with values comes with None for each; a plural with both its forms.
            forms = (
                [message] if isinstance(message, str) else [each for each in message or () if each]
            )
            yield (forms[0], forms[1]) if len(forms) > 1 else forms[0]


def _read_code(path: Path) -> Iterator[Message]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            yield from _read_call(node)
        elif isinstance(node, ast.ClassDef):
            yield from _read_advice(node)


def _read_call(call: ast.Call) -> Iterator[Message]:
    name = call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", "")
    marked = [call.args[at] for at in MARKS.get(name, ()) if at < len(call.args)]
    words = [text for each in marked if (text := _text(each))]
    if name == "say_many":
        yield (words[0], words[1])
    else:
        yield from words
    if name.endswith("Error") or name in MARKS:
        yield from (_text(each.value) for each in call.keywords if each.arg in NAMED_MARKS)


def _read_advice(error: ast.ClassDef) -> Iterator[Message]:
    """Read the advice of a kind of error, which stands in its class."""
    for each in error.body:
        targets = each.targets if isinstance(each, ast.Assign) else [getattr(each, "target", None)]
        if any(isinstance(one, ast.Name) and one.id == "advice" for one in targets):
            yield _text(getattr(each, "value", None))


def _text(node: ast.expr | None) -> str:
    """Give a text that is written out; empty where it is something else."""
    value = node.value if isinstance(node, ast.Constant) else None
    return value if isinstance(value, str) else ""


def _name(path: Path) -> str:
    return path.relative_to(SERVICE.parent).as_posix()
