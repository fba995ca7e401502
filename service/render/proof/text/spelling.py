"""One spelling for texts that come back from a file under other signs of the same look."""

from __future__ import annotations

import re
import unicodedata
from unicodedata import category

_SHAPED_CLASSES = frozenset({"R", "AL", "AN"})
_MARKS = frozenset({"Mn", "Mc", "Me"})
# Scripts of India and South East Asia (Unicode Standard, code charts).
_SHAPED_RANGES = ((0x0900, 0x109F), (0x1780, 0x17FF), (0x1A00, 0x1AFF))
# PDFium gives a hyphen at the end of a line as a control character or as no character at all.
_SAME = {"\u2010": "-", "\u2011": "-", "\x02": "-", "\ufffe": "-", "ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl"}
_OTHER_SIGNS = re.compile(f"[{''.join(_SAME)}]")
_UNSHOWN = {"Cf", "Cc"}
_UNSHOWN_SIGNS = re.compile(
    "["
    + "".join(re.escape(chr(code)) for code in range(0x2070) if category(chr(code)) in _UNSHOWN)
    + "\ufeff\ufff9-\ufffb\U000e0001-\U000e007f]"
)


def is_shaped(text: str) -> bool:
    """Tell whether a text joins letters, stacks marks or runs from the right."""
    return not text.isascii() and any(
        unicodedata.bidirectional(character) in _SHAPED_CLASSES
        or category(character) in _MARKS
        or any(first <= ord(character) <= last for first, last in _SHAPED_RANGES)
        for character in unicodedata.normalize("NFC", text)
    )


def plain(text: str) -> str:
    """Bring a text to one spelling: decomposed, nothing invisible, no blanks."""
    shown = "".join(_OTHER_SIGNS.sub(lambda found: _SAME[found[0]], text).split())
    if shown.isascii():
        return _UNSHOWN_SIGNS.sub("", shown)
    return _UNSHOWN_SIGNS.sub("", unicodedata.normalize("NFD", shown))
