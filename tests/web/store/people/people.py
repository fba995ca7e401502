"""People for the tests of the API: one of each role, signed in or with a token."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import httpx

from service.keeping.people.secret import hash_secret, read_code
from service.keeping.people.tokens import make_token
from service.keeping.people.users import NewUser, add_user
from service.store.history import Stamp
from service.store.open import open_folder, writing
from service.store.people.pairings import save_pairing
from service.store.people.role import Role
from service.store.people.users import load_user
from tests.web.store.opened import MOMENT

NAMES = {
    Role.MANAGE: "Ada Quill",
    Role.PRINT: "Ben Marl",
    Role.PACK: "Cass Orne",
    Role.VIEW: "Dee Vane",
}
ADA, BEN, CASS, DEE = NAMES.values()
PASSWORD = "nine lamps by the harbour"  # noqa: S105 - shown in the description
OTHER_PASSWORD = "four ropes and a whistle"  # noqa: S105 - shown in the description
CODE = "7KMT-F4RQ-9XWN"
STAMP = Stamp(ADA, MOMENT)

Headers = dict[str, str]


def add_people(folder: Path, roles: Iterable[Role] = tuple(NAMES)) -> None:
    """Add one user of each role to the store in a folder, a manager first."""
    engine = open_folder(folder)
    with writing(engine) as connection:
        for role in roles:
            add_user(connection, NewUser(NAMES[role], role, PASSWORD), stamp=STAMP)
    engine.dispose()


def add_token(folder: Path, owner: str, scopes: set[Role]) -> Headers:
    """Make a token and give the header that carries it."""
    engine = open_folder(folder)
    with writing(engine) as connection:
        made = make_token(connection, owner, "nightly export", scopes, stamp=STAMP)
    engine.dispose()
    return {"Authorization": f"Bearer {made.secret}"}


def add_pairing(folder: Path, owner: str) -> None:
    """Keep the code that the description shows."""
    engine = open_folder(folder)
    with writing(engine) as connection:
        user = load_user(connection, owner)
        ends_at = MOMENT.replace(hour=23)
        save_pairing(connection, hash_secret(read_code(CODE)), user.user_id, ends_at=ends_at)
    engine.dispose()


def enter(client: httpx.Client, name: str, password: str = PASSWORD) -> Headers:
    """Sign in as a page of the service does, and give what the browser sends from then on."""
    reply = httpx.post(
        client.base_url.join("/api/sessions"),
        json={"name": name, "password": password, "device": "test"},
        timeout=50,
        trust_env=False,
    )
    assert reply.status_code == 201, reply.text
    return as_browser(client, reply)


def as_browser(client: httpx.Client, reply: httpx.Response) -> Headers:
    """Give the headers a browser sends after a reply that set a cookie."""
    secret = reply.cookies["underlid"]
    return {"Cookie": f"underlid={secret}", "Origin": str(client.base_url).rstrip("/")}
