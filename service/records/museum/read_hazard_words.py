"""The museum's own first precautions, from the group `hazard_words` of its TOML file or JSON."""

from __future__ import annotations

from dataclasses import replace

from service.findings import Where
from service.records.cells.words import find_code
from service.records.codes import HAZARD_CODES
from service.records.museum.hazard_words import HazardWords
from service.records.rows.notebook import Notebook
from service.records.rows.text import quote_text, tidy_text
from service.sentence import Sentence

GROUP = "hazard_words"
MOST_SIGNS = 120
"""A first precaution is read while a hand is on the box; more belongs on the contents list."""


def read_hazard_words(
    values: object, *, where: Where, notebook: Notebook
) -> tuple[HazardWords, ...]:
    """Read the words by hazard; what cannot be used is noted, and the usual words stand.

    There is no way to leave a hazard without words.
    """
    if not isinstance(values, dict):
        notebook.note(
            "wrong-type", where, Sentence("A group of hazards and words should stand here.")
        )
        return ()
    words = []
    for written, text in values.items():
        place = replace(where, column=f"{where.column}/{written}")
        code = find_code(str(written), HAZARD_CODES)
        if code is None:
            notebook.note(
                "unknown-hazard",
                place,
                Sentence("{written} is no known hazard.", written=quote_text(written)),
            )
        elif not isinstance(text, str) or not text.strip() or len(text) > MOST_SIGNS:
            message = Sentence(
                "Words of 1 to {most_signs} characters should stand here.", most_signs=MOST_SIGNS
            )
            notebook.note("wrong-type", place, message)
        else:
            words.append(HazardWords(code, tidy_text(text, line_break=" ")))
    return tuple(sorted(words, key=lambda one: one.code))
