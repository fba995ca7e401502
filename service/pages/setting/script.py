"""Which language a text is likely in, as far as its letters tell.

Only what changes the choice of a face matters: Han characters are drawn differently in Japanese,
Chinese and Korean, and Vietnamese letters are set whole in one face. Ranges: Unicode Standard,
code charts.
"""

from __future__ import annotations

_RANGES: tuple[tuple[str, int, int], ...] = (
    ("ja", 0x3040, 0x30FF),
    ("ko", 0xAC00, 0xD7A3),
    ("ko", 0x1100, 0x11FF),
    ("vi", 0x1EA0, 0x1EF9),
    ("ar", 0x0600, 0x06FF),
    ("he", 0x0590, 0x05FF),
    ("hi", 0x0900, 0x097F),
)
_HAN = (0x4E00, 0x9FFF)


def language_of(text: str) -> str:
    """Name the language a text's letters point to (BCP 47), "" where they do not tell.

    Kana or Hangul anywhere decide for Han characters beside them; Han alone counts as Chinese.
    """
    if text.isascii():
        return ""
    codes = {ord(character) for character in text}
    for language, first, last in _RANGES:
        if any(first <= code <= last for code in codes):
            return language
    return "zh" if any(_HAN[0] <= code <= _HAN[1] for code in codes) else ""
