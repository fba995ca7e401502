"""Proved plates as bytes that hold data alone: whoever writes into a cache can run nothing.

First stand fixed numbers (the version among them), then fonts, pictures, the content as it is, and
all texts in one piece, the words of the face last. The bytes end with a digest over the key and
all of this, so that a flipped bit, a cut end or a plate under another's key is noticed.
"""

from __future__ import annotations

import struct
from functools import lru_cache
from hashlib import sha256
from itertools import chain

from service.geometry import Rect, Size
from service.render.plates.plate import FontUse, Link, PictureUse, Plate, PlateProof, ProvedPlate

PACK_VERSION = 2
"""To be raised with any change to what is written here."""

_DIGEST_BYTES = 16
# The version; how many fonts, pictures, marks and links follow, how many texts stand before the
# words, and how many bytes of content; lines, symbols, pictures and marks that were read back;
# width and height of the face, and left, top, width and height of its ink, in mm.
_HEAD = struct.Struct("<6HI4I6d")
# The number of a font, and how many of its glyphs follow.
_FONT = struct.Struct("<HH")
# SHA-256, width and height in pixels.
_PICTURE = struct.Struct("<32sII")
# Left, top, width and height in mm.
_LINK = struct.Struct("<4d")
_BYTES_PER_GLYPH = 2
# Stands between texts. No glyph speaks for it and no mark has it in its name; the words of the
# face may hold it, as they are the last text.
_BETWEEN = "\0"


def pack_plate(proved: ProvedPlate, *, key: str = "") -> bytes:
    """Write a plate; it can only be read back under the same key.

    Raises:
        ValueError: When a glyph stands for the sign that is kept for separating texts.
    """
    plate = proved.plate
    texts = [*chain.from_iterable(use.texts for use in plate.fonts), *plate.marks]
    texts += [link.address for link in plate.links]
    if any(_BETWEEN in text for text in texts):
        msg = "a glyph, a mark or an address cannot hold U+0000"
        raise ValueError(msg)
    parts = [_head(proved, len(texts))]
    for use in plate.fonts:
        parts += _FONT.pack(use.font, len(use.texts)), use.glyphs
    for picture in plate.pictures:
        digest = bytes.fromhex(picture.sha256)
        parts.append(_PICTURE.pack(digest, picture.width_px, picture.height_px))
    for link in plate.links:
        rect = link.rect
        parts.append(_LINK.pack(rect.x_mm, rect.y_mm, rect.width_mm, rect.height_mm))
    parts += plate.content, _BETWEEN.join([*texts, plate.alt]).encode()
    body = b"".join(parts)
    return body + _digest(key, body)


def unpack_plate(packed: bytes, *, key: str = "") -> ProvedPlate | None:
    """Read a plate back, None when these are not the whole bytes written under this key."""
    body = packed[:-_DIGEST_BYTES]
    if packed[-_DIGEST_BYTES:] != _digest(key, body) or body[0] != PACK_VERSION:
        return None
    # One flat function: thousands of labels are read at once, and each call counts.
    _, font_count, picture_count, mark_count, link_count, text_count, size, *numbers = (
        _HEAD.unpack_from(body)
    )
    lines, symbols, seen_pictures, seen_marks, width, height, x, y, ink_width, ink_height = numbers
    at = _HEAD.size
    runs = []
    for _ in range(font_count):
        font, count = _FONT.unpack_from(body, at)
        start, at = at + _FONT.size, at + _FONT.size + _BYTES_PER_GLYPH * count
        runs.append((font, count, body[start:at]))
    pictures = _read_pictures(body[at : at + picture_count * _PICTURE.size])
    at += picture_count * _PICTURE.size
    places = body[at : at + link_count * _LINK.size]
    at += link_count * _LINK.size
    content = body[at : at + size]
    texts = body[at + size :].decode().split(_BETWEEN, text_count)
    fonts = []
    first = 0
    for font, count, glyphs in runs:
        fonts.append(FontUse(font, glyphs, tuple(texts[first : first + count])))
        first += count
    marks = tuple(texts[first : first + mark_count])
    links = _read_links(places, texts[first + mark_count : -1]) if places else ()
    return ProvedPlate(
        Plate(Size(width, height), content, tuple(fonts), pictures, marks, texts[-1], links),
        PlateProof(lines, symbols, seen_pictures, seen_marks, Rect(x, y, ink_width, ink_height)),
    )


def _head(proved: ProvedPlate, text_count: int) -> bytes:
    plate, proof = proved.plate, proved.proof
    size, ink = plate.size, proof.ink
    return _HEAD.pack(
        *(PACK_VERSION, len(plate.fonts), len(plate.pictures), len(plate.marks)),
        *(len(plate.links), text_count, len(plate.content), proof.lines),
        *(proof.symbols, proof.pictures, proof.marks),
        *(size.width_mm, size.height_mm),
        *(ink.x_mm, ink.y_mm, ink.width_mm, ink.height_mm),
    )


def _digest(key: str, body: bytes) -> bytes:
    # Keys of one length, as hashes are, cannot take over the body's first bytes.
    return sha256(key.encode() + body).digest()[:_DIGEST_BYTES]


def _read_pictures(table: bytes) -> tuple[PictureUse, ...]:
    return tuple(
        [
            PictureUse(digest.hex(), width_px, height_px)
            for digest, width_px, height_px in _PICTURE.iter_unpack(table)
        ]
    )


def _read_links(places: bytes, addresses: list[str]) -> tuple[Link, ...]:
    return tuple([Link(*link) for link in zip(_rects(places), addresses, strict=True)])


# Labels of one look have their symbols at the same places.
@lru_cache(maxsize=256)
def _rects(places: bytes) -> tuple[Rect, ...]:
    return tuple(Rect(*place) for place in _LINK.iter_unpack(places))
