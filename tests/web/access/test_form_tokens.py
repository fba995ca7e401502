from __future__ import annotations

from dataclasses import replace

import pytest

from service.web.access.form_tokens import check_form_token, form_token
from service.web.access.reader import make_local
from service.web.replies.refusals import RefusedError


def test_a_form_comes_back_to_whom_it_was_shown() -> None:
    """The token of one session is worth nothing in another, nor is anything else."""
    shown, other = make_local(b"one"), make_local(b"two")
    check_form_token(shown, form_token(shown))
    for sent in (form_token(other), "", form_token(shown)[:-1], "ŵ\ud800"):
        with pytest.raises(RefusedError, match="another session"):
            check_form_token(shown, sent)


def test_the_token_tells_nothing_of_the_session() -> None:
    """It stands in pages, which are kept and shown around; the secret does not."""
    reader = replace(make_local(b"the secret"), secret="the secret")  # noqa: S106 - a test's own
    assert "secret" not in form_token(reader)
    assert len(form_token(reader)) == 64
