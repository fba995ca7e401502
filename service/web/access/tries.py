"""How often an address may try to sign in."""

from __future__ import annotations

from starlette.requests import HTTPConnection

from service.store.people.users import key_of
from service.web.access.limit import Limit
from service.web.replies.refusals import Refusal, RefusedError

MOST_FOR_A_NAME = 5
MOST_FOR_AN_ADDRESS = 20
"""In a minute: whoever tries one password on many names is stopped, too."""


class Tries:
    """Counts what each address tried within the last minute, for each name and in all."""

    def __init__(
        self, *, for_a_name: int = MOST_FOR_A_NAME, for_an_address: int = MOST_FOR_AN_ADDRESS
    ) -> None:
        """Take how many tries are allowed in a minute."""
        self._of_names = Limit(for_a_name)
        self._of_addresses = Limit(for_an_address)

    def count(self, connection: HTTPConnection, name: str) -> None:
        """Count a try, whatever comes of it.

        Raises:
            RefusedError: When there were too many within a minute.
        """
        address = connection.client.host if connection.client else ""
        allowed = self._of_addresses.allows(address)
        if not (allowed and self._of_names.allows(f"{address} {key_of(name)}")):
            raise RefusedError(Refusal.TOO_OFTEN, "There were too many tries within a minute.")
