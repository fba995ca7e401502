from __future__ import annotations

from types import SimpleNamespace

import pytest
from fastapi import Request

from service.errors import PasswordError
from service.web.replies.refusals import Refusal, RefusedError
from service.web.views.people.telling import fill_again, show_refused


def test_a_fault_stands_beside_the_field_it_concerns() -> None:
    """With what to do about it; or beside the one that is named."""
    error = PasswordError(least=12, most=200)
    form = fill_again({"name": "Ada Quill"}, error)
    assert form.value("name") == "Ada Quill"
    assert form.fault("password").endswith(error.advice)
    assert fill_again({}, error, field="current").fault("current")


def test_what_no_form_can_mend_is_no_fault_of_the_form() -> None:
    """It goes on to where every refusal is told."""
    request = Request({"type": "http", "app": SimpleNamespace()})
    refused = RefusedError(Refusal.FOREIGN_PAGE, "of another session")
    with pytest.raises(RefusedError):
        show_refused(request, "people/pair.html", {}, {}, refused=refused)
