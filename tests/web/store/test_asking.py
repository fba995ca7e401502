from __future__ import annotations

import pytest

from service.web.replies.refusals import RefusedError
from service.web.store.asking import read_actor


def test_a_name_of_any_script_is_read() -> None:
    """It comes percent-encoded, for headers hold plain letters only."""
    assert read_actor("Ada%20Quill") == "Ada Quill"
    assert read_actor("%C5%B4yn%20%20Rhys") == "Ŵyn Rhys"


@pytest.mark.parametrize("header", ["", "%20", "%ff", "Ŵyn", "a%0ab%00", "x" * 201])
def test_nobody_is_refused(header: str) -> None:
    """Every change names a person, in signs that can be read."""
    with pytest.raises(RefusedError, match="name of a person"):
        read_actor(header)
