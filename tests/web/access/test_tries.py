from __future__ import annotations

import pytest

from service.web.access.tries import Tries
from service.web.replies.refusals import Refusal, RefusedError
from tests.web.access.made import make_request


def _count(tries: Tries, name: str, address: str = "192.0.2.1") -> bool:
    try:
        tries.count(make_request(client=address), name)
    except RefusedError as error:
        return error.code is not Refusal.TOO_OFTEN
    return True


def test_a_name_may_be_tried_five_times_from_one_address() -> None:
    """However it is capitalised; from elsewhere its owner still gets in."""
    tries = Tries()
    assert [_count(tries, name) for name in ("Ada", "ADA", "ada", "Ada ", "ada", "Ada")] == [
        *[True] * 5,
        False,
    ]
    assert _count(tries, "Ben")
    assert _count(tries, "Ada", "192.0.2.2")


def test_an_address_may_try_twenty_names() -> None:
    """Whoever tries one password on everybody is stopped, too."""
    tries = Tries()
    assert [_count(tries, str(each)) for each in range(22)] == [*[True] * 20, False, False]


@pytest.mark.parametrize("name", ["", "\0"])
def test_any_name_is_counted(name: str) -> None:
    """A name that nobody can have is counted as well."""
    tries = Tries(for_a_name=1)
    assert [_count(tries, name), _count(tries, name)] == [True, False]
