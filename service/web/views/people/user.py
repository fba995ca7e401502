"""One user: role, lock, and a new password."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Request, Response

from service.errors import LastManagerError, PasswordError
from service.keeping.people.passwords import LEAST_CHARACTERS, make_password
from service.keeping.people.users import change_password, change_role, disable_user, enable_user
from service.languages.saying import said, say
from service.store.people.role import Role
from service.store.people.users import load_user
from service.web.access.entrance import MOST_BODY_BYTES
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.store.counter import Counter
from service.web.views.people.telling import fill_again
from service.web.views.shell.addresses import page_of_user
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)

Name = Annotated[str, Form(max_length=500)]


@router.post("/people/role", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def give_role(
    request: Request,
    acting: ThePageActing,
    reader: TheReader,
    name: Name,
    role: Annotated[Role, Form()],
) -> Response:
    """Give a user another role."""
    try:
        with acting.counter.writing() as connection:
            before = load_user(connection, name).role
            user = change_role(connection, name, role, stamp=acting.stamp)
    except LastManagerError as error:
        return show_user(request, acting.counter, name, fill_again({}, error))
    words = say("{name} has the role {role} now.", name=user.name, role=said(role.value))
    if user.name == reader.name:
        # Whoever gave the role away cannot take it back.
        return go_to("/", Notice(words))
    undo = Undo("/people/role", {"name": user.name, "role": before.value})
    return go_to(page_of_user(user.name), Notice(words, undo))


@router.post("/people/disable", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def disable(request: Request, acting: ThePageActing, name: Name) -> Response:
    """Lock a user out."""
    try:
        with acting.counter.writing() as connection:
            user = disable_user(connection, name, stamp=acting.stamp)
    except LastManagerError as error:
        return show_user(request, acting.counter, name, fill_again({}, error, field="disabled"))
    undo = Undo("/people/enable", {"name": user.name})
    words = say("{name} cannot sign in any more.", name=user.name)
    return go_to(page_of_user(user.name), Notice(words, undo))


@router.post("/people/enable", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def enable(acting: ThePageActing, name: Name) -> Response:
    """Let a user in again."""
    with acting.counter.writing() as connection:
        user = enable_user(connection, name, stamp=acting.stamp)
    undo = Undo("/people/disable", {"name": user.name})
    return go_to(
        page_of_user(user.name), Notice(say("{name} may sign in again.", name=user.name), undo)
    )


@router.post("/people/new-password", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def give_password(
    request: Request,
    acting: ThePageActing,
    name: Name,
    password: Annotated[str, Form()] = "",
) -> Response:
    """Give a user another password; one that nobody typed is made and shown, this once."""
    made = "" if password else make_password()
    try:
        with acting.counter.writing() as connection:
            user = change_password(connection, name, password or made, stamp=acting.stamp)
    except PasswordError as error:
        return show_user(request, acting.counter, name, fill_again({}, error))
    if made:
        values = {"user": user, "password": made}
        return show_page(request, "people/made_password.html", values)
    words = say("{name} has another password, and signs in anew everywhere.", name=user.name)
    return go_to(page_of_user(user.name), Notice(words))


def show_user(request: Request, counter: Counter, name: str, form: FilledForm) -> Response:
    """Show a user.

    Raises:
        NotFoundError: When there is none of that name.
    """
    with counter.reading() as connection:
        user = load_user(connection, name)
    values = {"user": user, "form": form, "least": LEAST_CHARACTERS}
    return show_page(request, "people/user.html", values, status=form.status)
