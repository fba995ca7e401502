from __future__ import annotations

from collections.abc import Callable
from datetime import date

from service.geometry import Size
from service.records.measures import Grid, Measure
from service.records.read_containers import read_containers
from service.records.record import ContainerKind, ContainerRecord, Lid, Questions, Weight
from service.records.rows.row import Row

MakeRow = Callable[..., Row]


def test_row_becomes_a_container(make_row: MakeRow) -> None:
    """Every column comes to its field."""
    row = make_row(
        container_number="B-027",
        kind="Box",
        location="Long Store / bay 4 / shelf 2",
        lid="clear",
        lid_size="400 x 300 mm",
        end_size="300 x 120 mm",
        inner_size="390 x 290 x 115 mm",
        compartments="3 x 2",
        tare_weight="1.6 kg",
        gross_weight="unknown",
        packing_materials="acid-free board; tissue",
        hand_height="900 mm",
        inside="B-001",
        stacking_limit="1 box on top",
        weight_limit="9 kg",
        heavy_end="left",
        temporary_until="14 Oct 2026",
        questions_role="Collections desk",
        questions_phone="555 0142",
    )
    assert read_containers([row]) == (
        ContainerRecord(
            container_number="B-027",
            kind=ContainerKind.BOX,
            location=("Long Store", "bay 4", "shelf 2"),
            lid=Lid.CLEAR,
            lid_size=Size(400, 300),
            end_size=Size(300, 120),
            inner_dimensions=(Measure("", 390), Measure("", 290), Measure("", 115)),
            compartments=Grid(3, 2),
            tare=Weight(1600),
            packing_materials=("acid-free board", "tissue"),
            hand_height_mm=900,
            inside="B-001",
            stacking_limit=1,
            weight_limit_g=9000,
            heavy_end="left",
            temporary_until=date(2026, 10, 14),
            questions=Questions("Collections desk", "555 0142"),
        ),
    )
    assert row.notebook.findings() == ()


def test_number_alone_makes_a_container(make_row: MakeRow) -> None:
    """Whatever is not written has its usual value."""
    assert read_containers([make_row(container_number="B-1")]) == (ContainerRecord("B-1"),)


def test_finding_names_the_container(make_row: MakeRow) -> None:
    """A bad cell is found by the container's number as well."""
    row = make_row(container_number="B-1", lid="glass")
    (container,) = read_containers([row])
    assert container.lid is Lid.OPAQUE
    (finding,) = row.notebook.findings()
    assert (finding.code, finding.where.container_number) == ("unknown-lid", "B-1")
