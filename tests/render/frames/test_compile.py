from __future__ import annotations

from pathlib import Path

import pytest

from service.cards.kinds import CARD_KINDS
from service.errors import AssetError, EngineComplaintError, SlotRefusedError
from service.geometry import Size
from service.render.frames.compile import FrameTask, compile_frame
from service.render.frames.frame import Colour, Look, Mould, TextLook
from service.render.frames.looks import looks_in
from service.render.frames.versions import frames_sha256
from service.render.worker import Workers
from tests.render.frames import made

pytestmark = [pytest.mark.print, pytest.mark.slow]
BLACK: Colour = (0.0, 0.0, 0.0)
BLUE: Colour = (0.0, 0.0, 1.0)
LINE = 0x77 / 255
# What tokens.css says, by hand.
MOULDS: dict[str, tuple[Look, Mould]] = {
    "black-text": (made.TITLE, Mould(BLACK)),
    "grey-text": (TextLook("caption", "grey"), Mould((1 / 3, 1 / 3, 1 / 3))),
    "white-text": (TextLook("tag", "white"), Mould((1.0, 1.0, 1.0))),
    "photo": (made.PHOTO, Mould(None, (LINE, LINE, LINE), 0.15)),
    "no-photo": (made.NO_PHOTO, Mould(None, (LINE, LINE, LINE), 0.2)),
    "panel": (made.PANEL, Mould((0xEC / 255, 0xEC / 255, 0xEC / 255), BLACK)),
    "symbol": (made.SYMBOL, Mould(BLACK)),
    "mark": (made.MARK, Mould()),
}


@pytest.mark.parametrize(("look", "mould"), MOULDS.values(), ids=MOULDS)
def test_moulds_are_what_the_stylesheet_says(look: Look, mould: Mould, workers: Workers) -> None:
    """Colours and lines measured from the ink are those written in the styles."""
    frame = made.frame_of(workers)
    found = frame.moulds[look]
    assert found.ink == pytest.approx(mould.ink, abs=1e-5)
    assert found.line == pytest.approx(mould.line, abs=1e-5)
    assert found.line_mm == mould.line_mm
    assert frame.sha256 == frames_sha256()
    assert frame.statics[made.FACE].operators == b""


def test_a_style_of_ones_own_is_measured(tmp_path: Path, workers: Workers) -> None:
    """Colours by purpose and lines of another width go into the moulds."""
    css = """.title { color: #00f } .panel { background: #0f0; border-color: #00f !important }
    .picture img { outline: 0.4mm solid #00f } .picture .none { border: 0.5mm dashed #00f }
    """
    moulds = made.frame_of(workers, made.templates_with(tmp_path, css=css)).moulds
    assert moulds[made.TITLE] == Mould(BLUE)
    assert moulds[TextLook("caption", "grey")].ink != BLUE
    assert moulds[made.PHOTO] == Mould(None, BLUE, 0.4)
    assert moulds[made.NO_PHOTO] == Mould(None, BLUE, 0.5)
    assert moulds[made.PANEL] == Mould((0.0, 1.0, 0.0), BLUE)


ASKED = {
    "letter-spacing": ".title { letter-spacing: 0.2mm }",
    "word-spacing": ".title { word-spacing: 1mm }",
    "text-transform": ".title { text-transform: uppercase }",
    "text-decoration": ".title { text-decoration: underline }",
    "text-shadow": ".title { text-shadow: 1px 1px #000 }",
    "text-indent": ".title { text-indent: 2mm }",
    "transform": ".title { transform: rotate(5deg) }",
    "opacity": ".title { opacity: 0.5 }",
    "filter": ".title { filter: blur(1px) }",
    "background": ".title { background: #eee }",
    "background-color": ".title span { background-color: #eee }",
    "padding": ".title { padding: 0 0 0 2mm }",
    "padding-left": ".title span { padding-left: 2mm }",
    "margin": ".title { margin: 1mm }",
    "margin-top": ".title span { margin-top: 1mm }",
    "font": ".title { font: 12pt serif }",
    "font-family": '.title { font-family: "Noto Sans" }',
    "font-style": ".title { font-style: italic }",
    "font-variant": ".title { font-variant: small-caps }",
    "font-feature-settings": '.title { font-feature-settings: "zero" 1 }',
    "hyphens": ".title { hyphens: auto }",
    "columns": ".title { columns: 2 }",
    "writing-mode": ".title { writing-mode: vertical-rl }",
    "clip-path": ".title { clip-path: circle(2mm) }",
    "border": ".title { border: 1px solid #000 }",
    "vertical-align": ".title span { vertical-align: 1mm }",
    "::before": '.title::before { content: "No. " }',
    "::after": '.title span:after { content: "." }',
    "::first-letter": ".title::first-letter { color: #f00 }",
}


