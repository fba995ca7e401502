"""The mark of every word that is printed: whatever it gives stands in the catalogue of translators.

`service/languages/printed_words.py` finds the marks in the code. Words of handling that tables hold
need none: the catalogue has them from the tables.
"""

from __future__ import annotations

from service.sentence import Sentence


def to_print(english: str, /, **values: object) -> str:
    """Give English words as they are printed, with values in the places that name them.

    `english` must be written out where it is marked: the catalogue is made by reading, not running.
    """
    return Sentence(english, **values)
