from __future__ import annotations

import pikepdf
import pytest
from pikepdf import Dictionary, Name

from service.render.frames.measure.ink import Inked, read_ink

BLACK = (0.0, 0.0, 0.0)
RED = (1.0, 0.0, 0.0)
# A face of one inch: 72 points are 25.4 mm.


def states() -> Dictionary:
    """Give graphics states by name: some opaque, some not."""
    return Dictionary(
        a1=Dictionary(ca=1, CA=1),
        half=Dictionary(ca=0.5),
        half_line=Dictionary(CA=0.5),
        mask=Dictionary(SMask=Dictionary(S=Name.Luminosity)),
        no_mask=Dictionary(SMask=Name.None_, BM=Name.Normal),
        darken=Dictionary(BM=Name.Darken),
    )


def ink_of(content: str) -> tuple[Inked, ...]:
    """Read a page of these operators."""
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(72, 72))
        image = pdf.make_stream(b"\0", Type=Name.XObject, Subtype=Name.Image, Width=1, Height=1)
        form = pdf.make_stream(b"", Type=Name.XObject, Subtype=Name.Form, BBox=[0, 0, 1, 1])
        page.Resources = Dictionary(ExtGState=states(), XObject=Dictionary(Im=image, Fm=form))
        page.Contents = pdf.make_stream(content.encode())
        return read_ink(page)


CASES: dict[str, tuple[str, Inked]] = {
    "fill": ("1 0 0 rg 0 36 18 36 re f", Inked("fill", RED, (0.0, 0.0, 6.35, 12.7))),
    "grey": ("0.5 g 0 0 72 72 re f", Inked("fill", (0.5, 0.5, 0.5), (0.0, 0.0, 25.4, 25.4))),
    "even-odd": ("0 0 72 72 re f*", Inked("fill", BLACK, (0.0, 0.0, 25.4, 25.4))),
    "moves-alone": (
        "0 0 m 36 36 m 72 36 l 72 72 l f*",
        Inked("fill", BLACK, (12.7, 0.0, 25.4, 12.7)),
    ),
    "hollow": (
        "0 0 72 72 re 9 9 9 9 re f*",
        Inked("hollow", BLACK, (0.0, 0.0, 25.4, 25.4)),
    ),
    "pierced": (
        "0 0 72 72 re 9 9 9 9 re 18 18 9 9 re f*",
        Inked("pierced", BLACK, (0.0, 0.0, 25.4, 25.4)),
    ),
    "stroke": (
        "q 2 0 0 2 0 0 cm 1 0 0 RG 3.6 w 0 0 m 36 36 l S Q",
        Inked("stroke", RED, (0.0, 0.0, 25.4, 25.4), 2.54),
    ),
    "dashes": (
        "[3 3] 0 d 1 w 0 0 m 72 0 l S",
        Inked("stroke", BLACK, (0.0, 25.4, 25.4, 25.4), 0.353, is_dashed=True),
    ),
    "dots": (
        "[0 3] 0 d 1 w 0 0 m 72 0 l S",
        Inked("stroke", BLACK, (0.0, 25.4, 25.4, 25.4), 0.353),
    ),
    "cut-up": (
        "q 0 0 9 9 re 18 0 9 9 re W n 0 0 72 72 re f Q",
        Inked("fill", BLACK, (0.0, 0.0, 25.4, 25.4), is_dashed=True),
    ),
    "text": ("1 0 0 rg BT [<0001> -5 <0002>] TJ ET", Inked("text", RED, codes=b"\0\1\0\2")),
    "picture": (
        "q 36 0 0 18 18 0 cm /Im Do Q",
        Inked("picture", BLACK, (6.35, 19.05, 19.05, 25.4)),
    ),
    "opaque": ("/a1 gs /no_mask gs 0 0 72 72 re f", Inked("fill", BLACK, (0.0, 0.0, 25.4, 25.4))),
}


@pytest.mark.parametrize(("content", "mark"), CASES.values(), ids=CASES)
def test_a_mark_of_ink_is_read(content: str, mark: Inked) -> None:
    """Manner, colour, box and width are those the operators say (ISO 32000-1, 8 and 9)."""
    assert ink_of(content) == (mark,)


REASONS = {
    "see-through": ("/half gs 0 0 9 9 re f", "opaque"),
    "see-through-line": ("/half_line gs 0 0 m 9 9 l S", "opaque"),
    "masked": ("/mask gs 0 0 9 9 re f", "opaque"),
    "blended": ("/darken gs 0 0 9 9 re f", "opaque"),
    "four-colours": ("0 1 0 0 k 0 0 9 9 re f", "red, green and blue"),
    "colour-space": ("/cs cs 0.5 scn 0 0 9 9 re f", "red, green and blue"),
    "group": ("/Fm Do", "group"),
    "inline-picture": ("BI /W 1 /H 1 /BPC 8 /CS /G ID x EI", "group"),
    "shading": ("/Sh sh", "shaded"),
}


@pytest.mark.parametrize(("content", "reason"), REASONS.values(), ids=REASONS)
def test_ink_a_plate_could_not_repeat_has_its_reason(content: str, reason: str) -> None:
    """What is not plain ink says why."""
    (mark,) = ink_of(content)
    assert reason in mark.reason


def test_a_state_ends_where_it_was_saved() -> None:
    """Colours and veils do not outlive their q and Q."""
    first, second = ink_of("q 1 0 0 rg /half gs 0 0 9 9 re f Q 0 0 9 9 re f")
    assert first.reason
    assert second == Inked("fill", BLACK, (0.0, 22.225, 3.175, 25.4))
