from __future__ import annotations

import io
import zipfile
from collections.abc import Callable

import pytest

TERMS = "http://rs.tdwg.org/dwc/terms/"
PART = '<{0} fieldsTerminatedBy="\\t" ignoreHeaderLines="1" rowType="x/{3}"><files><location>{1}'
PART += "</location></files>{2}</{0}>"


@pytest.fixture
def make_meta() -> Callable[..., bytes]:
    """Give a maker of meta.xml from the fields of the core and what stands after it."""

    def make(fields: str, after: str = "", *, head: str = "") -> bytes:
        core = PART.format("core", "core.txt", fields, "Occurrence")
        return (
            f'{head}<archive xmlns="http://rs.tdwg.org/dwc/text/">{core}{after}</archive>'
        ).encode()

    return make


@pytest.fixture
def pack() -> Callable[..., bytes]:
    """Give a packer of files by name."""

    def make(files: dict[str, bytes]) -> bytes:
        target = io.BytesIO()
        with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as folder:
            for name, data in files.items():
                folder.writestr(name, data)
        return target.getvalue()

    return make
