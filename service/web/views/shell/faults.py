"""A request that could not be answered, as a page: what happened and what to do."""

from __future__ import annotations

from fastapi import Request, Response

from service.web.replies.accept import choose_media_type
from service.web.replies.problems import Problem, ProblemResponse
from service.web.replies.refusals import Refusal
from service.web.views.shell.addresses import page_with
from service.web.views.shell.notice import go_to
from service.web.views.shell.page import show_page

_OFFERED = ("application/problem+json", "application/json", "text/html")


def show_problem(request: Request, problem: Problem) -> Response:
    """Tell a problem as whoever asks can read it: a browser as a page, a program as data."""
    accept = request.headers.get("accept", "*/*")
    is_for_programs = request.url.path.startswith("/api/")
    if is_for_programs or choose_media_type(accept, _OFFERED) != "text/html":
        return ProblemResponse(problem)
    if problem.code == Refusal.SIGN_IN_NEEDED:
        return go_to(page_with("/sign-in", to=request.url.path))
    page = show_page(request, "problem.html", {"problem": problem}, status=problem.status)
    waits = ProblemResponse(problem).headers.get("Retry-After")
    if waits:
        page.headers["Retry-After"] = waits
    return page
