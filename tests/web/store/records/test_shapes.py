from __future__ import annotations

import pytest
from pydantic import ValidationError

from service.web.store.records.shapes import ContainerBody, ObjectBody


@pytest.mark.parametrize("body", [ObjectBody, ContainerBody])
def test_a_field_nobody_knows_is_refused(body: type[ObjectBody | ContainerBody]) -> None:
    """A slip in the name of a field is told, not passed over."""
    with pytest.raises(ValidationError):
        body.model_validate({"record": {}, "colour": "red"})
