"""The error tree as it is drawn, as it is, and what every error owes its reader."""

from __future__ import annotations

import re

import pytest

from service import errors
from service.errors import ServiceError


def _draw(error: type[ServiceError], depth: int = 2) -> list[str]:
    """Draw a class and those below it, in the order in which they are written."""
    below = [line for child in error.__subclasses__() for line in _draw(child, depth + 1)]
    return ["  " * depth + error.__name__, *below]


def _all(error: type[ServiceError]) -> list[type[ServiceError]]:
    return [error, *(below for child in error.__subclasses__() for below in _all(child))]


def test_drawing_shows_the_classes() -> None:
    """The drawing at the top of the file is the tree, branch by branch."""
    drawn = [line for line in (errors.__doc__ or "").splitlines() if line.startswith("    ")]
    assert drawn == _draw(ServiceError)


def test_codes_are_unique() -> None:
    """Whoever looks a code up finds one error."""
    codes = [error.code for error in _all(ServiceError)]
    assert sorted(codes) == sorted(set(codes))


@pytest.mark.parametrize("error", _all(ServiceError), ids=lambda error: error.__name__)
def test_error_says_what_it_owes(error: type[ServiceError]) -> None:
    """Each class has a stable code of its own, advice in a sentence, and says when it is raised."""
    assert "code" in vars(error)
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", error.code)
    assert re.fullmatch(r"[A-Z].+[.]", error.advice)
    assert error is ServiceError or (error.__doc__ or "").startswith("Raised ")
