"""The catalogues of what pages say: the template, and each language brought up to date with it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from io import BytesIO

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from service.languages.catalogue import LOCALE
from service.languages.page_words import FILE_NAME

TEMPLATE = LOCALE / "pages.pot"

Message = str | tuple[str, str]
"""A message, or one and its plural."""


def read_catalogue(language: str) -> Catalog:
    """Read the catalogue of a language that has one."""
    content = (LOCALE / language / FILE_NAME).read_bytes()
    return read_po(BytesIO(content), locale=language, abort_invalid=True)


def make_catalogue(
    messages: Mapping[Message, Sequence[str]], known: Catalog | None = None
) -> Catalog:
    """Make the template of messages and their places, or bring a known catalogue up to date.

    What it translates stays, what is new stands empty, what no page shows any more goes.
    """
    made = Catalog(locale=None if known is None else known.locale, fuzzy=False)
    for message, places in messages.items():
        one = message if isinstance(message, str) else message[0]
        was = None if known is None else known.get(one)
        is_same = was is not None and isinstance(was.id, str) is isinstance(message, str)
        said = was.string if was is not None and is_same else ""
        made.add(message, said or None, [(place, 0) for place in places])
    return made


def write_catalogue(catalogue: Catalog, head: str) -> str:
    """Write a catalogue as a file, below a head that is kept as it is."""
    written = BytesIO()
    write_po(written, catalogue, width=0, omit_header=True, sort_output=False)
    return f"{head}\n\n{written.getvalue().decode().strip()}\n"
