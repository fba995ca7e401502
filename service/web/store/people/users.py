"""Paths of users: who there is, who comes in addition, what becomes of them."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Response

from service.keeping.people.users import (
    NewUser,
    add_user,
    change_password,
    change_role,
    disable_user,
    enable_user,
)
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.people.role import Role
from service.store.people.users import load_user, load_users
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheActing, TheCounter
from service.web.store.people.shapes import (
    UserBody,
    UserChangeBody,
    UsersView,
    UserView,
    show_user,
)

router = APIRouter(route_class=GatedRoute)

UserName = Annotated[str, Path(max_length=200, examples=["Ada Quill"])]


@router.get("/api/users", dependencies=[needs(Role.MANAGE)])
def users(counter: TheCounter) -> UsersView:
    """List the users."""
    with counter.reading() as connection:
        return UsersView(users=[show_user(user) for user in load_users(connection)])


@router.post("/api/users", dependencies=[needs(Role.MANAGE)], status_code=201)
def add(body: UserBody, acting: TheActing, response: Response) -> UserView:
    """Add a user; as soon as there is one, everybody has to sign in."""
    new = NewUser(body.name, body.role, body.password)
    with acting.counter.writing() as connection:
        user = add_user(connection, new, stamp=acting.stamp)
    response.headers["Location"] = "/api/users"
    return show_user(user)


@router.patch("/api/users/{name}", dependencies=[needs(Role.MANAGE)])
def change(name: UserName, body: UserChangeBody, acting: TheActing) -> UserView:
    """Change a role or a password, or lock a user out: all of it or nothing.

    A new password and a lock end all sessions of the user; a role holds from the next request on.
    """
    with acting.counter.writing() as connection:
        _change(connection, name, body, acting.stamp)
        return show_user(load_user(connection, name))


def _change(connection: Connection, name: str, body: UserChangeBody, stamp: Stamp) -> None:
    if body.disabled is False:
        enable_user(connection, name, stamp=stamp)
    if body.role is not None:
        change_role(connection, name, body.role, stamp=stamp)
    if body.password is not None:
        change_password(connection, name, body.password, stamp=stamp)
    if body.disabled:
        disable_user(connection, name, stamp=stamp)
