from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import Element
from service.records.lido.stream import read_records

HEAD = '<lido:lido xmlns:lido="http://www.lido-schema.org" xmlns:skos="{}">'.format(
    "http://www.w3.org/2004/02/skos/core#"
)


@pytest.fixture
def make_record() -> Callable[[str], Element]:
    """Give a maker of records from what stands in them; `<_title>` is short for `<lido:title>`."""

    def make(inner: str) -> Element:
        text = inner.replace("</_", "</lido:").replace("<_", "<lido:").replace(" _", " lido:")
        return next(iter(read_records([f"{HEAD}{text}</lido:lido>".encode()], name="x.xml")))

    return make
