"""What every request to the store may carry: who acts, a key against doing it twice, a tag."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import Annotated
from urllib.parse import unquote

from fastapi import Depends, Header, Path, Query, Request

from service.store.history import Stamp
from service.web.access.handed import handed
from service.web.access.porter import TheReader
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.counter import Counter

ACTOR = "Underlid-Actor"
KEY = "Idempotency-Key"
_LONGEST_NAME = 200


@dataclass(frozen=True, slots=True)
class Acting:
    """A request that changes what is there: who acts and when."""

    counter: Counter
    stamp: Stamp


@dataclass(frozen=True, slots=True)
class Asked:
    """A request that makes something new: who asks and when, under which key and path."""

    counter: Counter
    stamp: Stamp
    key: str
    path: str


def _counter(request: Request) -> Counter:
    counter = handed(request, "counter")
    if not isinstance(counter, Counter):
        raise TypeError(type(counter))
    return counter


TheCounter = Annotated[Counter, Depends(_counter)]


def _stamp(
    counter: TheCounter,
    reader: TheReader,
    actor: Annotated[
        str,
        Header(
            alias=ACTOR,
            max_length=2000,
            description="Who makes the change, percent-encoded as UTF-8: needed as long as there"
            " are no users. Later whoever has signed in makes it, and this is not looked at.",
            examples=["Ada%20Quill"],
        ),
    ] = "",
) -> Stamp:
    """Say who acts and when: whoever has signed in, and nobody else.

    Raises:
        RefusedError: When nobody is named, or the name cannot be written down.
    """
    return Stamp(reader.name if reader.is_signed_in else read_actor(actor), counter.now())


def _acting(counter: TheCounter, stamp: Annotated[Stamp, Depends(_stamp)]) -> Acting:
    return Acting(counter, stamp)


TheActing = Annotated[Acting, Depends(_acting)]


def _asked(
    request: Request,
    counter: TheCounter,
    stamp: Annotated[Stamp, Depends(_stamp)],
    key: Annotated[
        str,
        Header(
            alias=KEY,
            max_length=200,
            description="Any text of your own; sent again with the same request, nothing is made"
            " twice and the first reply comes again.",
            examples=["3f1c2b0a"],
        ),
    ] = "",
) -> Asked:
    return Asked(counter, stamp, key, request.url.path)


TheAsked = Annotated[Asked, Depends(_asked)]

SeenRecord = Annotated[
    str,
    Header(alias="If-Match", max_length=1000, description="The ETag of the record you have seen."),
]
SeenRevision = Annotated[
    str,
    Header(
        alias="If-Match",
        max_length=1000,
        description="The ETag of the packing you have seen.",
        examples=['"r1"'],
    ),
]
ObjectNumber = Annotated[
    str, Path(max_length=500, description="May hold a slash.", examples=["1931.14.7"])
]
ContainerNumber = Annotated[
    str, Path(max_length=500, description="May hold a slash.", examples=["B-027"])
]


_EXACT = "Only the one with exactly this number, or none: for numbers that end as a path does."
ExactNumber = partial(Query, max_length=500, description=_EXACT)


def read_actor(header: str) -> str:
    """Read the name of whoever acts; headers hold plain letters only, so it is percent-encoded.

    Raises:
        RefusedError: When nobody is named, or the name cannot be written down.
    """
    try:
        name = " ".join(unquote(header, errors="strict").split())
    except UnicodeDecodeError:
        name = ""
    if not header.isascii() or not name.isprintable() or not 0 < len(name) <= _LONGEST_NAME:
        raise RefusedError(Refusal.ACTOR_MISSING, "Every change needs the name of a person.")
    return name
