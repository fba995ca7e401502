"""Where an object number begins and ends in a file name; common practice, no source.

A wrong photo on a lid is worse than none: whatever may be half of another number matches nothing.
"""

from __future__ import annotations

from service.records.photos.numbers import Key, Numbers
from service.records.photos.sides import SIDE_WORDS
from service.records.photos.written import Written

# Shorter letters in front may be part of a number, such as L for loans.
_LETTERS_OF_A_WORD = 4
_RUNS_OF_A_WHOLE_NUMBER = 3
_DIGITS_OF_A_YEAR = 4
_DASHES = frozenset("-\u2013\u2014/:")


def begins_here(written: Written, start: int, stop: int, numbers: Numbers) -> bool:
    """Tell whether what stands before `start` is no part of the number."""
    if start == 0:
        return True
    if stop - start == 1:
        return False
    before = written.key[start - 1]
    if before.isdecimal():
        return _is_apart(written, start, stop)
    return before not in numbers.prefixes and (
        before in numbers.words_in_front
        or before in SIDE_WORDS
        or (written.gaps[start] != "" and len(before) >= _LETTERS_OF_A_WORD)
        or _is_apart(written, start, stop)
    )


def ends_here(written: Written, start: int, stop: int, numbers: Numbers) -> bool:
    """Tell whether what stands behind `stop` does not go on with the number."""
    if stop == len(written.key):
        return True
    key, run, gap = written.key[start:stop], written.key[stop], written.gaps[stop]
    if run.isdecimal():
        return not _joins(gap, _inner(written, start, stop)) or _may_count(key, gap, numbers)
    if len(run) > 1:
        return gap != "" or run in SIDE_WORDS
    return not (_joins(gap, _inner(written, start, stop)) and numbers.goes_on(key, run))


def _may_count(key: Key, gap: str, numbers: Numbers) -> bool:
    """Tell whether digits after the number's own separator may count views."""
    if gap.strip() in {"", "."}:
        return False
    return len(key) >= numbers.usual_length and not numbers.goes_on(key, "1")


def _is_apart(written: Written, start: int, stop: int) -> bool:
    """Tell whether a number that needs nothing in front stands apart from what is in front."""
    key = written.key[start:stop]
    first = written.raw[start]
    stands_alone = len(key) >= _RUNS_OF_A_WHOLE_NUMBER or (
        first.isdecimal() and len(first) == _DIGITS_OF_A_YEAR
    )
    return stands_alone and not _joins(written.gaps[start], _inner(written, start, stop))


def _inner(written: Written, start: int, stop: int) -> set[str]:
    return {gap for gap in written.gaps[start + 1 : stop] if gap}


def _joins(gap: str, inner: set[str]) -> bool:
    """Tell whether a separator is one that the number has inside, or may have."""
    bare = gap.strip()
    if gap == "" or bare == ".":
        return True
    return gap in inner if inner else bare in _DASHES
