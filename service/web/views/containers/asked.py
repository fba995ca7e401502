"""What of a container's page is asked for, and what is to be said on it after a change failed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Annotated

from fastapi import Query

from service.keeping.containers.conflict import Conflict
from service.store.lists.suggest import Suggestion
from service.web.store.records.shapes import PlaceView
from service.web.views.shell.addresses import page_of_container, page_with
from service.web.views.shell.forms import FilledForm


@dataclass(frozen=True, slots=True)
class Asked:
    """What is shown of a container.

    Attributes:
        open: The key of the object that is about to be changed.
        arrange: Whether everything is being put into another order.
        card: The kind of the card beside the contents.
        side: Its side.
        focus: The id of what the keyboard stands on, where no script keeps it.
        layer: The layer that the next object goes into.
        begin: Which object, counted from 1, is among those that are shown of very many.
    """

    open: str = ""
    arrange: bool = False
    card: str = ""
    side: int = 1
    focus: str = ""
    layer: int = 1
    begin: int = 1

    def page(self, container_number: str) -> str:
        """Give the address of the page that shows this."""
        return page_with(
            page_of_container(container_number),
            open=self.open,
            arrange="yes" if self.arrange else "",
            card=self.card,
            side=self.side if self.side > 1 else 0,
            focus=self.focus,
            layer=self.layer if self.layer > 1 else 0,
            begin=self.begin if self.begin > 1 else 0,
        )


@dataclass(frozen=True, slots=True)
class Trouble:
    """Why a change was not made, and what can be done instead.

    Attributes:
        path: Where the form is sent that made it.
        form: What was typed, and what is wrong with it.
        fields: What was sent besides, to be sent again with another choice.
        choices: Records that may be meant.
        unknown: A number that is in no record, which can be made now.
        lying: Where the object lies that was to be put in, each with the key of its place.
        conflict: Both states, where somebody else was quicker.
    """

    path: str
    form: FilledForm
    fields: Mapping[str, str] = field(default_factory=dict)
    choices: tuple[Suggestion, ...] = ()
    unknown: str = ""
    lying: tuple[tuple[str, PlaceView], ...] = ()
    conflict: Conflict | None = None

    @property
    def status(self) -> int:
        """Give the status of the page: 409 for a conflict, else 422 (RFC 9110)."""
        return 409 if self.conflict else 422


NO_TROUBLE = Trouble("", FilledForm())


def read_asked(  # noqa: PLR0913 - one for each thing an address says.
    *,
    show: Annotated[str, Query(alias="open", max_length=20)] = "",
    arrange: Annotated[str, Query(max_length=10)] = "",
    card: Annotated[str, Query(max_length=100)] = "",
    side: Annotated[int, Query(ge=1, le=100)] = 1,
    focus: Annotated[str, Query(max_length=60)] = "",
    layer: Annotated[int, Query(ge=1, le=10_000)] = 1,
    begin: Annotated[int, Query(ge=1, le=1_000_000)] = 1,
) -> Asked:
    """Read what an address asks for."""
    return Asked(show, arrange == "yes", card, side, focus, layer, begin)
