from __future__ import annotations

import re
import socket
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest
from fastapi import APIRouter, FastAPI
from fastapi.routing import APIRoute

from service.store.people.role import Role
from service.web.access.gate import OPEN, GatedRoute, list_gates, needs
from service.web.access.handed import HandingOn
from service.web.access.porter import Porter, TheReader
from service.web.app import build_app
from service.web.guard import LOOPBACK, MOST_BODY_BYTES, Guard, Limits
from tests.web.access.roles_of_routes import ROLES
from tests.web.access.twins_of_deeds import ALONE, TWINS
from tests.web.sent import problem_of, running_app
from tests.web.store.people.people import ADA, BEN, NAMES, Headers, add_token, enter

PASSED = "passed"


def _app() -> FastAPI:
    """Give the application with all its routes, without its guard."""
    return build_app(has_store=True, has_page=True, most_body_bytes=MOST_BODY_BYTES)


def _declared() -> dict[str, str | None]:
    """List what every route of the application declares; one that declares nothing fails."""
    found: dict[str, str | None] = {}
    for route, gate in list_gates(_app().routes):
        assert gate is not None, route.path
        path = re.sub(r":\w+}", "}", str(route.path))
        for method in route.methods or ():
            found[f"{method} {path}"] = None if gate.role is None else gate.role.value
    return found


def test_every_route_declares_whose_work_it_is() -> None:
    """The route table and the table written by hand agree, route by route."""
    assert _declared() == ROLES


def test_a_program_may_do_what_its_user_may_do_on_a_page() -> None:
    """Every form has its twin in the API, for the same role or a lesser one."""
    deeds = {line for line in ROLES if not line.startswith("GET ") and " /api/" not in line}
    assert set(TWINS) | set(ALONE) == deeds
    assert not set(TWINS) & set(ALONE)
    order = [None, *(role.value for role in Role)]
    for deed, twin in TWINS.items():
        assert order.index(ROLES[twin]) <= order.index(ROLES[deed]), (deed, twin)


def test_the_description_says_the_same(client: httpx.Client) -> None:
    """Each operation names its role and how one signs in, and none is left out."""
    document = client.get("/openapi.json", headers=enter(client, ADA)).json()
    said = {
        f"{method.upper()} {path}": operation.get("x-role")
        for path, operations in document["paths"].items()
        for method, operation in operations.items()
    }
    hidden = {line for line in ROLES if line not in said}
    assert [line for line in hidden if " /api/" in line] == []
    assert said == {line: role for line, role in ROLES.items() if line not in hidden}
    for operations in document["paths"].values():
        for operation in operations.values():
            ways: list[dict[str, list[str]]] = (
                [{"session": []}, {"token": []}] if "x-role" in operation else []
            )
            assert operation["security"] == ways
    schemes = document["components"]["securitySchemes"]
    assert schemes["session"]["name"] == "__Host-underlid"
    assert (schemes["token"]["type"], schemes["token"]["scheme"]) == ("http", "bearer")


def _ask(client: httpx.Client, line: str, headers: Headers) -> str:
    """Send a request without a body, and say whether it came through the gate."""
    method, path = line.split()
    path = re.sub(r"\{(run|card|out|revision|token|import_id)\}", "99", path)
    reply = client.request(method, re.sub(r"\{\w+\}", "none", path), headers=headers)
    if reply.status_code not in {401, 403}:
        return PASSED
    code = str(problem_of(reply)["code"])
    # A form of a page has passed the gate when it is asked for its token.
    is_form = method == "POST" and not path.startswith("/api/")
    return PASSED if is_form and code == "foreign-page" else code


@pytest.mark.slow
@pytest.mark.timeout(300)
@pytest.mark.parametrize("who", [None, *Role], ids=str)
def test_each_role_passes_its_gates_and_no_other(client: httpx.Client, who: Role | None) -> None:
    """Nobody is asked to sign in, less is refused, and as much or more is let through."""
    headers = {} if who is None else enter(client, NAMES[who])
    order = list(Role)
    # What ends the session comes last.
    for line in sorted(ROLES, key=lambda line: line == "DELETE /api/sessions/current"):
        role = ROLES[line]
        if role is None:
            wanted = PASSED
        elif who is None:
            wanted = "sign-in-needed"
        else:
            wanted = PASSED if order.index(who) >= order.index(Role(role)) else "not-allowed"
        # The finish of a pairing refuses a code that is none, which is no matter of roles.
        if line != "POST /api/pairings/finish":
            assert _ask(client, line, headers) == wanted, (who, line)


