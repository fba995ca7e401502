from __future__ import annotations

import re

import pytest

from service.records.codes import CAUTION_CODES, HANG_FACTOR_CODES, HAZARD_CODES


@pytest.mark.parametrize(
    ("codes", "count"),
    [(HAZARD_CODES, 43), (CAUTION_CODES, 17), (HANG_FACTOR_CODES, 10)],
    ids=["hazards", "cautions", "hang factors"],
)
def test_codes_are_words_that_stand_once(codes: tuple[str, ...], count: int) -> None:
    """Codes are small letters with dashes, so that readers find them however written."""
    assert len(set(codes)) == len(codes) == count
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", code) for code in codes)
