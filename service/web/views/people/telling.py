"""What can go wrong with people, told beside the field where it is put right."""

from __future__ import annotations

from collections.abc import Mapping

from fastapi import Request, Response

from service.errors import (
    LastManagerError,
    PairingError,
    PasswordError,
    ScopeError,
    ServiceError,
    SignInError,
    UnstorableTextError,
    UserNameError,
    UserTakenError,
)
from service.languages.saying import said
from service.web.replies.problems import ProblemResponse, tell_refused
from service.web.replies.refusals import Refusal, RefusedError
from service.web.views.language.telling import tell_error
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.page import show_page

FIELDS: Mapping[type[ServiceError], str] = {
    UserNameError: "name",
    UserTakenError: "name",
    UnstorableTextError: "name",
    PasswordError: "password",
    SignInError: "password",
    LastManagerError: "role",
    ScopeError: "scopes",
    PairingError: "code",
}
TYPED_WRONG = tuple(FIELDS)
"""What whoever fills in a form puts right there."""


def fill_again(values: Mapping[str, str], error: ServiceError, *, field: str = "") -> FilledForm:
    """Give a form as it was filled in, with the fault beside its field or the one named."""
    return FilledForm(values, {field or FIELDS[type(error)]: tell_error(error)})


def show_refused(
    request: Request,
    page: str,
    values: Mapping[str, object],
    typed: Mapping[str, str],
    *,
    refused: RefusedError,
) -> Response:
    """Show the page of a form that is not taken now, with the reason above it.

    Raises:
        RefusedError: The same, where it has nothing to do with trying to come in.
    """
    if refused.code not in {Refusal.TOO_OFTEN, Refusal.HTTPS_NEEDED}:
        raise refused
    problem = tell_refused(refused)
    form = FilledForm(typed, {WHOLE: f"{said(problem.detail)} {said(problem.advice)}"})
    shown = show_page(request, page, {**values, "form": form}, status=problem.status)
    waits = ProblemResponse(problem).headers.get("Retry-After")
    if waits:
        shown.headers["Retry-After"] = waits
    return shown
