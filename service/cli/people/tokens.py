"""The commands of tokens: what programs sign in with."""

from __future__ import annotations

from typing import Annotated

import typer

from service.cards.words import count
from service.cli.at_desk import By, Json, answer, at_desk
from service.keeping.people.tokens import make_token, revoke_token
from service.store.open import reading, writing
from service.store.people.role import Role
from service.store.people.tokens import Token, load_tokens

tokens_app = typer.Typer(no_args_is_help=True, help="Let programs use the store over its API.")


@tokens_app.command("list")
def list_(context: typer.Context, as_json: Json = False) -> None:
    """List the tokens of everybody, without what was shown once."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        tokens = load_tokens(connection)
    lines = [count(len(tokens), "token"), *map(_line, tokens)]
    answer({"tokens": [token_data(token) for token in tokens]}, lines, as_json=as_json)


@tokens_app.command("make")
def make(
    context: typer.Context,
    user: Annotated[str, typer.Argument(help="The user in whose name the program acts.")],
    name: Annotated[str, typer.Argument(help="What it is for, such as: nightly export.")],
    scope: Annotated[
        list[Role], typer.Option(help="Work it may do: view, pack, print, manage; repeat it.")
    ],
    by: By = "",
    as_json: Json = False,
) -> None:
    """Make a token and show it, this once."""
    with at_desk(context).store() as engine, writing(engine) as connection:
        made = make_token(connection, user, name, scope, stamp=at_desk(context).stamp(by))
    data = {"token": token_data(made.token), "secret": made.secret}
    lines = [
        made.secret,
        "It is not shown again. Send it in the header: Authorization: Bearer " + made.secret,
    ]
    answer(data, lines, as_json=as_json)


@tokens_app.command("revoke")
def revoke(
    context: typer.Context,
    number: Annotated[int, typer.Argument(help="Its number, as listed.")],
    by: By = "",
    as_json: Json = False,
) -> None:
    """Take a token back for ever."""
    with at_desk(context).store() as engine, writing(engine) as connection:
        token = revoke_token(connection, number, stamp=at_desk(context).stamp(by))
    answer(token_data(token), [f"Token {number} ({token.name}) is revoked."], as_json=as_json)


def token_data(token: Token) -> dict[str, object]:
    """Give a token as plain data, without its secret."""
    return {
        "token_id": token.token_id,
        "user": token.user_name,
        "name": token.name,
        "scopes": [role.value for role in Role if role in token.scopes],
        "made_at": token.made_at,
        "last_used": token.last_used,
        "revoked_at": token.revoked_at,
    }


def _line(token: Token) -> str:
    scopes = ", ".join(role.value for role in Role if role in token.scopes)
    revoked = "" if token.revoked_at is None else ", revoked"
    return f"  {token.token_id}: {token.name}, of {token.user_name} ({scopes}){revoked}"
