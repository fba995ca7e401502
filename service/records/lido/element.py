"""What the reader needs of an element: its children, its text, its language and its terms."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Protocol

NAMESPACE = "http://www.lido-schema.org"
TERMINOLOGY = "terminology.lido-schema.org/"

_LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
_SKOS_LABEL = (
    "{http://www.w3.org/2004/02/skos/core#}Concept/{http://www.w3.org/2004/02/skos/core#}prefLabel"
)
_PREFERRED_LANGUAGE = "en"
_PREFERRED = frozenset(("", "preferred", f"http://{TERMINOLOGY}lido00169"))


class Element(Protocol):
    """One element of a parsed document."""

    @property
    def text(self) -> str | None:
        """What stands before the first child."""
        ...

    def get(self, key: str) -> str | None:
        """Give an attribute by its name in Clark's notation."""
        ...

    def findall(self, path: str) -> Sequence[Element]:
        """Give the elements at a path below this one."""
        ...


@dataclass(frozen=True, slots=True)
class Block:
    """Descriptive or administrative metadata, with the language its texts are in."""

    element: Element
    language: str


def clark_name(name: str) -> str:
    """Give the name of a LIDO element or attribute in Clark's notation."""
    return f"{{{NAMESPACE}}}{name}"


@cache
def _path(steps: str) -> str:
    return "/".join(clark_name(step) for step in steps.split("/"))


def find_all(element: Element, steps: str) -> Sequence[Element]:
    """Give the LIDO elements at a path such as `titleWrap/titleSet`."""
    return element.findall(_path(steps))


def read_attribute(element: Element, name: str) -> str:
    """Read an attribute, which the schema puts into its namespace and many exports do not."""
    return (element.get(clark_name(name)) or element.get(name) or "").strip()


def read_text(element: Element) -> str:
    """Give the text of an element; line breaks and blanks of the layout become one blank."""
    return " ".join((element.text or "").split())


def read_blocks(record: Element, name: str) -> list[Block]:
    """Give the blocks of a name, English first and the others as they come."""
    blocks = [
        Block(element, element.get(_LANGUAGE) or record.get(_LANGUAGE) or "")
        for element in find_all(record, name)
    ]
    return sorted(blocks, key=lambda block: not _is_english(block.language))


def texts_in_one_language(elements: Iterable[Element], inherited: str) -> list[str]:
    """Give the texts in English, else those in the language of the first, each once."""
    spoken = [
        (element.get(_LANGUAGE) or inherited, text)
        for element in elements
        if (text := read_text(element))
    ]
    chosen = [text for language, text in spoken if _is_english(language)]
    chosen = chosen or [text for language, text in spoken if language == spoken[0][0]]
    return list(dict.fromkeys(chosen))


def first_text(elements: Iterable[Element], inherited: str) -> str:
    """Give the first text in English, else the first one."""
    return next(iter(texts_in_one_language(elements, inherited)), "")


def read_term(concept: Element, inherited: str) -> str:
    """Give the term of a concept, or its text where it has none.

    Terms that serve only searches are left out.
    """
    terms = [
        term
        for term in find_all(concept, "term")
        if read_attribute(term, "addedSearchTerm") != "yes"
    ]
    preferred = [term for term in terms if is_preferred(term)] or terms
    labels = preferred or concept.findall(_SKOS_LABEL)
    return first_text(labels, inherited) or read_text(concept)


def is_preferred(element: Element) -> bool:
    """Tell whether an element is preferred, or says nothing of it."""
    return read_attribute(element, "pref").casefold() in _PREFERRED


def _is_english(language: str) -> bool:
    return language.casefold().partition("-")[0] == _PREFERRED_LANGUAGE
