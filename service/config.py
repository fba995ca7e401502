"""Settings: one table, read from `UNDERLID_*` in the environment that is handed in."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from platformdirs import user_data_path
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from service.errors import ConfigError

PREFIX = "UNDERLID_"


class Settings(BaseModel):
    """Every setting with its default and help; the name in the environment is in capitals."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    host: str = Field(default="127.0.0.1", description="Address the service listens on.")
    port: int = Field(default=8000, ge=0, le=65535, description="Port the service listens on.")
    allowed_hosts: str = Field(
        default="",
        description="Names by which others reach it, with commas between; `share` adds its own.",
    )
    behind_proxy: bool = Field(
        default=False,
        description="Whether a proxy on this machine stands before it; X-Forwarded-Proto, -Host and"
        " -For say what that was asked.",
    )
    certificate: str = Field(
        default="", description="File of the certificate for https; empty: `share` makes one."
    )
    key: str = Field(default="", description="File of the key of that certificate.")
    data: Path = Field(
        default_factory=lambda: user_data_path("underlid", appauthor=False),
        description="Folder for thumbnails, finished faces, printers and all else that is kept.",
    )
    database: str = Field(
        default="",
        description="Database of the store as an SQLAlchemy URL; empty: the data folder.",
    )
    files: str = Field(
        default="",
        description="Bucket for photos and PDFs, such as s3://cards; empty: the data folder.",
    )
    actor: str = Field(
        default="", description="Who acts where no name is given; empty: the name of the user."
    )
    slot: str = Field(
        default="1",
        description="Lasting name of this server; one that runs has it, and the next of that name"
        " goes on with what it left undone. Letters, digits and hyphens.",
    )
    processes: int = Field(
        default=2, ge=1, le=64, description="Child processes that decode photos and draw cards."
    )

    @property
    def hosts(self) -> frozenset[str]:
        """Give the names by which others reach it."""
        named = (name.strip().casefold() for name in self.allowed_hosts.split(","))
        return frozenset(name for name in named if name)


def load_settings(environment: Mapping[str, str]) -> Settings:
    """Read the settings from an environment; a name that is not in the table is an error.

    Raises:
        ConfigError: When a name is unknown or a value cannot be used.
    """
    given = {
        name.removeprefix(PREFIX).lower(): value
        for name, value in environment.items()
        if name.startswith(PREFIX)
    }
    try:
        return Settings.model_validate(given)
    except ValidationError as error:
        first = error.errors()[0]
        name = PREFIX + str(first["loc"][0]).upper()
        unknown = first["type"] == "extra_forbidden"
        reason = "there is no setting of this name" if unknown else first["msg"]
        raise ConfigError(name, reason=reason) from None
