from __future__ import annotations

import pytest

from service.records.cells.dimension_words import TokenKind, cut_into_tokens

N, U, A, X, W, S = (
    TokenKind.NUMBER,
    TokenKind.UNIT,
    TokenKind.AXIS,
    TokenKind.CROSS,
    TokenKind.WORD,
    TokenKind.SIGN,
)


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("12cmx8cm", [N, U, X, N, U]),
        ("H12xW8", [A, N, X, A, N]),
        ("xylophone", [W]),
        ("box", [W]),
        ("12 in", [N, U]),
        ("inner 12 mm", [W, N, U]),
        ("about 12 mm", [N, U]),
        ("12 & 13", [N, S, N]),
        ("12 \u2033", [N, U]),
    ],
)
def test_text_is_cut_into_words_and_signs(text: str, kinds: list[TokenKind]) -> None:
    """Units and axes are found where they stand against numbers, and not inside words."""
    assert [token.kind for token in cut_into_tokens(text)] == kinds
