from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.geometry import Rect, Size
from service.render.plates.pack import pack_plate, unpack_plate
from service.render.plates.plate import FontUse, Link, PictureUse, Plate, PlateProof, ProvedPlate
from tests.render.plates.proved import proved_plate

_MM = st.floats(0, 2000, allow_nan=False)
_WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
_NAMED = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=4)
_COUNTS = st.integers(0, 2**32 - 1)
_RECTS = st.builds(Rect, _MM, _MM, _MM, _MM)


@st.composite
def _font_uses(draw: st.DrawFn) -> FontUse:
    texts = draw(st.lists(_NAMED, max_size=5))
    return FontUse(draw(st.integers(0, 17)), bytes(2 * len(texts)), tuple(texts))


_PLATES = st.builds(
    Plate,
    st.builds(Size, _MM, _MM),
    st.binary(max_size=40),
    st.lists(_font_uses(), max_size=3).map(tuple),
    st.lists(
        st.builds(PictureUse, st.binary(min_size=32, max_size=32).map(bytes.hex), _COUNTS, _COUNTS),
        max_size=3,
    ).map(tuple),
    st.lists(_NAMED, max_size=3).map(tuple),
    _WORDS,
    st.lists(st.builds(Link, _RECTS, _NAMED), max_size=3).map(tuple),
)
_PROOFS = st.builds(PlateProof, _COUNTS, _COUNTS, _COUNTS, _COUNTS, _RECTS)


@given(st.builds(ProvedPlate, _PLATES, _PROOFS), st.text("0123456789abcdef", max_size=64))
def test_every_plate_comes_back_as_it_was(proved: ProvedPlate, key: str) -> None:
    """Whatever a plate holds, and its proof, is there again."""
    assert unpack_plate(pack_plate(proved, key=key), key=key) == proved


def test_every_flipped_bit_is_noticed() -> None:
    """No single flipped bit leaves a plate."""
    packed = pack_plate(proved_plate(1, content_bytes=20), key="ab")
    for place in range(len(packed)):
        for bit in range(8):
            flipped = bytearray(packed)
            flipped[place] ^= 1 << bit
            assert unpack_plate(bytes(flipped), key="ab") is None


def test_every_cut_is_noticed() -> None:
    """Bytes that end early, or go on, are no plate."""
    packed = pack_plate(proved_plate(2), key="ab")
    assert all(unpack_plate(packed[:length], key="ab") is None for length in range(len(packed)))
    assert unpack_plate(packed + b"\0", key="ab") is None


def test_a_plate_under_another_key_is_none() -> None:
    """A plate that was moved under the key of another is not given out."""
    assert unpack_plate(pack_plate(proved_plate(2), key="ab"), key="ac") is None


def test_a_small_label_takes_few_bytes() -> None:
    """What is added to the content and the words stays below 300 bytes for a small label."""
    proved = proved_plate(3)
    said = len(proved.plate.content) + len(proved.plate.alt.encode())
    assert len(pack_plate(proved)) < said + 300


def test_the_separating_sign_is_refused() -> None:
    """A glyph named by the sign between texts would shift all that follow."""
    proved = proved_plate(3)
    plate = replace(proved.plate, fonts=(FontUse(0, bytes(2), ("\0",)),))
    with pytest.raises(ValueError, match="U\\+0000"):
        pack_plate(replace(proved, plate=plate))
