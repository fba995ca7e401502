"""Bring the catalogues of every word that pages show up to date with the code.

    PYTHONPATH=. python templates/locale/update_pages.py [LANGUAGE [FILE.json ...]]

`pages.pot` is made anew, and each `LANGUAGE/pages.po` brought up to date: translations stay, new
messages stand empty, those that nothing shows any more go. With a language that has none it begins
one; files of translations, `{english: words or [each form of the plural]}`, are taken in.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping, Sequence
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.plurals import get_plural
from babel.messages.pofile import read_po

from service.languages.catalogue import LOCALE
from service.languages.page_catalogue import TEMPLATE, make_catalogue, write_catalogue
from service.languages.page_words import FILE_NAME
from service.web.views.language.messages import find_shown

HEAD = r"""# Every word that pages show{reading}: run templates/locale/update_pages.py.
msgid ""
msgstr ""
"Project-Id-Version: underlid\n"{language}
"MIME-Version: 1.0\n"
"Content-Type: text/plain; charset=utf-8\n"
"Content-Transfer-Encoding: 8bit\n"{plural}"""
BEGUN = r"""
# Translation not reviewed by a specialist. Whoever has reviewed it writes "X-Reviewed: yes"."""


def main(language: str = "", *files: str) -> None:
    """Write the template, then the catalogues that are there and the one that is named."""
    head = HEAD.format(reading="", language="", plural="")
    _write(TEMPLATE, make_catalogue(find_shown()), head)
    found = {path.parent.name for path in LOCALE.glob(f"*/{FILE_NAME}")}
    for each in sorted(found | {language} - {""}):
        _update(each, [Path(file) for file in files] if each == language else [])


def _update(language: str, files: Sequence[Path]) -> None:
    path = LOCALE / language / FILE_NAME
    content = path.read_bytes() if path.exists() else _begin(language).encode()
    head = content.decode().partition("\n\n")[0].rstrip("\n")
    catalogue = make_catalogue(find_shown(), read_po(BytesIO(content), locale=language))
    for file in files:
        _take_in(catalogue, json.loads(file.read_text(encoding="utf-8")))
    _write(path, catalogue, head)


def _begin(language: str) -> str:
    """Write the head of a catalogue that is new; its plural is that of the Unicode tables."""
    plural = f'\n"Plural-Forms: {get_plural(language)}\\n"\n"X-Reviewed: no\\n"'
    head = HEAD.format(
        reading=f" in {language}", language=f'\n"Language: {language}\\n"', plural=plural
    )
    first, _, rest = head.partition("\n")
    return f"{first}{BEGUN}\n{rest}\n"


def _take_in(catalogue: Catalog, said: Mapping[str, str | list[str]]) -> None:
    for english, words in said.items():
        message = catalogue.get(english)
        if message is not None:
            message.string = words if isinstance(words, str) else tuple(words)


def _write(path: Path, catalogue: Catalog, head: str) -> None:
    path.parent.mkdir(exist_ok=True)
    path.write_text(write_catalogue(catalogue, head), encoding="utf-8", newline="\n")
    said = sum(bool(each.string) and all(each.string) for each in catalogue if each.id)
    print(f"{path}: {len(catalogue)} messages, {said} of them translated")


if __name__ == "__main__":
    main(*sys.argv[1:])
