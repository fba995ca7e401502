"""A sentence that remembers how it was made, so that a page can say it in another language."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Self

_PLACEHOLDER = re.compile(r"\{\w+[^{}]*\}")


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
        if isinstance(english, cls) and not values:
            return english
        sentence = super().__new__(cls, english.format(**values) if values else english)
        sentence.template, sentence.values = english, values
        return sentence

    def __reduce__(self) -> tuple[Callable[..., Sentence], tuple[object, ...]]:
        """Go to another process with the same text, and with values as it reads them."""
        plain = {name: _as_plain(value) for name, value in self.values.items()}
        return _restore, (str(self), self.template, plain)


def join_sentences(*sentences: str) -> Sentence:
    """Put sentences one after another; each is said in another language by itself."""
    parts = {f"part_{at}": Sentence(each) for at, each in enumerate(filter(None, sentences))}
    return Sentence(" ".join(f"{{{name}}}" for name in parts), **parts)


def take_apart(text: str) -> object:
    """Give a sentence as data that JSON keeps: its text, its template and its values, apart too.

    Any other text is given as it is.
    """
    if isinstance(text, Sentence):
        values = {
            name: take_apart(value) if isinstance(value, str) else _as_plain(value)
            for name, value in text.values.items()
        }
        return {"text": str(text), "template": text.template, "values": values}
    return str(text)


def put_together(data: object) -> Sentence:
    """Make a sentence of what `take_apart` gave."""
    if not isinstance(data, dict):
        return Sentence(str(data))
    values = {
        name: put_together(value) if isinstance(value, dict) else value
        for name, value in data["values"].items()
    }
    return _restore(data["text"], data["template"], values)


def has_words(template: str) -> bool:
    """Tell whether a template says anything besides its values."""
    return any(letter.isalpha() for letter in _PLACEHOLDER.sub("", template))


def _restore(text: str, template: str, values: Mapping[str, object]) -> Sentence:
    sentence = Sentence(text)
    sentence.template, sentence.values = template, values
    return sentence


def _as_plain(value: object) -> object:
    """Keep what any process can read again and write as it was written."""
    return value if isinstance(value, str | int | float) else str(value)
