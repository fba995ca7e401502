"""How what was sent is read: which file is which table, and by which mapping; kept as text."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field

from service.records.mapping.document import mapping_data, read_mapping
from service.records.mapping.mapping import ColumnMapping

PACKINGS = "packings"


@dataclass(frozen=True, slots=True)
class HowRead:
    """How the tables of a source are read.

    Attributes:
        tables: The file of each table, where it does not say so by its name.
        mappings: The mapping of each table that is read by one of its own.
        boxes_made: Whether the packings stand in a column of the objects, so that a container that
            only stands there is made.
        named: What the mappings are called where they are saved ones.
    """

    tables: Mapping[str, str] = field(default_factory=dict)
    mappings: Mapping[str, ColumnMapping] = field(default_factory=dict)
    boxes_made: bool = False
    named: str = ""


AS_IT_IS = HowRead()


def write_how(how: HowRead) -> str:
    """Write it as text; the same is always the same text."""
    data = {
        "tables": dict(how.tables),
        "mappings": {table: mapping_data(one) for table, one in how.mappings.items()},
        "boxes_made": how.boxes_made,
        "named": how.named,
    }
    return json.dumps(data, ensure_ascii=False)


def read_how(text: str) -> HowRead:
    """Read what was written; an empty text is a source that is read as it is."""
    if not text:
        return AS_IT_IS
    data = json.loads(text)
    return HowRead(
        dict(data["tables"]),
        {table: read_mapping(one)[0] for table, one in data["mappings"].items()},
        bool(data["boxes_made"]),
        str(data["named"]),
    )
