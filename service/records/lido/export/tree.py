"""Building an element of a LIDO file; what XML cannot hold becomes the replacement character."""

from __future__ import annotations

import re
from typing import TypeAlias
from xml.etree import ElementTree as ET

Tree: TypeAlias = ET.Element
PREFIX = "lido"

# What may stand in a document (XML 1.0, fifth edition, production 2).
_UNWRITABLE = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def start(name: str) -> Tree:
    """Start an element that stands in no other."""
    return ET.Element(f"{PREFIX}:{name}")


def add(parent: Tree, steps: str, text: str = "", *, kind: str = "") -> Tree:
    """Add an element, within those of a path such as `titleWrap/titleSet`; give the innermost."""
    element = parent
    for step in steps.split("/"):
        element = ET.SubElement(element, f"{PREFIX}:{step}")
    if text:
        element.text = _UNWRITABLE.sub("\N{REPLACEMENT CHARACTER}", text)
    if kind:
        element.set(f"{PREFIX}:type", kind)
    return element


def set_language(element: Tree, language: str) -> None:
    """Say in which language the texts of an element are."""
    element.set("xml:lang", language)


def to_bytes(element: Tree) -> bytes:
    """Write an element and what stands in it as UTF-8."""
    return ET.tostring(element, encoding="unicode").encode()
