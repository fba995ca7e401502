"""Order of object numbers as registrars sort them (common practice, no source)."""

from __future__ import annotations

import pytest

from service.records.naturally import sort_naturally

ORDERS = {
    "items": ["1987.412.9", "1987.412.10", "1987.412.10a", "1987.412.10b", "1987.412.100"],
    "lots": ["1987.9.1", "1987.41.1", "1987.412.1"],
    "years": ["931.1", "1931.1", "2003.1"],
    "prefixes": ["E9.1", "E2561.1", "L2019.4", "L2024.3.1", "X.2", "X.112"],
    "old numbers": ["1931/9", "1931/14", "1931/14a"],
}


@pytest.mark.parametrize("name", ORDERS)
def test_numbers_stand_in_the_order_of_a_register(name: str) -> None:
    """Digits count by value and letters follow the plain number."""
    assert sort_naturally(reversed(ORDERS[name]), number=str) == ORDERS[name]
