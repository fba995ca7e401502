"""A request that could not be answered, as a page: what happened and what to do."""

from __future__ import annotations

from fastapi import Request, Response

from service.languages.saying import said
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
    if request.url.path.startswith("/api/"):
        return ProblemResponse(problem)
    if choose_media_type(accept, _OFFERED) != "text/html":
        # Scripts of our pages show it to whoever reads them.
        return ProblemResponse(_say(problem))
    if problem.code == Refusal.SIGN_IN_NEEDED:
        return _ask_to_sign_in(request)
    page = show_page(request, "problem.html", {"problem": problem}, status=problem.status)
    waits = ProblemResponse(problem).headers.get("Retry-After")
    if waits:
        page.headers["Retry-After"] = waits
    return page


def _ask_to_sign_in(request: Request) -> Response:
    """Lead to signing in, and from there back to the page that was asked for."""
    page = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    # What a form is sent to is often no page: whoever sent it goes on from the first one.
    path = page_with("/sign-in", to=page if request.method == "GET" else "")
    if "hx-request" in request.headers:
        # Scripts would put the page into a part of the one that is open (htmx, HX-Redirect).
        return Response(status_code=401, headers={"HX-Redirect": path})
    return go_to(path)


def _say(problem: Problem) -> Problem:
    names = ("title", "detail", "advice")
    return problem.model_copy(update={name: said(getattr(problem, name)) for name in names})
