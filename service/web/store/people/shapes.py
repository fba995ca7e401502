"""The shapes of people: who is here, users, tokens, pairings, and what makes them."""

from __future__ import annotations

from datetime import datetime
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from service.keeping.people.passwords import LEAST_CHARACTERS, MOST_CHARACTERS
from service.keeping.people.users import LONGEST_NAME
from service.store.people.role import Role
from service.store.people.tokens import Token
from service.store.people.users import User
from service.web.access.reader import Reader, Way
from service.web.store.records.shapes import STRICT

_EXAMPLE_PASSWORD = "nine lamps by the harbour"  # noqa: S105 - shown in the description
_EXAMPLE_NAME = "Ada Quill"

# Lengths are told by errors of their own, so that what cannot be a password is never repeated.
Password = Annotated[
    str,
    Field(
        max_length=10 * MOST_CHARACTERS,
        description=f"{LEAST_CHARACTERS} to {MOST_CHARACTERS} characters of any kind.",
    ),
]
Name = Annotated[str, Field(max_length=2 * LONGEST_NAME)]
Device = Annotated[str, Field(max_length=200, description="What the device calls itself.")]


class SignInBody(BaseModel):
    """Name and password of a user."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [{"name": _EXAMPLE_NAME, "password": _EXAMPLE_PASSWORD, "device": "desk"}]
        }
    )

    name: Name
    password: Password
    device: Device = ""


class ReaderView(BaseModel):
    """Who is here: `way` is how that is known, `scopes` the roles whose work is allowed."""

    name: str
    role: Role | None
    way: Way
    scopes: list[Role]


class SessionView(BaseModel):
    """A session that has begun; its secret is in the cookie alone."""

    name: str
    role: Role
    ends_at: datetime = Field(description="At the latest; it ends sooner when left alone.")


class OwnPasswordBody(BaseModel):
    """A new password for oneself, and the one there is."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [{"current": _EXAMPLE_PASSWORD, "new": "four ropes and a whistle"}]
        }
    )

    current: Password
    new: Password


class UserBody(BaseModel):
    """A user to be added; the first has to be a manager."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [{"name": "Ben Marl", "role": "manage", "password": _EXAMPLE_PASSWORD}]
        }
    )

    name: Name
    role: Role
    password: Password


class UserChangeBody(BaseModel):
    """What is to change of a user; what is left out stays."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"password": "four ropes and a whistle"}]}
    )

    role: Role | None = None
    password: Password | None = None
    disabled: bool | None = None


class UserView(BaseModel):
    """A user; a disabled one cannot sign in, and keeps the name in the history."""

    name: str
    role: Role
    disabled: bool
    added_at: datetime
    last_seen: datetime | None = Field(description="To about five minutes.")


class UsersView(BaseModel):
    """Every user, in the order of names."""

    users: list[UserView]


class TokenBody(BaseModel):
    """A token to be made: what it is for, and the roles whose work it may do."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"name": "nightly export", "scopes": ["view"]}]}
    )

    name: Name
    scopes: list[Role] = Field(min_length=1, max_length=len(Role))


class TokenView(BaseModel):
    """A token, without its secret."""

    token_id: int
    user: str
    name: str
    scopes: list[Role]
    made_at: datetime
    last_used: datetime | None = Field(description="To about five minutes.")
    revoked_at: datetime | None


class MadeTokenView(BaseModel):
    """A token that was made; `secret` is shown this once and kept nowhere."""

    token: TokenView
    secret: str


class TokensView(BaseModel):
    """Tokens, oldest first: of everybody for a manager, else one's own."""

    tokens: list[TokenView]


class PairingView(BaseModel):
    """A code that signs one other device in, once."""

    code: str
    ends_at: datetime


class PairedBody(BaseModel):
    """The code that another device shows."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"code": "7KMT-F4RQ-9XWN", "device": "store telephone"}]}
    )

    code: str = Field(max_length=100)
    device: Device = ""


def show_reader(reader: Reader) -> ReaderView:
    """Show who is here."""
    scopes = [role for role in Role if reader.may(role)]
    return ReaderView(name=reader.name, role=reader.role, way=reader.way, scopes=scopes)


def show_user(user: User) -> UserView:
    """Show a user."""
    return UserView(
        name=user.name,
        role=user.role,
        disabled=user.is_disabled,
        added_at=user.added_at,
        last_seen=user.last_seen,
    )


def show_token(token: Token) -> TokenView:
    """Show a token."""
    return TokenView(
        token_id=token.token_id,
        user=token.user_name,
        name=token.name,
        scopes=[role for role in Role if role in token.scopes],
        made_at=token.made_at,
        last_used=token.last_used,
        revoked_at=token.revoked_at,
    )
