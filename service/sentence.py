"""A sentence that remembers how it was made, so that a page can say it in another language."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Self


class Sentence(str):
    """English text made of a template and values; it is that text for whoever does not translate.

    A value that is a sentence itself is said in the other language too, any other as it stands.

    Attributes:
        template: The English words with `{placeholders}`, by which catalogues know them.
        values: What stands in the places.
    """

    __slots__ = ("template", "values")

    template: str
    values: Mapping[str, object]

    def __new__(cls, english: str, /, **values: object) -> Self:
        """Fill a template; without values its braces stay.

        `english` must be written out where it is used: the catalogue is made by reading, not
        running.
        """
        sentence = super().__new__(cls, english.format(**values) if values else english)
        sentence.template, sentence.values = english, values
        return sentence
