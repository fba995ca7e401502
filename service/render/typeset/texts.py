"""What each glyph of a run stands for, and whether that alone reads as the text does."""

from __future__ import annotations

from itertools import pairwise

from service.render.typeset.faces import Face
from service.render.typeset.shaped import EMPTY_GLYPH, NOTDEF, Run


def note_texts(face: Face, run: Run, paragraph: bytes, texts: dict[int, str]) -> bool:
    """Add the text of each glyph to `texts`; tell whether the glyphs in their order say it all.

    They do not where a run reads from the right, where one sign is made of several glyphs, or where
    a sign shows nothing.
    """
    piece = paragraph[run.start : run.start + run.length]
    numbers = run.numbers
    is_plain = not run.is_leftward and max(numbers, default=0) < EMPTY_GLYPH
    if is_plain and run.length == len(numbers) and piece.isascii():
        texts.update(zip(numbers, piece.decode("ascii"), strict=True))
        return True
    clusters: dict[int, list[int]] = {}
    for number, start in zip(numbers, run.clusters, strict=True):
        clusters.setdefault(start, []).append(number)
    for start, end in pairwise([*sorted(clusters), run.length]):
        glyphs, text = clusters[start], piece[start:end].decode()
        if len(glyphs) > 1:
            is_plain = False
            _share_text(face, glyphs, text, texts)
        elif glyphs[0] < EMPTY_GLYPH:
            texts[glyphs[0]] = text
        elif glyphs[0] > EMPTY_GLYPH:
            texts[NOTDEF] = text
    return is_plain


def _share_text(face: Face, glyphs: list[int], text: str, texts: dict[int, str]) -> None:
    """Share the letters of a cluster among its glyphs.

    A glyph that is a letter's own says that letter, as it does where it stands alone; the first of
    the others says what is left.
    """
    left, others = text, []
    for glyph in glyphs:
        letter = next((one for one in left if face.shows(one, glyph)), "")
        if letter:
            texts[glyph] = letter
            left = left.replace(letter, "", 1)
        elif glyph < EMPTY_GLYPH:
            others.append(glyph)
    for glyph in others:
        texts.setdefault(glyph, left)
        left = ""
