"""Write the folder many_objects: five boxes of 1, 2, 24, 60 and 300 objects, no photos.

Run it with any Python 3.11 or later; the same words come out every time.
"""

from __future__ import annotations

import csv
from pathlib import Path

HERE = Path(__file__).resolve().parent
BOX_COUNTS = {"M-001": 1, "M-002": 2, "M-024": 24, "M-060": 60, "M-300": 300}
COLUMNS_AND_ROWS = {"M-024": (6, 4), "M-060": (10, 6)}
KINDS = ("Block", "Shackle", "Thimble", "Fid", "Cleat", "Sheave", "Net sinker", "Rowlock")
STUFFS = ("brass", "lignum vitae", "iron", "ash", "bone", "galvanised steel", "elm")
PLACES = (
    "from the sail loft",
    "from the pilot station, lower shelf",
    "",
    "found on the foreshore at Merrow Point after the January storm",
)
LAYERS_OF_LARGEST = 3


def object_row(number: str, index: int) -> dict[str, str]:
    """Return one row of objects.csv; every third object is weighed, every fifth is lead."""
    kind = KINDS[index % len(KINDS)]
    stuff = STUFFS[index % len(STUFFS)]
    place = PLACES[index % len(PLACES)]
    lead = "lead: presumed, not tested" if index % 5 == 4 else ""
    return {
        "object_number": number,
        "title": ", ".join(part for part in (kind, stuff, place) if part),
        "object_name": kind.lower(),
        "number_of_parts": "1",
        "materials": stuff,
        "weight": f"{40 + index * 7 % 350} g" if index % 3 == 0 else "",
        "hazards": lead,
        "restricted": "no",
    }


def container_row(number: str, count: int) -> dict[str, str]:
    """Return one row of containers.csv."""
    columns, rows = COLUMNS_AND_ROWS.get(number, (0, 0))
    noun = "object" if count == 1 else "objects"
    return {
        "container_number": number,
        "kind": "box",
        "title": f"Rigger's store, {count} {noun}",
        "location": "Long Store / bay 12 / shelf 1",
        "lid": "opaque",
        "lid_size": "400 x 300 mm",
        "end_size": "300 x 120 mm",
        "compartments": f"{columns} x {rows}" if columns else "",
        "tare_weight": "0.9 kg",
        "questions_role": "Collections desk",
        "questions_phone": "555 0142",
    }


def place_row(container: str, number: str, index: int, count: int) -> dict[str, str]:
    """Return one row of packings.csv; the largest box has three equal layers."""
    columns, _rows = COLUMNS_AND_ROWS.get(container, (0, 0))
    per_layer = count // LAYERS_OF_LARGEST if container == "M-300" else count
    compartment = f"{chr(65 + index // columns)}{index % columns + 1}" if columns else ""
    return {
        "container_number": container,
        "revision": "1",
        "object_number": number,
        "layer": str(index // per_layer + 1),
        "compartment": compartment,
        "packed_by": "R. Vane",
        "packed_on": "2026-10-20",
        "reason": "Rigger's store moved",
    }


def write_rows(name: str, rows: list[dict[str, str]]) -> None:
    """Write rows as CSV beside this script, with the columns of the first row."""
    with (HERE / name).open("w", encoding="utf-8", newline="") as stream:
        writer = csv.DictWriter(stream, list(rows[0]), lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)


def main() -> None:
    """Write the three CSV files."""
    objects: list[dict[str, str]] = []
    places: list[dict[str, str]] = []
    for container, count in BOX_COUNTS.items():
        for index in range(count):
            number = f"1988.{container[2:].lstrip('0')}.{index + 1}"
            objects.append(object_row(number, index))
            places.append(place_row(container, number, index, count))
    write_rows("objects.csv", objects)
    write_rows("containers.csv", [container_row(n, c) for n, c in BOX_COUNTS.items()])
    write_rows("packings.csv", places)


if __name__ == "__main__":
    main()
