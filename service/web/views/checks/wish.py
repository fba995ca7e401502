"""Which checks a reader walks for; every page of the round hands it on to the next."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Annotated
from urllib.parse import urlencode

from fastapi import Depends, Query

from service.handling.checks.kinds import CheckKind
from service.keeping.rounds.due import (
    ALL_KINDS,
    DueContainer,
    DueInShort,
    DueWish,
    list_due,
    list_due_in_short,
    put_overdue_first,
)
from service.store.handles import Connection

_MOST_DAYS = 3650


@dataclass(frozen=True, slots=True)
class RoundWish:
    """What is walked for: due within so many days, some kinds of check, one place."""

    within: int = 0
    kind: str = ""
    place: str = ""

    @property
    def kinds(self) -> Collection[CheckKind]:
        """The kinds of check; all of them where none is chosen."""
        return {CheckKind(self.kind)} if self.kind in set(CheckKind) else ALL_KINDS

    @property
    def fields(self) -> Mapping[str, str]:
        """What is chosen, by the names of fields; what is not is left out."""
        said = {"within": str(self.within or ""), "kind": self.kind, "place": self.place}
        return {name: value for name, value in said.items() if value}

    def path(self, path: str, **more: str) -> str:
        """Give a path that carries the wish on."""
        query = urlencode(more | dict(self.fields))
        return f"{path}?{query}" if query else path

    def list_due_in_short(self, connection: Connection, today: date, *, most: int) -> DueInShort:
        """Count what is to be walked to, and give the first ones."""
        until = today + timedelta(days=self.within)
        wish = DueWish(until, today, self.kinds, self.place)
        return list_due_in_short(connection, wish, most=most)

    def list_due(self, connection: Connection, today: date) -> tuple[DueContainer, ...]:
        """List what is to be walked to, overdue first."""
        until = today + timedelta(days=self.within)
        found = list_due(connection, until, kinds=self.kinds, place=self.place)
        return put_overdue_first(found, today)


def read_wish(within: str = "", kind: str = "", place: str = "") -> RoundWish:
    """Read a wish as it was sent; what cannot be read counts as not chosen."""
    days = int(within[:5]) if within[:5].isascii() and within[:5].isdigit() else 0
    known = kind if kind in set(CheckKind) else ""
    return RoundWish(min(days, _MOST_DAYS), known, place)


def _wish(
    within: Annotated[str, Query(max_length=20)] = "",
    kind: Annotated[str, Query(max_length=50)] = "",
    place: Annotated[str, Query(max_length=500)] = "",
) -> RoundWish:
    return read_wish(within, kind, place)


TheWish = Annotated[RoundWish, Depends(_wish)]
