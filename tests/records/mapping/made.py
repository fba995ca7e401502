"""A museum's own table and the mapping made for it."""

from __future__ import annotations

from service.records.mapping.mapping import ColumnMapping

TABLE = (
    "Inventarnummer;Benennung;Höhe;Breite;Gewicht;Notiz\n"
    "1931.14.2;Lot;12,5;8;1,43;alt\n"
    "PMM.77.3;Hut;30;30;;neu\n"
)
HEADINGS = (
    ("Inventarnummer", "object_number"),
    ("Benennung", "title"),
    ("Höhe", "height"),
    ("Breite", "width"),
    ("Gewicht", "weight"),
)
MAPPING = ColumnMapping(
    headings=HEADINGS,
    ignored=("Notiz",),
    fixed={"restricted": "no", "materials": "lead"},
    units={"height": "cm", "width": "cm", "weight": "kg"},
    decimal_comma=True,
)
