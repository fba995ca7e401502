"""What holds for every stock, however many pages, wherever the sheet begins."""

from __future__ import annotations

from itertools import combinations, pairwise

from hypothesis import assume, given
from hypothesis import strategies as st

from service.geometry import Rect, Size
from service.sheets.impose import Face, Sheet, impose_pages
from service.sheets.stock import Medium, Stock

lengths = st.integers(1, 120).map(lambda tenths: tenths / 2)
gaps = st.integers(0, 40).map(lambda tenths: tenths / 4)


@st.composite
def stocks(draw: st.DrawFn) -> Stock:
    """Draw a sheet that can exist: labels, gaps and margins first, the page around them."""
    label = Size(draw(lengths), draw(lengths))
    columns, rows = draw(st.integers(1, 5)), draw(st.integers(1, 5))
    gap_x_mm, gap_y_mm, left_mm, top_mm = (draw(gaps) for _ in range(4))
    pitch_x_mm, pitch_y_mm = label.width_mm + gap_x_mm, label.height_mm + gap_y_mm
    return Stock(
        name="drawn",
        page=Size(
            left_mm + columns * pitch_x_mm + draw(gaps),
            top_mm + rows * pitch_y_mm + draw(gaps),
        ),
        columns=columns,
        rows=rows,
        label=label,
        pitch_x_mm=pitch_x_mm,
        pitch_y_mm=pitch_y_mm,
        left_mm=left_mm,
        top_mm=top_mm,
        radius_mm=0.0,
        medium=draw(st.sampled_from(Medium)),
    )


@st.composite
def part_used(draw: st.DrawFn) -> tuple[Stock, int, frozenset[int]]:
    """Draw a stock, a start position and spoiled positions that leave one free."""
    stock = draw(stocks())
    positions = st.integers(1, stock.positions)
    start_position, skipped = draw(positions), draw(st.frozensets(positions, max_size=6))
    assume(not set(range(start_position, stock.positions + 1)) <= skipped)
    return stock, start_position, skipped


@st.composite
def faces_for(draw: st.DrawFn, stock: Stock) -> list[Face]:
    """Draw faces that fit a stock, upright or turned, each with a key of its own."""
    shares = st.floats(0.2, 1.0)
    faces = []
    for number in range(draw(st.integers(0, 30))):
        size = Size(stock.label.width_mm * draw(shares), stock.label.height_mm * draw(shares))
        is_turned = draw(st.booleans())
        faces.append(Face(f"p{number}", size.turned if is_turned else size))
    return faces


@given(st.data(), part_used(), st.integers(1, 3))
def test_every_page_lies_where_it_should(
    data: st.DataObject, used: tuple[Stock, int, frozenset[int]], copies: int
) -> None:
    """Each page is there as often as asked, in order, at a free position, inside its label."""
    stock, start_position, skipped = used
    faces = data.draw(faces_for(stock))
    sheets = impose_pages(
        faces, stock, start_position=start_position, skipped=skipped, copies=copies
    )
    keys = [place.key for sheet in sheets for place in sheet.placements]
    assert keys == [face.key for face in faces for _ in range(copies)]
    assert [sheet.number for sheet in sheets] == list(range(1, len(sheets) + 1))
    for sheet in sheets:
        _positions_are_filled(sheet, start_position, skipped, is_last=sheet is sheets[-1])
        _rects_lie_apart_and_inside(sheet)
    sizes = {face.key: face.size for face in faces}
    for sheet in sheets:
        for place in sheet.placements:
            size = sizes[place.key]
            assert place.rect.size == (size if place.turned_deg == 0 else size.turned)


def _positions_are_filled(
    sheet: Sheet, start_position: int, skipped: frozenset[int], *, is_last: bool
) -> None:
    """The free positions are used without a gap, and all of them on every sheet but the last."""
    free = list(range(1, sheet.stock.positions + 1))
    if sheet.number == 1:
        free = [n for n in free if n >= start_position and n not in skipped]
    positions = [place.position for place in sheet.placements]
    assert positions == free[: len(positions)]
    assert positions
    assert is_last or positions == free


def _rects_lie_apart_and_inside(sheet: Sheet) -> None:
    """No page overlaps another, and each lies in the middle of its label on the page."""
    page = Rect(0, 0, sheet.stock.page.width_mm, sheet.stock.page.height_mm)
    for place in sheet.placements:
        label = sheet.stock.position_rect(place.position)
        assert label.holds(place.rect)
        assert page.holds(place.rect)
        left_mm = place.rect.x_mm - label.x_mm
        assert abs(left_mm - (label.right_mm - place.rect.right_mm)) < 0.001
    for one, other in combinations(sheet.placements, 2):
        assert not one.rect.overlaps(other.rect)


@given(st.data(), stocks())
def test_marks_cut_waste_only(data: st.DataObject, stock: Stock) -> None:
    """Marks lie where the printer reaches, run through no card, and none comes twice."""
    for sheet in impose_pages(data.draw(faces_for(stock)), stock):
        for mark in sheet.marks:
            assert stock.printable_rect().holds(mark.bounds)
            for place in sheet.placements:
                assert not place.rect.overlaps(mark.bounds)
        assert len(set(sheet.marks)) == len(sheet.marks)
        assert (sheet.marks == ()) or stock.medium is Medium.CARD


@given(st.lists(st.integers(1, 40), min_size=2), stocks())
def test_a_run_goes_on_where_it_stopped(counts: list[int], stock: Stock) -> None:
    """Beginning a run behind the last used position fills the sheet as one run would have done."""
    size = stock.label
    together = impose_pages([Face("x", size)] * sum(counts), stock)
    used: list[int] = []
    next_position = 1
    for count in counts:
        sheets = impose_pages([Face("x", size)] * count, stock, start_position=next_position)
        used += [place.position for sheet in sheets for place in sheet.placements]
        next_position = used[-1] % stock.positions + 1
    assert used == [place.position for sheet in together for place in sheet.placements]
    assert all(b == a % stock.positions + 1 for a, b in pairwise(used))
