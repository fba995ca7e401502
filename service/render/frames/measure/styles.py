"""Which declaration of a template's styles asks a slot for more than a mould keeps.

Read from the stylesheets with the parsers of the layout engine. This gives the words of a refusal;
whether the ink really differs is measured elsewhere, so what stands here need not know all of CSS.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias
from xml.etree.ElementTree import Element

import cssselect2
import tinycss2

from service.render.frames.frame import Look
from service.render.frames.measure.properties import is_beyond_around, is_beyond_slot

_Element: TypeAlias = Any
_Node: TypeAlias = Any
"""What the parsers give; they ship no types."""
_ADDRESS = "underlid:print/"
_CONDITIONS = frozenset({"media", "supports", "layer"})


@dataclass(frozen=True, slots=True)
class _Declared:
    """What one rule says, by the name of the property; the flag is that of `!important`."""

    values: tuple[tuple[str, str, bool], ...]


class StyleReader:
    """The styles of a filled document of specimens, the empty page first."""

    def __init__(self, root: Element, templates: Path, *, page_count: int) -> None:
        """Read every stylesheet the document names, from `templates`."""
        folder = templates / "print"
        self._unread = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*.css")}
        self._matcher = cssselect2.Matcher()
        self._root = cssselect2.ElementWrapper.from_html_root(root)
        elements = list(self._root.iter_subtree())
        for element in elements:
            self._add_sheet_of(element)
        body = next(element for element in elements if element.local_name == "body")
        children = list(body.iter_children())
        share = max(1, len(children) // page_count)
        self._pages = [children[start : start + share] for start in range(0, len(children), share)]

    def asked(self, page_number: int, look: Look) -> str:
        """Name the first property beyond a slot that page asks for its own elements, or give ""."""
        known = Counter(map(_shape_of, self._elements(0)))
        own = []
        for element in self._elements(page_number):
            if known[_shape_of(element)] > 0:
                known[_shape_of(element)] -= 1
            else:
                own.append(element)
        outer = dict.fromkeys(one for element in own for one in element.ancestors)
        beyond = [
            name
            for element in own
            for name, value in self._declared(element).items()
            if is_beyond_slot(name, value, look)
        ]
        beyond += [
            name
            for element in outer
            if element not in own
            for name, value in self._declared(element).items()
            if is_beyond_around(name, value)
        ]
        return beyond[0] if beyond else ""

    def _elements(self, page_number: int) -> Iterator[_Element]:
        for element in self._pages[page_number] if page_number < len(self._pages) else ():
            yield from element.iter_subtree()

    def _declared(self, element: _Element) -> dict[str, str]:
        """Give what an element is told, the last word on each property."""
        found: dict[str, tuple[bool, str]] = {}
        matches: list[tuple[object, object, str | None, _Declared]] = self._matcher.match(element)
        inline = _declarations(element.etree_element.get("style", ""))
        for pseudo, declared in (*((match[2], match[3]) for match in matches), (None, inline)):
            for name, value, is_important in declared.values:
                said = _pseudo_name(pseudo, name) if pseudo else name
                if is_important or not found.get(said, (False, ""))[0]:
                    found[said] = (is_important, value)
        return {name: value for name, (_, value) in found.items() if name != "::"}

    def _add_sheet_of(self, element: _Element) -> None:
        entry = element.etree_element
        if element.local_name == "style":
            self._add_sheet(entry.text or "")
        elif element.local_name == "link" and entry.get("rel") == "stylesheet":
            self._add_file(entry.get("href", ""))

    def _add_file(self, address: str) -> None:
        """Add a sheet of ours, once; anything else the engine refuses by itself."""
        path = self._unread.pop(address.removeprefix(_ADDRESS), None)
        if path is not None:
            self._add_sheet(path.read_text(encoding="utf-8"))

    def _add_sheet(self, css: str) -> None:
        self._add_rules(tinycss2.parse_stylesheet(css))

    def _add_rules(self, rules: Sequence[_Node]) -> None:
        for rule in rules:
            if rule.type == "at-rule":
                self._add_at_rule(rule)
            elif rule.type == "qualified-rule":
                declared = _declarations(rule.content)
                for selector in _selectors(rule.prelude):
                    self._matcher.add_selector(selector, declared)

    def _add_at_rule(self, rule: _Node) -> None:
        if rule.lower_at_keyword in _CONDITIONS and rule.content is not None:
            self._add_rules(tinycss2.parse_rule_list(rule.content))
        elif rule.lower_at_keyword == "import":
            for token in rule.prelude:
                if token.type in {"string", "url"}:
                    self._add_file(token.value)


def _selectors(prelude: _Node) -> Sequence[_Node]:
    try:
        selectors: Sequence[_Node] = cssselect2.compile_selector_list(prelude)
    except cssselect2.SelectorError:
        return ()  # The engine complains of it by itself.
    return selectors


def _declarations(content: _Node) -> _Declared:
    return _Declared(
        tuple(
            (node.lower_name, _plain(tinycss2.serialize(node.value)), bool(node.important))
            for node in tinycss2.parse_blocks_contents(content)
            if node.type == "declaration"
        )
    )


def _plain(value: str) -> str:
    return " ".join(value.replace('"', "").replace("'", "").lower().split())


def _pseudo_name(pseudo: str, name: str) -> str:
    """Name what a pseudo-element adds; one before or after a slot is there for content alone."""
    is_box = pseudo in {"before", "after"}
    return f"::{pseudo}" if name == "content" or not is_box else "::"


def _shape_of(element: _Element) -> tuple[object, ...]:
    entry = element.etree_element
    return (entry.tag, *sorted(entry.items()), (entry.text or "").strip())
