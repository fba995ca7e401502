from __future__ import annotations

import pytest

from service.pages.setting.script import language_of


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("Brass buckle", ""),
        ("Élégante, 1905", ""),
        ("漆塗りの箱", "ja"),
        ("カメラ", "ja"),
        ("도자기 瓷", "ko"),
        ("\u1112\u1161\u11ab", "ko"),
        ("瓷瓶", "zh"),
        ("Đồ gốm", "vi"),
        ("إناء", "ar"),
        ("כד חרס", "he"),
        ("मिट्टी का बर्तन", "hi"),
        ("", ""),
    ],
)
def test_the_language_letters_point_to(text: str, language: str) -> None:
    """Letters that are drawn differently decide; Latin letters tell nothing (BCP 47 tags)."""
    assert language_of(text) == language
