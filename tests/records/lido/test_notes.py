from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import Element, read_blocks
from service.records.lido.notes import LISTS, TEXTS, name_kind, read_notes
from service.records.rows.row import Value
from service.records.sources.columns import OBJECT_COLUMNS

Maker = Callable[[str], Element]


def notes(*pairs: tuple[str, str]) -> str:
    """Give notes, each with its kind, in their place."""
    inner = "".join(
        f'<_objectDescriptionSet _type="{kind}"><_descriptiveNoteValue>{text}'
        "</_descriptiveNoteValue></_objectDescriptionSet>"
        for kind, text in pairs
    )
    wrap = f"<_objectDescriptionWrap>{inner}</_objectDescriptionWrap>"
    return (
        f"<_descriptiveMetadata><_objectIdentificationWrap>{wrap}</_objectIdentificationWrap>"
        "</_descriptiveMetadata>"
    )


@pytest.mark.parametrize(
    ("inner", "expected"),
    [
        (notes(("condition", "worn")), {"condition": "worn"}),
        (notes(("Erhaltungszustand", "gut")), {"condition": "gut"}),
        (notes(("condition", "worn"), ("condition", "torn")), {"condition": "worn; torn"}),
        (notes(("handling notes", "two people")), {"handling_notes": "two people"}),
        (notes(("hazards", "arsenic: presumed")), {"hazards": "arsenic: presumed"}),
        (notes(("parts", "a: lid"), ("parts", "b")), {"parts": ("a: lid", "b")}),
        (notes(("description", "A jar."), ("", "x"), ("condition", "")), {}),
        ("<_descriptiveMetadata/>" + notes(("condition", "worn")), {"condition": "worn"}),
        ("", {}),
    ],
    ids=["one", "German", "two", "handling", "hazard", "parts", "others", "later block", "none"],
)
def test_only_notes_of_known_kinds_count(
    make_record: Maker, inner: str, expected: dict[str, Value]
) -> None:
    """A note is read where its kind says what it is, and left where it could be anything."""
    assert read_notes(read_blocks(make_record(inner), "descriptiveMetadata")) == expected


def test_kinds_are_columns() -> None:
    """What notes can say stands in the object table, too."""
    assert {*TEXTS, *LISTS} <= set(OBJECT_COLUMNS.names)
    assert set(LISTS) <= OBJECT_COLUMNS.lists
    assert name_kind("hang_factors") == "hang factors"
