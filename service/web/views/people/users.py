"""Who may use the store, and adding somebody."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Query, Request, Response
from pydantic import BaseModel, Field

from service.keeping.people.passwords import LEAST_CHARACTERS, make_password
from service.keeping.people.users import NewUser, add_user
from service.languages.saying import say
from service.store.people.role import Role
from service.store.people.users import User, load_users
from service.web.access.entrance import MOST_BODY_BYTES
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.access.reader import Reader, Way
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.people.telling import TYPED_WRONG, fill_again
from service.web.views.people.user import show_user
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)


class UserForm(BaseModel):
    """Whom to add; without a password one is made."""

    role: Role
    name: str = ""
    password: str = Field(default="", repr=False)


@router.get("/people", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def people(
    request: Request, counter: TheCounter, who: Annotated[str, Query(max_length=500)] = ""
) -> Response:
    """Show everybody, or one user."""
    if who:
        return show_user(request, counter, who, FilledForm())
    return _show(request, counter, FilledForm())


@router.post("/people/add", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def add(
    request: Request,
    acting: ThePageActing,
    reader: TheReader,
    sent: Annotated[UserForm, Form()],
) -> Response:
    """Add a user; a password that nobody typed is made and shown, this once."""
    made = "" if sent.password else make_password()
    try:
        with acting.counter.writing() as connection:
            new = NewUser(sent.name, sent.role, sent.password or made)
            user = add_user(connection, new, stamp=acting.stamp)
    except TYPED_WRONG as error:
        form = fill_again({"name": sent.name, "role": sent.role.value}, error)
        return _show(request, acting.counter, form)
    if made:
        values = {"user": user, "password": made}
        return show_page(request, "people/made_password.html", values, status=201)
    return go_to("/people", Notice(_tell_added(user, reader)))


def _show(request: Request, counter: Counter, form: FilledForm) -> Response:
    with counter.reading() as connection:
        users = load_users(connection)
    values = {"users": users, "form": form, "least": LEAST_CHARACTERS}
    return show_page(request, "people/list.html", values, status=form.status)


def _tell_added(user: User, reader: Reader) -> str:
    """Say what was done; whoever added the first user is asked to sign in on the next page."""
    if reader.way is Way.THIS_MACHINE:
        return say(
            "{name} manages the users, and from now on everybody signs in."
            " Begin yourself: with this name and its password.",
            name=user.name,
        )
    return say("{name} may sign in from now on.", name=user.name)
