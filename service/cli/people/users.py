"""The commands of users: who may use the store, and what each may do."""

from __future__ import annotations

from typing import Annotated

import typer

from service.cards.words import count
from service.cli.at_desk import By, Json, answer, at_desk
from service.cli.people.passwords import ask_password
from service.keeping.people.users import (
    NewUser,
    add_user,
    change_password,
    change_role,
    disable_user,
    enable_user,
)
from service.store.open import reading, writing
from service.store.people.role import Role
from service.store.people.users import User, load_users

users_app = typer.Typer(no_args_is_help=True, help="Say who may use the store when it is shared.")

Name = Annotated[str, typer.Argument(help="The name, as it stands in the history.")]
ItsRole = Annotated[Role, typer.Argument(help="view, pack, print or manage; each has the former.")]


@users_app.command("list")
def list_(context: typer.Context, as_json: Json = False) -> None:
    """List the users."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        users = load_users(connection)
    lines = [count(len(users), "user"), *map(_line, users)]
    answer({"users": [user_data(user) for user in users]}, lines, as_json=as_json)


@users_app.command("add")
def add(
    context: typer.Context, name: Name, role: ItsRole, by: By = "", as_json: Json = False
) -> None:
    """Add a user; the password is asked for, or read from standard input."""
    new = NewUser(name, role, ask_password())
    with at_desk(context).store() as engine, writing(engine) as connection:
        user = add_user(connection, new, stamp=at_desk(context).stamp(by))
    _tell(user, "may sign in from now on", as_json=as_json)


@users_app.command("role")
def role_(
    context: typer.Context, name: Name, role: ItsRole, by: By = "", as_json: Json = False
) -> None:
    """Give a user another role; it holds at once, also where somebody is signed in."""
    with at_desk(context).store() as engine, writing(engine) as connection:
        user = change_role(connection, name, role, stamp=at_desk(context).stamp(by))
    _tell(user, "has this role now", as_json=as_json)


@users_app.command("password")
def password(context: typer.Context, name: Name, by: By = "", as_json: Json = False) -> None:
    """Give a user another password; all their sessions end."""
    typed = ask_password()
    with at_desk(context).store() as engine, writing(engine) as connection:
        user = change_password(connection, name, typed, stamp=at_desk(context).stamp(by))
    _tell(user, "has another password and has to sign in anew", as_json=as_json)


@users_app.command("disable")
def disable(context: typer.Context, name: Name, by: By = "", as_json: Json = False) -> None:
    """Lock a user out at once; the name stays in the history."""
    with at_desk(context).store() as engine, writing(engine) as connection:
        user = disable_user(connection, name, stamp=at_desk(context).stamp(by))
    _tell(user, "cannot sign in any more", as_json=as_json)


@users_app.command("enable")
def enable(context: typer.Context, name: Name, by: By = "", as_json: Json = False) -> None:
    """Let a user in again."""
    with at_desk(context).store() as engine, writing(engine) as connection:
        user = enable_user(connection, name, stamp=at_desk(context).stamp(by))
    _tell(user, "may sign in again", as_json=as_json)


def user_data(user: User) -> dict[str, object]:
    """Give a user as plain data, without the password."""
    return {
        "name": user.name,
        "role": user.role.value,
        "disabled": user.is_disabled,
        "added_at": user.added_at,
        "last_seen": user.last_seen,
    }


def _tell(user: User, done: str, *, as_json: bool) -> None:
    answer(user_data(user), [f"{user.name} ({user.role.value}) {done}."], as_json=as_json)


def _line(user: User) -> str:
    seen = "never here" if user.last_seen is None else f"last here {user.last_seen:%Y-%m-%d}"
    locked = ", locked out" if user.is_disabled else ""
    return f"  {user.name}: {user.role.value}, {seen}{locked}"
