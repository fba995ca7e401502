from __future__ import annotations

import pytest

from service.records.record import ObjectRecord
from service.web.replies.refusals import RefusedError
from service.web.store.matching import read_revision, tag_record, tag_revision


def test_a_revision_comes_back_from_its_tag() -> None:
    """What was given as ETag is what If-Match may say."""
    assert read_revision(tag_revision(7)) == 7


@pytest.mark.parametrize("header", ["", "7", '"7"', '"rx"', "*"])
def test_any_other_tag_is_refused(header: str) -> None:
    """A change names the state it was made from."""
    with pytest.raises(RefusedError):
        read_revision(header)


def test_another_record_has_another_tag() -> None:
    """The tag follows what the record says."""
    assert tag_record(ObjectRecord("X.1")) != tag_record(ObjectRecord("X.1", "Jar"))
