from __future__ import annotations

import pytest

from service.errors import UnknownStockError
from service.web.store.cards.shapes import PrintBody


def test_nothing_named_means_everything() -> None:
    """Without kinds, stock and containers all is printed, each on the stock that suits it."""
    options = PrintBody().to_options()
    assert (options.kinds, options.stock, options.containers) == ((), None, frozenset())
    with pytest.raises(UnknownStockError):
        PrintBody(stock="A9").to_options()


def test_objects_name_their_tags() -> None:
    """Beside the cards that are named, and as everybody else names them."""
    body = PrintBody.model_validate(
        {"objects": ["X.112"], "cards": [{"container_number": "B-027", "kind": "lid-card"}]}
    )
    assert body.to_options().only == {("X.112", "object-tag", 1), ("B-027", "lid-card", 1)}
