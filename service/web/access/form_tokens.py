"""Tokens in the forms of pages: a form of another site cannot hold the one of this session."""

from __future__ import annotations

import hashlib
import hmac

from service.sentence import Sentence
from service.web.access.reader import Reader
from service.web.replies.refusals import Refusal, RefusedError

FIELD = "form_token"
"""What the hidden field is called."""


def form_token(reader: Reader) -> str:
    """Give the token that every form shown to a reader carries; it holds as long as the session."""
    return hmac.new(reader.form_key, b"form", hashlib.sha256).hexdigest()


def check_form_token(reader: Reader, sent: str) -> None:
    """Look whether a form that was sent is one that was shown to the same reader.

    Raises:
        RefusedError: When it is not.
    """
    if not hmac.compare_digest(form_token(reader).encode(), sent.encode("utf-8", "replace")):
        detail = Sentence("The form is of another session; nothing was changed.")
        raise RefusedError(Refusal.FOREIGN_PAGE, detail)