def test_nobody_is_told_how_to_sign_in(client: httpx.Client) -> None:
    """A 401 says by which scheme (RFC 9110, 11.6.1), on this machine, too."""
    reply = client.get("/api/objects")
    assert problem_of(reply)["status"] == 401
    assert reply.headers["www-authenticate"].startswith("Bearer")


def test_a_token_does_what_its_scopes_name(client: httpx.Client, folder: Path) -> None:
    """A program that prints cannot move an object, though its user could."""
    headers = add_token(folder, BEN, {Role.PRINT})
    assert _ask(client, "GET /api/objects", headers) == "not-allowed"
    assert _ask(client, "POST /api/moves", headers) == "not-allowed"
    assert _ask(client, "POST /api/prints", headers) == PASSED


def _answer() -> dict[str, str]:
    return {}


def _name_way(reader: TheReader) -> dict[str, str]:
    return {"way": reader.way.value}


@pytest.fixture
def careless() -> Iterator[httpx.Client]:
    """Give a client of an application some of whose routes were added carelessly."""
    app = build_app(has_store=False, has_page=True, most_body_bytes=MOST_BODY_BYTES)
    plain, gated = APIRouter(route_class=APIRoute), APIRouter(route_class=GatedRoute)
    plain.add_api_route("/plain", _answer, dependencies=[needs(Role.VIEW)])
    gated.add_api_route("/undeclared", _answer)
    gated.add_api_route("/twice", _answer, dependencies=[OPEN, needs(Role.MANAGE)])
    gated.add_api_route("/anybody", _name_way, dependencies=[OPEN])
    gated.add_api_route("/declared", _answer, dependencies=[needs(Role.VIEW)])
    app.include_router(plain)
    app.include_router(gated)
    app.add_api_route("/late", _answer)
    handing_on = HandingOn(app, {"porter": Porter(None, is_local=True)})
    with running_app(Guard(handing_on, LOOPBACK, Limits())) as client:
        yield client


@pytest.mark.parametrize("path", ["/plain", "/undeclared", "/twice", "/late"])
def test_what_declares_nothing_answers_nobody(careless: httpx.Client, path: str) -> None:
    """A route of another class, without a role or with two, is refused at run time as well."""
    assert problem_of(careless.get(path))["code"] == "not-allowed"
    assert careless.get("/declared").status_code == 200


def test_a_route_open_to_all_may_ask_who_comes(careless: httpx.Client) -> None:
    """The answer may be fuller for whoever has signed in, or works on this machine alone."""
    assert careless.get("/anybody").json() == {"way": "this machine"}


def test_nothing_is_read_of_a_body_that_is_refused(client: httpx.Client) -> None:
    """Who may not send it is told before it comes: the body here never does."""
    with socket.create_connection((client.base_url.host, client.base_url.port)) as plain:
        plain.settimeout(20)
        head = "POST /api/users HTTP/1.1\r\nHost: localhost\r\nContent-Length: 100"
        plain.sendall(f"{head}\r\nContent-Type: application/json\r\n\r\n{{".encode())
        assert plain.recv(4096).startswith(b"HTTP/1.1 401 ")


@pytest.mark.parametrize("origin", [None, "null", "http://evil.example", "https://{host}"])
def test_a_cookie_alone_changes_nothing(client: httpx.Client, origin: str | None) -> None:
    """A change that a browser sends for another page, or for none it names, is refused."""
    headers = enter(client, ADA)
    del headers["Origin"]
    assert client.get("/api/users", headers=headers).status_code == 200
    if origin is not None:
        headers["Origin"] = origin.format(host=client.base_url.netloc.decode())
    reply = client.patch(f"/api/users/{BEN}", json={"role": "manage"}, headers=headers)
    assert problem_of(reply)["code"] == "foreign-page"


def test_a_page_of_ours_changes_what_it_may(client: httpx.Client) -> None:
    """The browser says that it is the same origin, in either of two ways."""
    headers = enter(client, ADA)
    del headers["Origin"]
    headers["Sec-Fetch-Site"] = "same-origin"
    reply = client.patch(f"/api/users/{BEN}", json={"role": "view"}, headers=headers)
    assert (reply.status_code, reply.json()["role"]) == (200, "view")
    headers["Host"] = "evil.example"
    assert problem_of(client.get("/api/users", headers=headers))["code"] == "foreign-host"
