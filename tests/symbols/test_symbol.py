from __future__ import annotations

import pytest

from service.errors import ModuleTooSmallError, PayloadTooLongError
from service.symbols.symbol import (
    QUIET_ZONE_MODULES,
    Level,
    Mode,
    Symbol,
    encode_symbol,
    size_symbol,
)

ADDRESS = "https://example.org/o/2024.12.3a"


@pytest.fixture
def symbol() -> Symbol:
    """A symbol of version 3: 29 modules, 37 with its quiet zone."""
    return encode_symbol(ADDRESS, level=Level.M)


def test_is_a_square_of_noughts_and_ones(symbol: Symbol) -> None:
    """Every row is as long as there are rows, and holds nothing but 0 and 1."""
    assert {len(row) for row in symbol.modules} == {symbol.side_modules} == {29}
    assert set(b"".join(symbol.modules)) == {0, 1}
    assert symbol.full_side_modules == 29 + 2 * QUIET_ZONE_MODULES


def test_short_numbers_are_no_micro_symbol() -> None:
    """The shortest text still makes a full symbol, which every telephone reads."""
    assert encode_symbol("7", level=Level.L).side_modules == 21


def test_the_same_question_is_answered_once() -> None:
    """The same text at the same level is not encoded again; another level is."""
    first = encode_symbol(ADDRESS, level=Level.M)
    assert encode_symbol(ADDRESS, level=Level.M) is first
    assert encode_symbol(ADDRESS, level=Level.Q).level is Level.Q


def test_the_level_is_never_raised() -> None:
    """A text that leaves room keeps the level asked for."""
    assert encode_symbol("HTTPS://EXAMPLE.ORG/B/00123", level=Level.M).level is Level.M


@pytest.mark.parametrize(
    ("payload", "mode"),
    [
        ("1987412", Mode.NUMERIC),
        ("1987.412.3", Mode.ALPHANUMERIC),
        ("1987.412.3a", Mode.BYTE),
        ("é1", Mode.BYTE),
        ("٣", Mode.BYTE),
        ("箱", Mode.BYTE),
    ],
)
def test_chooses_the_narrowest_mode(payload: str, mode: Mode) -> None:
    """Digits, then the 45 signs, then bytes; never Kanji, which accented letters can pass for."""
    assert encode_symbol(payload, level=Level.M).mode is mode


@pytest.mark.parametrize("number", ["", "\N{LATIN SMALL LETTER E WITH ACUTE}"])
@pytest.mark.parametrize("level", Level)
def test_refuses_what_no_symbol_holds(number: str, level: Level) -> None:
    """One byte beyond the limit the error gives length and limit; the limit itself is taken."""
    with pytest.raises(PayloadTooLongError) as trouble:
        encode_symbol(number + "a" * 3000, level=level)
    fill = "a" * (trouble.value.limit - len(number.encode()))
    assert encode_symbol(number + fill, level=level).version == 40
    with pytest.raises(PayloadTooLongError):
        encode_symbol(number + fill + "a", level=level)


@pytest.mark.parametrize(
    ("resolution_dpi", "dots", "module_mm"),
    [(203, 4, 0.5005), (300, 6, 0.508), (600, 12, 0.508), (1200, 24, 0.508)],
)
def test_roomy_spaces_get_the_wanted_module(
    symbol: Symbol, resolution_dpi: float, dots: int, module_mm: float
) -> None:
    """With room the module is the first whole number of dots not below half a millimetre."""
    size = size_symbol(symbol, space_mm=40, resolution_dpi=resolution_dpi)
    assert size.dots_per_module == dots
    assert size.module_mm == pytest.approx(module_mm, abs=0.00005)
    assert size.side_mm == pytest.approx(37 * size.module_mm)


def test_narrow_spaces_get_the_most_dots_that_fit(symbol: Symbol) -> None:
    """At 600 dpi 17 mm hold 37 modules of 10 dots, and no more."""
    size = size_symbol(symbol, space_mm=17, resolution_dpi=600)
    assert size.dots_per_module == 10
    assert size.side_mm <= 17


def test_an_exact_space_is_used_whole(symbol: Symbol) -> None:
    """A space of exactly six dots a module is not lost to rounding."""
    size = size_symbol(symbol, space_mm=37 * 6 / 300 * 25.4, resolution_dpi=300)
    assert size.dots_per_module == 6


def test_a_small_wish_stops_at_the_floor(symbol: Symbol) -> None:
    """A module below 0.40 mm is never made, even when asked for."""
    size = size_symbol(symbol, space_mm=40, resolution_dpi=600, wanted_module_mm=0.2)
    assert size.dots_per_module == 10


def test_a_large_wish_is_granted(symbol: Symbol) -> None:
    """An end label read from afar may ask for a larger module."""
    size = size_symbol(symbol, space_mm=80, resolution_dpi=600, wanted_module_mm=1.0)
    assert size.module_mm == pytest.approx(24 / 600 * 25.4)


def test_too_small_a_space_says_what_is_needed(symbol: Symbol) -> None:
    """The error gives the module that fits, the least one, and the side that would do."""
    with pytest.raises(ModuleTooSmallError) as trouble:
        size_symbol(symbol, space_mm=15, resolution_dpi=600)
    assert trouble.value.module_mm < trouble.value.least_mm
    needed_mm = trouble.value.needed_mm
    size = size_symbol(symbol, space_mm=needed_mm, resolution_dpi=600)
    assert size.side_mm == pytest.approx(needed_mm)
