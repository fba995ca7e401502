"""A QR symbol as a matrix, and how large it is printed.

Model 2 symbols only (ISO/IEC 18004): many telephones do not read Micro QR. The error correction
level is the one asked for, never raised silently, so that a symbol's size can be foretold.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

import segno

from service.errors import ModuleTooSmallError, PayloadTooLongError
from service.units import dots_from_mm, mm_from_dots

QUIET_ZONE_MODULES = 4
"""Clear margin on each side (ISO/IEC 18004; restated in GS1 General Specifications 5.12.3.1)."""

LEAST_DOTS = 4
"""Printer dots of one module, at least: published guidance of the symbol's inventor."""

LEAST_MODULE_MM = 0.40
"""Below this telephones at hand distance fail too often: common practice, guides disagree."""

WANTED_MODULE_MM = 0.50
"""Common practice for telephones at hand distance, no source."""

ALPHANUMERIC = frozenset("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:")
"""The 45 signs that take 5.5 bits each (ISO/IEC 18004, alphanumeric mode)."""


class Level(StrEnum):
    """Error correction: the share of codewords that may be lost (ISO/IEC 18004)."""

    L = "L"
    """About 7 %."""
    M = "M"
    """About 15 %: cards."""
    Q = "Q"
    """About 25 %: what gets rubbed."""
    H = "H"
    """About 30 %."""


class Mode(StrEnum):
    """How the text is written into the symbol; the values are segno's."""

    NUMERIC = "numeric"
    ALPHANUMERIC = "alphanumeric"
    BYTE = "byte"


_KEPT_SYMBOLS = 256
"""A fit asks for the same symbol several times, and trying its masks takes milliseconds."""

# The most a symbol holds, version 40: digits, alphanumeric signs, bytes (ISO/IEC 18004).
_LIMITS = {
    Level.L: {Mode.NUMERIC: 7089, Mode.ALPHANUMERIC: 4296, Mode.BYTE: 2953},
    Level.M: {Mode.NUMERIC: 5596, Mode.ALPHANUMERIC: 3391, Mode.BYTE: 2331},
    Level.Q: {Mode.NUMERIC: 3993, Mode.ALPHANUMERIC: 2420, Mode.BYTE: 1663},
    Level.H: {Mode.NUMERIC: 3057, Mode.ALPHANUMERIC: 1852, Mode.BYTE: 1273},
}

# The mark that says "UTF-8" (extended channel interpretation 26) takes 12 bits, so two bytes.
_ECI_BYTES = 2


@dataclass(frozen=True, slots=True)
class Symbol:
    """A QR symbol without its quiet zone.

    Attributes:
        payload: The text it holds.
        level: Its error correction.
        mode: How the text is written.
        version: 1 to 40.
        modules: One `bytes` a row from the top, 1 dark and 0 light.
    """

    payload: str
    level: Level
    mode: Mode
    version: int
    modules: tuple[bytes, ...]

    @property
    def side_modules(self) -> int:
        """The modules along one side, without the quiet zone: 17 + 4 x version."""
        return len(self.modules)

    @property
    def full_side_modules(self) -> int:
        """The modules along one side with the quiet zone on both ends."""
        return self.side_modules + 2 * QUIET_ZONE_MODULES


@dataclass(frozen=True, slots=True)
class SymbolSize:
    """How large a symbol is printed.

    Attributes:
        module_mm: Side of one module.
        dots_per_module: The same in printer dots.
        side_mm: Side of the whole symbol with its quiet zone.
        quiet_zone_modules: The clear margin on each side, part of `side_mm`.
    """

    module_mm: float
    dots_per_module: int
    side_mm: float
    quiet_zone_modules: int = QUIET_ZONE_MODULES


def encode_symbol(payload: str, *, level: Level) -> Symbol:
    """Make the smallest symbol of `level` that holds `payload`.

    Text outside ASCII is written as UTF-8 and marked as such. Symbols made last are remembered.

    Raises:
        PayloadTooLongError: When even version 40 is too small.
    """
    return _encoded(payload, level)


@lru_cache(_KEPT_SYMBOLS)
def _encoded(payload: str, level: Level) -> Symbol:
    mode = _mode_of(payload)
    _refuse_too_long(payload, level=level, mode=mode)
    # The mode is named because segno takes some pairs of accented letters for Kanji.
    made = segno.make_qr(
        payload,
        error=level,
        mode=mode,
        encoding="utf-8" if mode is Mode.BYTE else None,
        eci=not payload.isascii(),
        boost_error=False,
    )
    rows = tuple(bytes(row) for row in made.matrix)
    return Symbol(payload, level, mode, int(made.version), rows)


def size_symbol(
    symbol: Symbol,
    *,
    space_mm: float,
    resolution_dpi: float,
    wanted_module_mm: float = WANTED_MODULE_MM,
) -> SymbolSize:
    """Choose the module, a whole number of printer dots, for a square of `space_mm`.

    It is the first whole number of dots not below `wanted_module_mm`; where the space is too small
    for that, the most dots that fit. At 600 dpi 0.50 mm becomes 12 dots or 0.508 mm, at 300 dpi 6
    dots or 0.508 mm, at 203 dpi 4 dots or 0.5005 mm.

    Raises:
        ModuleTooSmallError: When what fits is below 4 dots or 0.40 mm.
    """
    least = _dots_at_least(LEAST_MODULE_MM, resolution_dpi)
    wanted = _dots_at_least(wanted_module_mm, resolution_dpi)
    # A hair is added before rounding: 6 dots worth of space must not count as 5.999.
    room = dots_from_mm(space_mm / symbol.full_side_modules, resolution_dpi=resolution_dpi)
    fitting = math.floor(room + 1e-6)
    if fitting < least:
        raise ModuleTooSmallError(
            module_mm=mm_from_dots(fitting, resolution_dpi=resolution_dpi),
            least_mm=mm_from_dots(least, resolution_dpi=resolution_dpi),
            needed_mm=mm_from_dots(least, resolution_dpi=resolution_dpi) * symbol.full_side_modules,
        )
    dots = max(least, min(wanted, fitting))
    module_mm = mm_from_dots(dots, resolution_dpi=resolution_dpi)
    return SymbolSize(module_mm, dots, module_mm * symbol.full_side_modules)


def _dots_at_least(length_mm: float, resolution_dpi: float) -> int:
    dots = dots_from_mm(length_mm, resolution_dpi=resolution_dpi)
    return max(LEAST_DOTS, math.ceil(dots - 1e-6))


def _mode_of(payload: str) -> Mode:
    if payload.isascii() and payload.isdigit():
        return Mode.NUMERIC
    return Mode.ALPHANUMERIC if ALPHANUMERIC.issuperset(payload) else Mode.BYTE


def _refuse_too_long(payload: str, *, level: Level, mode: Mode) -> None:
    length = len(payload.encode("utf-8"))
    limit = _LIMITS[level][mode] - (0 if payload.isascii() else _ECI_BYTES)
    if length > limit:
        raise PayloadTooLongError(length=length, limit=limit)
