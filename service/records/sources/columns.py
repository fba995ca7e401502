"""The columns of each table and the other headings they are known by."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from service.records.sources.standards import DARWIN_CORE, standard_headings
from service.sentence import Sentence


def heading_key(heading: str) -> str:
    """Reduce a heading to its letters and digits, so that case, blanks and signs do not matter."""
    return re.sub(r"[\W_]+", "", heading.casefold())


@dataclass(frozen=True, slots=True)
class Columns:
    """The columns of one kind of table, the one it cannot do without, and other headings.

    `own` holds the headings of one museum, by column, and `own_stands` says where it wrote them;
    `ignored` are headings it knows and does not use, `piped` those whose lists are divided by `|`.
    """

    names: tuple[str, ...]
    number: str = ""
    others: Mapping[str, str] = field(default_factory=dict)
    own: Mapping[str, str] = field(default_factory=dict)
    own_stands: str = Sentence("under [columns] in museum.toml")
    ignored: frozenset[str] = frozenset()
    piped: frozenset[str] = frozenset()
    lists: frozenset[str] = frozenset()
    records: frozenset[str] = frozenset()
    counts: frozenset[str] = frozenset()
    yes_or_no: frozenset[str] = frozenset()

    def find(self, heading: str) -> str | None:
        """Find the column a heading means."""
        return self.by_key().get(heading_key(heading))

    def by_key(self) -> dict[str, str]:
        """Give every heading this table knows, reduced, with its column."""
        return (
            {heading_key(other): name for other, name in self.others.items()}
            | {heading_key(name): name for name in self.names}
            | {heading_key(heading): name for name, heading in self.own.items()}
        )

    def closeness(self, heading: str, column: str) -> int:
        """Tell how surely a heading means a column: by the museum's word, its name, or another."""
        key = heading_key(heading)
        if column in self.own and key == heading_key(self.own[column]):
            return 2
        return int(key == heading_key(column))

    def is_piped(self, heading: str) -> bool:
        """Tell whether a list under this heading is divided by `|`."""
        return heading_key(heading) in self.piped


def _others(words: Mapping[str, str]) -> dict[str, str]:
    return {other.strip(): name for name, others in words.items() for other in others.split(",")}


def _names(text: str) -> tuple[str, ...]:
    return tuple(text.split())


def _set(text: str) -> frozenset[str]:
    return frozenset(text.split())


OBJECT_COLUMNS = Columns(
    names=_names(
        "object_number title object_name period number_of_parts parts accessories materials"
        " dimensions weight condition handling_notes hazards cautions hang_factors former_numbers"
        " photos catalogue_url restricted"
    ),
    number="object_number",
    others=standard_headings()
    | _others(
        {
            "object_number": "object no, object nr, number, no, nr, accession number, accession no,"
            " inventory number, inventory no, museum number, catalogue number, reg no,"
            " registration number, object id, identifier",
            "title": "name, object title, brief description, short description, description",
            "object_name": "simple name, object type, type of object",
            "period": "date, dates, dating, date made, production date, made",
            "number_of_parts": "parts count, no of parts, number of items, quantity, count",
            "materials": "material, medium",
            "dimensions": "size, measurements, measures, dimension",
            "weight": "mass",
            "condition": "state, condition note",
            "handling_notes": "handling, handling note, handling instructions",
            "hazards": "hazard",
            "cautions": "caution, care",
            "former_numbers": "former number, old number, old numbers, other number, other numbers",
            "photos": "photo, image, images, picture, pictures, photograph, photographs",
            "catalogue_url": "url, link, web address, catalogue address",
        }
    ),
    lists=_set("parts accessories materials hazards cautions hang_factors former_numbers photos"),
    records=_set("parts hazards photos"),
    counts=_set("object_number number_of_parts"),
    yes_or_no=_set("restricted"),
    piped=frozenset(
        heading_key(f"{prefix}{term}")
        for term, column in DARWIN_CORE.items()
        if column in {"materials", "former_numbers", "photos"}
        for prefix in ("", "dwc:")
    ),
)

CONTAINER_COLUMNS = Columns(
    names=_names(
        "container_number kind title location lid lid_size end_size inner_size compartments"
        " tare_weight gross_weight packing_materials hand_height inside stacking_limit weight_limit"
        " heavy_end temporary_until questions_role questions_phone questions_person handling_notes"
    ),
    number="container_number",
    others=_others(
        {
            "container_number": "container no, container, box number, box no, box nr, box, number,"
            " no, nr",
            "kind": "type, container type, box type",
            "title": "name, description, contents",
            "location": "place, store, shelf, store location, normal location",
            "lid_size": "lid dimensions",
            "end_size": "end dimensions",
            "inner_size": "inner dimensions, inside size, internal size, internal dimensions",
            "compartments": "grid",
            "tare_weight": "tare, empty weight, weight empty",
            "gross_weight": "gross, weight, full weight, weight full, total weight",
            "packing_materials": "packing material, packing",
            "hand_height": "shelf height, rail height",
            "inside": "inside container, in container",
            "weight_limit": "max load, maximum load, load limit, max weight, maximum weight",
            "questions_role": "ask, contact",
            "questions_phone": "telephone, phone",
            "handling_notes": "handling, handling note, handling instructions",
        }
    ),
    lists=_set("location packing_materials"),
    counts=_set("container_number stacking_limit inside"),
)

PACKING_COLUMNS = Columns(
    names=_names(
        "container_number revision object_number parts layer compartment note packed_by packed_on"
        " reason"
    ),
    number="container_number",
    others=_others(
        {
            "container_number": "container no, container, box number, box no, box nr, box",
            "object_number": "object no, object nr, object, number, no, nr, accession number,"
            " accession no, inventory number, inventory no, museum number, catalogue number",
            "parts": "part",
            "layer": "tray, level",
            "compartment": "cell, position",
            "note": "notes, remark, remarks",
            "packed_by": "packer",
            "packed_on": "packed, date, date packed, packing date",
        }
    ),
    lists=_set("parts"),
    counts=_set("container_number object_number revision layer"),
)

MUSEUM_COLUMNS = Columns(
    names=_names(
        "name short_name object_address container_address upper_case_addresses show_location"
        " aisle_distance questions_role questions_phone questions_person region presume_hazards"
        " second_language"
        " checks_pests checks_tissue checks_corrosion checks_labels checks_weight"
        " checks_textiles checks_natural_history checks_found packing_checks_off"
        " scan_shows_contents scan_shows_location"
    ),
    lists=_set("packing_checks_off"),
    counts=_set(
        "checks_pests checks_tissue checks_corrosion checks_labels checks_weight"
        " checks_textiles checks_natural_history checks_found"
    ),
    yes_or_no=_set(
        "upper_case_addresses show_location presume_hazards scan_shows_contents scan_shows_location"
    ),
)
