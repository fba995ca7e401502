"""Symbols against ISO/IEC 18004, GS1 General Specifications and a decoder by other authors."""

from __future__ import annotations

import numpy as np
import pytest
import zxingcpp

from service.symbols.symbol import QUIET_ZONE_MODULES, Level, Mode, Symbol, encode_symbol
from service.symbols.symbol import size_symbol as sized
from service.units import mm_from_dots

# ISO/IEC 18004, capacity: version, modules, then bytes/alphanumeric/digits for L, M, Q, H.
CAPACITIES = """
1  21 17/25/41 14/20/34 11/16/27 7/10/17
2  25 32/47/77 26/38/63 20/29/48 14/20/34
3  29 53/77/127 42/61/101 32/47/77 24/35/58
4  33 78/114/187 62/90/149 46/67/111 34/50/82
5  37 106/154/255 84/122/202 60/87/144 44/64/106
6  41 134/195/322 106/154/255 74/108/178 58/84/139
7  45 154/224/370 122/178/293 86/125/207 64/93/154
8  49 192/279/461 152/221/365 108/157/259 84/122/202
9  53 230/335/552 180/262/432 130/189/312 98/143/235
10 57 271/395/652 213/311/513 151/221/364 119/174/288
11 61 321/468/772 251/366/604 177/259/427 137/200/331
12 65 367/535/883 287/419/691 203/296/489 155/227/374
15 77 520/758/1250 412/600/991 292/426/703 220/321/530
20 97 858/1249/2061 666/970/1600 482/702/1159 382/557/919
40 177 2953/4296/7089 2331/3391/5596 1663/2420/3993 1273/1852/3057
"""
# One sign of each mode that belongs to no narrower one.
SIGNS = {Mode.BYTE: "a", Mode.ALPHANUMERIC: "A", Mode.NUMERIC: "7"}

ADDRESS = "https://example.org/o/2024.12.3a"


def capacities() -> list[tuple[int, int, Level, Mode, int]]:
    """Spread the table: version, modules, level, mode, the most signs."""
    cells = []
    for line in CAPACITIES.split("\n")[1:-1]:
        version, modules, *levels = line.split()
        for level, triple in zip(Level, levels, strict=True):
            for mode, most in zip(SIGNS, triple.split("/"), strict=True):
                cells.append((int(version), int(modules), level, mode, int(most)))
    return cells


def decoded(symbol: Symbol, *, dots_per_module: int = 4) -> zxingcpp.Barcode:
    """Read a symbol from a bitmap, with its quiet zone, by an independent decoder."""
    rows = np.array([list(row) for row in symbol.modules], dtype=np.uint8)
    framed = np.pad(rows, QUIET_ZONE_MODULES)
    square = np.ones((dots_per_module, dots_per_module), dtype=np.uint8)
    bitmap = np.kron(255 * (1 - framed), square).astype(np.uint8)
    found = zxingcpp.read_barcodes(bitmap)
    assert len(found) == 1
    return found[0]


@pytest.mark.slow
@pytest.mark.parametrize("level", Level)
def test_capacity_of_every_version(level: Level) -> None:
    """The most signs of each mode fit the version the standard says, and one more does not."""
    for version, modules, of_level, mode, most in capacities():
        if of_level is not level:
            continue
        symbol = encode_symbol(SIGNS[mode] * most, level=level)
        assert (symbol.version, symbol.side_modules, symbol.mode) == (version, modules, mode)
        if version < 40:
            assert encode_symbol(SIGNS[mode] * (most + 1), level=level).version == version + 1


@pytest.mark.parametrize(
    ("payload", "version", "mode"),
    [(ADDRESS, 3, Mode.BYTE), (ADDRESS.upper(), 2, Mode.ALPHANUMERIC)],
    ids=["lower case", "upper case"],
)
def test_capitals_make_a_smaller_symbol(payload: str, version: int, mode: Mode) -> None:
    """The 32 signs of an address take version 3 as written and version 2 in capitals."""
    symbol = encode_symbol(payload, level=Level.M)
    assert (symbol.version, symbol.mode) == (version, mode)
    assert symbol.side_modules == 17 + 4 * version


@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize(
    "payload",
    [
        "1987412",
        "1931.14.2A-C",
        "1987.412.3a",
        ADDRESS,
        ADDRESS.upper(),
        "https://collections.example/objects/PMM%2F77%20%28b%29?r=7&k=KMTF",
        "Blwch é1",
        "x" * 14,
        "箱 12",
        "é" * 7,
    ],
)
def test_other_readers_understand(payload: str, level: Level) -> None:
    """A decoder by other authors reads the payload, the level and the version."""
    symbol = encode_symbol(payload, level=level)
    barcode = decoded(symbol)
    assert barcode.valid
    assert barcode.text == payload
    assert str(barcode.format) == "QR Code"
    assert barcode.ec_level == level
    assert isinstance(barcode.extra, dict)
    assert barcode.extra["Version"] == str(symbol.version)


def test_other_readers_understand_the_largest() -> None:
    """The longest text of level L, version 40, is read back whole."""
    symbol = encode_symbol("b" * 2953, level=Level.L)
    assert decoded(symbol).text == "b" * 2953


@pytest.mark.parametrize(("module_mm", "side_mm"), [(0.396, 14.652), (0.990, 36.63)])
def test_size_by_the_general_specifications(module_mm: float, side_mm: float) -> None:
    """29 modules and the quiet zone measure what GS1 General Specifications 5.12.3.1 give."""
    symbol = encode_symbol(ADDRESS, level=Level.M)
    assert symbol.full_side_modules * module_mm == pytest.approx(side_mm, abs=0.0005)


@pytest.mark.parametrize(
    ("resolution_dpi", "dots", "module_mm"), [(300, 5, 0.4233), (203, 4, 0.5005)]
)
def test_modules_of_whole_dots(resolution_dpi: float, dots: int, module_mm: float) -> None:
    """Whole printer dots give the modules in the inventor's published guidance."""
    assert mm_from_dots(dots, resolution_dpi=resolution_dpi) == pytest.approx(
        module_mm, abs=0.00005
    )
    symbol = encode_symbol(ADDRESS, level=Level.M)
    size = sized(symbol, space_mm=37 * module_mm + 0.1, resolution_dpi=resolution_dpi)
    assert size.module_mm == pytest.approx(module_mm, abs=0.00005)
    assert size.dots_per_module == dots
