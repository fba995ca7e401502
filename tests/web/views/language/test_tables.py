from __future__ import annotations

from service.web.views.language.tables import list_table_words, spell


def test_a_code_is_spelt_out() -> None:
    """As it would begin a sentence."""
    assert spell("not-in-store") == "Not in store"
    assert spell("gross_weight") == "Gross weight"


def test_tables_have_words() -> None:
    """Kinds of card, roles, advice of rules and whom to ask among them."""
    words = set(list_table_words())
    assert {"Garment cover", "Not in store", "manage", "Found", "a conservator"} <= words
    assert "Every container is looked into once a year." in words
    assert "" not in words
