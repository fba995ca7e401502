from __future__ import annotations

from pathlib import Path

import pytest

from service.render.draw import fill_templates, parse_html
from service.render.frames.measure.specimen import (
    make_crowd,
    make_specimens,
    specimen_pages,
    specimen_pictures,
)
from service.render.frames.measure.styles import StyleReader
from service.render.task import TEMPLATES, DrawTask
from tests.render.frames import made


def asked(templates: Path) -> str:
    """Say what a title is asked for beyond a slot."""
    specimens = make_specimens([made.TITLE], made.FACE)
    crowd = make_crowd([made.TITLE], made.FACE)
    pages = specimen_pages(made.KIND, made.FACE, specimens, crowd)
    html = fill_templates(DrawTask(pages, specimen_pictures(), templates))
    reader = StyleReader(parse_html(html), templates, page_count=len(pages))
    return reader.asked(1, made.TITLE)


def test_the_shipped_templates_ask_for_nothing() -> None:
    """Every declaration of ours is one a slot keeps."""
    assert asked(TEMPLATES) == ""


CASES = {
    "by-element": (".text span { word-spacing: 1mm }", "word-spacing"),
    "later-wins": (".title { opacity: 0.5 } .title { opacity: 1 }", ""),
    "nearer-wins": (".text.title { opacity: 1 } .title { opacity: 0.5 }", ""),
    "important-wins": (".title { opacity: 1 !important } .text.title { opacity: 0 }", ""),
    "nested-media": (
        "@supports (color: red) { @media print { .title { columns: 2 } } }",
        "columns",
    ),
    "no-content": (".title::before { color: #f00 }", ""),
    "none-of-ours": (".no-such-purpose { columns: 2 }", ""),
    "static-part": (".fixed { columns: 2; letter-spacing: 1px }", ""),
    "nonsense": ("}} .title {{ : ; } .caption { columns: 2 }", ""),
    "bad-selector": (".title:no-such(1, { } ::: { columns: 2 }", ""),
}


@pytest.mark.parametrize(("css", "name"), CASES.values(), ids=CASES)
def test_the_last_word_counts(css: str, name: str, tmp_path: Path) -> None:
    """The cascade decides which declaration is heard (CSS Cascading and Inheritance 4)."""
    card = '<p class="fixed">Office</p>'
    assert asked(made.templates_with(tmp_path, css=css, card=card)) == name


def test_styles_within_a_document_and_imported_ones_are_read(tmp_path: Path) -> None:
    """A style element of a card, and a sheet that it names, even if that one names itself."""
    inside = made.templates_with(tmp_path / "a", card="<style>.title { text-indent: 2mm }</style>")
    assert asked(inside) == "text-indent"
    apart = made.templates_with(
        tmp_path / "b", card='<style>@import "underlid:print/own.css";</style>'
    )
    own = '@import "underlid:print/own.css"; .title { filter: none; rotate: 5deg }'
    (apart / "print" / "own.css").write_text(own, "utf-8")
    assert asked(apart) == "rotate"


def test_inline_styles_are_heard_last(tmp_path: Path) -> None:
    """What stands at the element itself beats a sheet, unless the sheet insists."""
    templates = made.templates_with(tmp_path, css=".title { letter-spacing: 1px }")
    blocks = templates / "print" / "parts" / "blocks.html"
    html = blocks.read_text(encoding="utf-8")
    blocks.write_text(html.replace("font-weight:", "letter-spacing:normal;font-weight:"), "utf-8")
    assert asked(templates) == ""
