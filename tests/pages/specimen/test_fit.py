from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import MarkBlock, Page, TextBlock
from service.pages.specimen.fit import fit_specimen
from service.symbols.pictograms import Family, Pictogram, Status
from tests.pages.fake_ruler import FakeRuler

A4, LETTER = Size(210.0, 297.0), Size(215.9, 279.4)
MEANING = "Something here can hurt, as the words beside the mark say."


def made(**counts: int) -> list[Pictogram]:
    """Give so many marks of each family."""
    return [
        Pictogram(f"{family}-{n}", f"{family} {n}", MEANING, Family(family), "own", Status.DRAFT)
        for family, number in counts.items()
        for n in range(number)
    ]


def texts(pages: Sequence[Page], purpose: str) -> list[str]:
    """Give the whole texts of a purpose, page by page."""
    return [
        block.whole
        for page in pages
        for block in page.blocks
        if isinstance(block, TextBlock) and block.purpose == purpose
    ]


@pytest.mark.parametrize("size", [A4, LETTER], ids=["A4", "Letter"])
def test_every_mark_is_there_once_in_its_order(size: Size) -> None:
    """Fifty marks take several pages; each page says which it is and what marks are not."""
    pictograms = made(warning=31, handling=18, panel=1)
    pages = fit_specimen(pictograms, size, FakeRuler())
    assert texts(pages, "words") == [pictogram.words for pictogram in pictograms]
    numbered = [f"50 marks · page {number} of {len(pages)}" for number in range(1, len(pages) + 1)]
    assert texts(pages, "page") == numbered
    assert len(pages) > 1
    for page in pages:
        assert "None is a conforming sign" in " ".join(texts([page], "note"))


@pytest.mark.parametrize("size", [A4, LETTER], ids=["A4", "Letter"])
def test_nothing_lies_on_anything_else(size: Size) -> None:
    """Marks and words keep clear of each other and stay between head and foot."""
    for page in fit_specimen(made(warning=31, chemical=9), size, FakeRuler()):
        foot_mm = min(block.rect.y_mm for block in page.blocks if block.purpose == "note")
        head_mm = max(block.rect.bottom_mm for block in page.blocks if block.purpose == "sizes")
        rects = [
            block.rect
            for block in page.blocks
            if block.purpose in {"mark", "words", "meaning", "facts", "family"}
        ]
        assert all(head_mm < rect.y_mm and rect.bottom_mm < foot_mm for rect in rects)
        for number, one in enumerate(rects):
            for other in rects[number + 1 :]:
                apart = one.right_mm <= other.x_mm or other.right_mm <= one.x_mm
                assert apart or one.bottom_mm <= other.y_mm or other.bottom_mm <= one.y_mm


def test_a_family_begins_a_row_under_its_heading() -> None:
    """Each family is named once, and its first mark stands at the left below the name."""
    (page,) = fit_specimen(made(warning=1, prohibition=3, mandatory=2), A4, FakeRuler())
    heads = [block for block in page.blocks if block.purpose == "family"]
    said = [head.whole.split(":")[0] for head in heads if isinstance(head, TextBlock)]
    assert said == ["Warning", "Prohibition", "Mandatory"]
    for head, code in zip(heads, ["warning-0", "prohibition-0", "mandatory-0"], strict=True):
        first = next(b for b in page.blocks if isinstance(b, MarkBlock) and b.mark == code)
        assert first.rect.x_mm == head.rect.x_mm
        assert head.rect.bottom_mm < first.rect.y_mm


def test_a_family_that_goes_on_is_named_again() -> None:
    """At the top of the next page stands whose marks these are."""
    pages = fit_specimen(made(warning=31), A4, FakeRuler())
    assert [len(texts([page], "family")) for page in pages] == [1] * len(pages)
    first, *others = texts(pages, "family")
    assert others
    assert set(others) == {f"{first} (continued)"}


def test_how_far_marks_carry_is_said_rounded_down() -> None:
    """ISO 3864-1, Z = 100: triangles 17.1, 10.2 and 6.8 mm high carry 1.7, 1.0 and 0.6 m."""
    pages = fit_specimen(made(warning=1), A4, FakeRuler())
    (said,) = texts(pages, "sizes")
    assert "20, 12 and 8 mm wide" in said
    assert "about 1.7, 1.0 and 0.6 m" in said


def test_a_row_that_no_page_holds_is_told() -> None:
    """A meaning longer than a page is an error, not a page that runs over."""
    (one,) = made(warning=1)
    with pytest.raises(DoesNotFitError, match="row"):
        fit_specimen([replace(one, meaning=MEANING * 60)], A4, FakeRuler())