@pytest.mark.parametrize(("name", "css"), ASKED.items(), ids=ASKED)
def test_what_a_slot_cannot_keep_is_refused_by_name(
    name: str, css: str, tmp_path: Path, workers: Workers
) -> None:
    """The refusal names the template, the slot and the property."""
    with pytest.raises(SlotRefusedError) as caught:
        made.frame_of(workers, made.templates_with(tmp_path, css=css))
    refused = caught.value
    assert refused.template == "lid-card/card.html"
    assert refused.element == "text 'title'"
    assert refused.property_name == name


REACHING = {
    "inherited": ("text 'caption'", "letter-spacing", "body { letter-spacing: 1px }"),
    "around": ("text 'caption'", "opacity", ".lid-card { opacity: 0.9 }"),
    "important": ("text 'title'", "font-style", ".title { font-style: italic !important }"),
    "media": ("text 'title'", "hyphens", "@media print { .title { hyphens: auto } }"),
    "far-line": ("picture 'photo'", "outline-offset", ".picture img { outline-offset: 1mm }"),
    "picture": ("picture 'photo'", "border-radius", ".picture img { border-radius: 2mm }"),
    "shape": ("shape 'panel'", "box-shadow", ".panel { box-shadow: 1px 1px #000 }"),
    "symbol": ("symbol 'symbol'", "background", ".symbol { background: #ff0 }"),
    "mark": ("mark 'mark'", "transform", ".mark img { transform: rotate(9deg) }"),
}


@pytest.mark.parametrize(("element", "name", "css"), REACHING.values(), ids=REACHING)
def test_a_style_is_found_wherever_it_stands(
    element: str, name: str, css: str, tmp_path: Path, workers: Workers
) -> None:
    """Inherited, important, conditional and of every kind of slot."""
    with pytest.raises(SlotRefusedError) as caught:
        made.frame_of(workers, made.templates_with(tmp_path, css=css))
    assert (caught.value.element, caught.value.property_name) == (element, name)


DRAWN = {
    "two-colours": (".title span:nth-child(2) { color: #f00 }", "several colours"),
    "by-alignment": (".title.centre { color: #f00 }", "inked differently"),
    "by-direction": ('.title[dir="rtl"] { color: #f00 }', "inked differently"),
    "hidden": (".title { display: none }", "not drawn at all"),
    "see-through": (".title { color: rgb(0 0 0 / 50%) }", "not opaque"),
    "other-colours": (".title { color: device-cmyk(0 1 0 0) }", "red, green and blue"),
    "solid-frame": (".picture .none { border-style: solid }", "an outline is drawn"),
    "no-even-line": (".picture img { outline-style: dashed }", "even line"),
    "double-line": (".picture img { outline: 1mm double #000 }", "area with holes"),
    "other-dashes": (".picture .none { border-style: dotted }", "one dashed line"),
    "shape-dashed": (".panel { border-style: dashed !important }", "as the page asks"),
    "inner-border": (".picture img { border: 1mm solid #000 }", "at its place"),
    "shaded": (".panel { background: linear-gradient(#000, #fff) }", "shaded|group|blue"),
}


@pytest.mark.parametrize(("css", "reason"), DRAWN.values(), ids=DRAWN)
def test_ink_no_mould_can_say_is_refused(
    css: str, reason: str, tmp_path: Path, workers: Workers
) -> None:
    """Where the properties are allowed ones, their ink is looked at."""
    with pytest.raises(SlotRefusedError, match=reason):
        made.frame_of(workers, made.templates_with(tmp_path, css=css))


