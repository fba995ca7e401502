from __future__ import annotations

from service.web.views.shell.forms import FilledForm


def test_a_form_gives_back_what_was_typed() -> None:
    """What is not there is the default, and a fault makes the page one that was refused."""
    form = FilledForm({"a": "1"}, {"a": "too small"})
    assert (form.value("a"), form.value("b", "2")) == ("1", "2")
    assert (form.fault("a"), form.fault("b")) == ("too small", "")
    assert (form.status, FilledForm().status) == (422, 200)
