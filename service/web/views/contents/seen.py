"""What every change of contents begins with: the container, the revision that was seen, and why."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Annotated

from fastapi import Depends, Form, Request, Response

from service.errors import PackingConflictError, ServiceError, StoreError
from service.keeping.containers.conflict import explain_conflict
from service.keeping.repack import Seen
from service.languages.saying import say
from service.records.record import PlaceRecord
from service.store.handles import Connection
from service.store.packing.load import find_held, load_packing
from service.web.store.asking import Acting
from service.web.views.containers.asked import Asked, Trouble
from service.web.views.containers.contents import find_place
from service.web.views.containers.page import show_container
from service.web.views.language.telling import tell_error
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.reader import ThePageActing

_MOST_REVISION = 999_999_999
Short = Annotated[str, Form(max_length=200)]
Text = Annotated[str, Form(max_length=1000)]


class GoneError(Exception):
    """Raised when what a form names does not lie in the container as it was seen."""


@dataclass(frozen=True, slots=True)
class Desire:
    """A change that somebody wants, with all that is needed to make it or to say why not.

    Attributes:
        seen: The container, the revision that was seen, and why it is changed.
        key: Names the place that is meant, if one is.
        asked: What of the page was shown.
        path: Where the form was sent.
        fields: What was typed, to be shown again.
    """

    request: Request
    acting: Acting
    seen: Seen
    key: str
    asked: Asked
    path: str
    fields: Mapping[str, str]

    def find(self, connection: Connection) -> PlaceRecord:
        """Find the place that is meant in the packing that was seen.

        Raises:
            NotFoundError: When there is no such container or revision.
            GoneError: When nothing there has the key.
        """
        number, revision = self.seen.container_number, self.seen.revision
        places = load_packing(connection, number, revision=revision).places
        place = find_place(places, self.key)
        if place is None:
            raise GoneError
        return place

    def refuse(self, trouble: Trouble, asked: Asked | None = None) -> Response:
        """Show the page again with what stood in the way."""
        number = self.seen.container_number
        return show_container(
            self.request, self.acting.counter, number, asked or self.asked, trouble
        )

    def refuse_field(self, name: str, words: str) -> Response:
        """Show the page again with a fault beside a field."""
        form = FilledForm(self.fields, {name: words})
        return self.refuse(Trouble(self.path, form, self.fields))


async def _desire(  # noqa: PLR0913 - one for each field that every form has.
    *,
    request: Request,
    acting: ThePageActing,
    number: Annotated[str, Form(max_length=500)],
    revision: Annotated[int, Form(ge=0, le=_MOST_REVISION)],
    reason: Text = "",
    key: Annotated[str, Form(max_length=20)] = "",
    card: Annotated[str, Form(max_length=100)] = "",
    side: Annotated[int, Form(ge=1, le=100)] = 1,
    begin: Annotated[int, Form(ge=1, le=1_000_000)] = 1,
) -> Desire:
    form = await request.form()
    fields = {name: text for name, text in form.items() if isinstance(text, str)}
    fields.pop("form_token", None)
    return Desire(
        request,
        acting,
        Seen(number, revision, " ".join(reason.split())),
        key,
        Asked(open=key, card=card, side=side, begin=begin),
        request.url.path,
        fields,
    )


TheDesire = Annotated[Desire, Depends(_desire)]


def make_change(
    desire: Desire, change: Callable[[Connection], Notice], *, asked: Asked | None = None
) -> Response:
    """Make a change and show the container; on a conflict show both states.

    Raises:
        ServiceError: When the service itself is at fault.
    """
    number = desire.seen.container_number
    try:
        with desire.acting.counter.writing() as connection:
            notice = change(connection)
    except GoneError:
        words = say("That does not lie here any more. Look at what lies here now.")
        return desire.refuse_field("", words)
    except PackingConflictError as error:
        return _show_conflict(desire, error)
    except StoreError as error:
        _check_container(desire, error)
        return desire.refuse_field("", tell_error(error))
    return go_to((asked or replace(desire.asked, open="")).page(number), notice)


def undo_packing(seen: Seen, revision: int) -> Undo:
    """Give the form that packs the container again as it was seen."""
    fields = {"number": seen.container_number, "revision": str(revision), "to": str(seen.revision)}
    return Undo("/contents/back", fields)


def _show_conflict(desire: Desire, error: PackingConflictError) -> Response:
    with desire.acting.counter.reading() as connection:
        conflict = explain_conflict(connection, error)
    fields = {**desire.fields, "revision": str(error.revision)}
    form = FilledForm(desire.fields)
    return desire.refuse(Trouble(desire.path, form, fields, conflict=conflict))


def _check_container(desire: Desire, error: ServiceError) -> None:
    """Hand an error on when the container itself is not there, for then there is no page of it.

    Raises:
        ServiceError: The error that was given.
    """
    with desire.acting.counter.reading() as connection:
        try:
            find_held(connection, desire.seen.container_number)
        except StoreError:
            raise error from None
