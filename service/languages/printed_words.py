"""The catalogue of every printed word, for whoever translates: made from the code and the tables.

`templates/locale/print.pot` is a template and no English translation, since the English words are
the keys by which the code asks: a translator copies it as `LANGUAGE/print.po` and fills it in.
"""

from __future__ import annotations

import json
import tomllib
from collections import defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path

from babel.messages.extract import extract

from service.cards.second.phrases import list_entries, list_phrases
from service.handling.presume import RULES
from service.languages.catalogue import LOCALE
from service.records.museum.region import Region

TEMPLATE = LOCALE / "print.pot"
PICTOGRAMS = LOCALE.parent / "pictograms" / "pictograms.toml"
SERVICE = Path(__file__).parents[1]
PRINTING = ("cards", "handling", "keeping", "pages", "pipeline", "sheets")
"""The packages whose words reach paper."""
MARKS: Mapping[str, tuple[int, ...]] = {"to_print": (1,), "count": (2,)}
"""What marks a printed word: `to_print` all of it, `count` the noun behind a number."""

_TABLES = "tables of handling and of marks"
_HEAD = """\
# Every printed word, as the code and the tables have it: run templates/locale/update_print.py.
# Words of handling are translated in LANGUAGE/handling.po already.
msgid ""
msgstr ""
"Project-Id-Version: underlid\\n"
"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"""


def find_printed() -> dict[str, tuple[str, ...]]:
    """Find every printed phrase, with the files that print it; sorted by where it stands first."""
    found: dict[str, list[str]] = defaultdict(list)
    for path in sorted(path for name in PRINTING for path in (SERVICE / name).rglob("*.py")):
        for words in _extract(path):
            found[words].append(path.relative_to(SERVICE.parent).as_posix())
    for words in _list_tables():
        found[words].append(_TABLES)
    return {words: tuple(dict.fromkeys(places)) for words, places in found.items()}


def write_template() -> str:
    """Write the template: each phrase once, with where it is printed."""
    entries = [
        "\n".join((*(f"#: {place}" for place in places), f"msgid {_quote(words)}", 'msgstr ""'))
        for words, places in find_printed().items()
    ]
    return "\n\n".join([_HEAD.rstrip("\n"), *entries]) + "\n"


def _extract(path: Path) -> Iterator[str]:
    with path.open("rb") as source:
        for _, message, _, _ in extract("python", source, keywords=MARKS):
            yield message if isinstance(message, str) else message[-1]


def _list_tables() -> Iterator[str]:
    yield from list_phrases()
    for entry in list_entries():
        yield from dict.fromkeys(entry.consult.in_region(region) for region in Region)
    yield from (rule.says for rule in RULES)
    for mark in tomllib.loads(PICTOGRAMS.read_text(encoding="utf-8"))["mark"]:
        yield from (mark["words"], mark["meaning"])


def _quote(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