# Nothing here is known to the reader of styles, or its property is an allowed one.
OTHERWISE = {
    "shifted-lines": (".title { line-height: 9mm !important }", "text 'title'"),
    "other-size": (".caption { font-size: 20pt !important }", "text 'caption'"),
    "other-weight": (".caption { font-weight: 800 !important }", "text 'caption'"),
    "moved": (".symbol { left: 1mm !important }", "symbol 'symbol'"),
    "smaller": (".mark img { width: 90% }", "mark 'mark'"),
    "no-filling": (".panel { background: none }", None),
    "by-neighbours": (".shape + .shape { background: #f00 !important }", "shape"),
}


@pytest.mark.parametrize(("css", "element"), OTHERWISE.values(), ids=OTHERWISE)
def test_what_no_rule_foresaw_is_seen_in_the_ink(
    css: str, element: str | None, tmp_path: Path, workers: Workers
) -> None:
    """A page that the engine draws otherwise than its plate is refused, no other."""
    templates = made.templates_with(tmp_path, css=css)
    if element is None:
        assert made.frame_of(workers, templates).moulds[made.PANEL].ink is None
        return
    with pytest.raises(SlotRefusedError, match=r"otherwise|place") as caught:
        made.frame_of(workers, templates)
    assert caught.value.element.startswith(element)


def test_fixed_ink_above_a_slot_is_refused(tmp_path: Path, workers: Workers) -> None:
    """A plate has the fixed ink beneath; a template that has it above hides a slot."""
    place = "position:absolute;z-index:9;left:0;top:0;width:100%;height:100%"
    cover = f'<div style="{place};background:#fff"></div>'
    with pytest.raises(SlotRefusedError, match="otherwise"):
        made.frame_of(workers, made.templates_with(tmp_path, card=cover))


@pytest.mark.parametrize("size", [Size(60, 30), Size(297, 210)], ids=["label", "sheet"])
def test_a_frame_holds_on_faces_of_all_sizes(size: Size, workers: Workers) -> None:
    """The same moulds are measured on a small label and on a large card."""
    task = FrameTask(made.KIND, size, frozenset(made.LOOKS))
    frame = made.first(workers.run(compile_frame, [task]))
    assert frame.moulds == made.frame_of(workers).moulds
    assert set(frame.statics) == {size}


def test_known_moulds_are_held_against_a_new_size(tmp_path: Path, workers: Workers) -> None:
    """A mould of one size that is wrong on another is found among the crowd."""
    style = "<style>.title { color: #f00 }</style>"
    card = f"{{% if page.size.width_mm > 200 %}}{style}{{% endif %}}"
    templates = made.templates_with(tmp_path, card=card)
    small = made.frame_of(workers, templates)
    task = FrameTask(made.KIND, Size(297, 210), frozenset(made.LOOKS), small.moulds, templates)
    with pytest.raises(SlotRefusedError, match="otherwise"):
        made.first(workers.run(compile_frame, [task]))


def test_words_of_the_engine_stay_its_own(tmp_path: Path, workers: Workers) -> None:
    """What the engine does not know, or may not load, is no matter of slots."""
    unknown = made.templates_with(tmp_path / "a", css=".page { colour: red }")
    with pytest.raises(EngineComplaintError):
        made.frame_of(workers, unknown)
    elsewhere = made.templates_with(
        tmp_path / "b", css=".page { background: url(https://a.example/x.png) }"
    )
    with pytest.raises(AssetError):
        made.frame_of(workers, elsewhere)


@pytest.mark.timeout(300)
@pytest.mark.parametrize("kind", [kind.code for kind in CARD_KINDS])
def test_every_look_of_the_demo_is_drawn_as_its_plate(kind: str, workers: Workers) -> None:
    """The engine and the filler agree, glyph for glyph, on all cards of the demo."""
    pages = [page for page in made.demo_pages() if page.kind == kind]
    photos = {block.photo for page in pages for block in page.blocks if hasattr(block, "photo")}
    looks = frozenset(looks_in(pages, photos) | looks_in(pages, ()))
    task = FrameTask(kind, pages[0].size, looks)
    frame = made.first(workers.run(compile_frame, [task]))
    assert frame.moulds.keys() == looks
