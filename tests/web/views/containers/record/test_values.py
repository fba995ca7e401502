from __future__ import annotations

from service.records.record import ContainerRecord
from service.web.views.containers.record.values import write_values
from tests.web.views.containers.record.test_read import FULL


def test_what_is_not_known_is_an_empty_field() -> None:
    """Only number, kind and lid say something of a container of which nothing is known."""
    said = {name: text for name, text in write_values(ContainerRecord("B-1")).items() if text}
    assert said == {"container_number": "B-1", "kind": "box", "lid": "opaque"}


def test_nothing_on_top_is_not_the_same_as_not_known() -> None:
    """A limit of 0 is written."""
    assert write_values(FULL)["stacking_limit"] == "0"
