"""Tests for the kinds of work, done here and now."""

from __future__ import annotations

import hashlib
import io
import threading
import zipfile
from dataclasses import replace
from typing import cast

import pytest
from PIL import Image

from service.errors import (
    FileNotStoredError,
    NotFoundError,
    UnknownPrinterError,
    UnreadableFileError,
)
from service.jobs.kinds import Job, put_in_tray, run_import, run_photos, run_print, run_spoiled
from service.jobs.requests import (
    ImportRequest,
    PhotosRequest,
    PrintRequest,
    Request,
    SheetInTray,
    ShelvedFile,
    SpoiledRequest,
    kind_of,
    write_request,
)
from service.jobs.watch import TaskOverError
from service.keeping.desk import Desk
from service.keeping.printing.attach import attach_run
from service.keeping.printing.printers_file import keep_saved
from service.records.mapping.mapping import ColumnMapping
from service.records.record import Collection
from service.sheets.correction import Correction
from service.sheets.printers.printer import Printer, TrayCorrection
from service.sheets.printers.saved import Saved
from service.sheets.printers.used_sheet import UsedSheet
from service.store.history import Stamp
from service.store.kept.imports import list_imports
from service.store.kept.mappings import save_mapping
from service.store.kept.tasks import Task, TaskState, add_task, finish_task, load_task
from service.store.load_records import load_object
from service.store.open import reading, writing
from service.store.printed.runs import list_runs, load_run, load_run_record
from service.store.save_records import save_records
from service.store.tables import CardState
from tests.jobs.made import LABELS, SETUP, find_task, shelve_export
from tests.keeping.made import BOX, COLLECTION, JAR
from tests.store.made import LATER, STAMP


def take_in_hand(desk: Desk, request: Request) -> Job:
    """Ask for work and take it in hand."""
    with writing(desk.engine) as connection:
        add_task(connection, "t-1", kind_of(request), write_request(request), stamp=STAMP)
        task = load_task(connection, "t-1")
    return Job(desk, task, SETUP.clock, threading.Event())


def task_of(job: Job) -> Task:
    """Give the task as the store has it by now."""
    return find_task(job.desk.engine, job.task.task_id)


@pytest.mark.print
def test_a_print_is_told_with_its_run(desk: Desk) -> None:
    """The run is kept for whoever asked, at the moment it was made; its task names it."""
    job = take_in_hand(desk, LABELS)
    run_print(job)
    task = task_of(job)
    with reading(desk.engine) as connection:
        (run,) = list_runs(connection)
        cards = load_run(connection, run.run_id)
    assert (task.state, task.finished_at) == (TaskState.DONE, LATER.at)
    assert (task.result["run_id"], task.result["cards"]) == (run.run_id, len(cards))
    assert task.result["files"] == [
        {"name": file.name, "stock": file.stock, "sha256": file.sha256} for file in run.files
    ]
    assert run.stamp == Stamp(STAMP.actor, LATER.at)
    assert {finding["code"] for finding in _findings(task)} == {"no-photo"}


def _findings(task: Task) -> list[dict[str, str]]:
    return cast("list[dict[str, str]]", task.result["findings"])


@pytest.mark.print
def test_a_cancelled_print_leaves_no_run(desk: Desk) -> None:
    """Cancelled at the last moment, when the cards are made: what is saved with it goes, too."""
    job = take_in_hand(desk, LABELS)
    with writing(desk.engine) as connection:
        finish_task(connection, "t-1", TaskState.CANCELLED, {}, at=LATER.at)
    with pytest.raises(TaskOverError):
        run_print(job)
    with pytest.raises(TaskOverError):
        _save_too(job)
    with reading(desk.engine) as connection:
        assert list_runs(connection) == ()
    with pytest.raises(NotFoundError):
        find_task(desk.engine, "t-2")
    assert task_of(job).state is TaskState.CANCELLED


def _save_too(job: Job) -> None:
    with writing(job.desk.engine) as connection:
        add_task(connection, "t-2", "print", {}, stamp=STAMP)
        job.finish(connection, {"run_id": 1})


def test_what_lies_in_the_printer_wins_over_what_was_remembered() -> None:
    """Whoever looks at the sheet knows better; a stock nobody looked at stays as it was."""
    begun = (UsedSheet("one", frozenset({1})), UsedSheet("two", frozenset({2})))
    sheets = (SheetInTray("two", (1, 3)), SheetInTray("three"))
    assert put_in_tray(begun, sheets) == (
        begun[0],
        UsedSheet("two", frozenset({1, 3})),
        UsedSheet("three", frozenset()),
    )


@pytest.mark.print
def test_the_reprint_list_is_looked_up_when_the_work_begins(desk: Desk) -> None:
    """Nothing is on it, which is told; then the box has another title, and its labels are."""
    run_print(take_in_hand(desk, LABELS))
    with writing(desk.engine) as connection:
        attach_run(connection, 1, stamp=STAMP)
    reprints = PrintRequest(reprints=True, go_on=True)
    with pytest.raises(NotFoundError, match="reprint list"):
        run_print(Job(desk, _again(desk, reprints, "t-2"), SETUP.clock, threading.Event()))
    box = replace(COLLECTION.containers[0], title="Smaller finds")
    with writing(desk.engine) as connection:
        save_records(connection, Collection(containers=(box,)), stamp=LATER)
    run_print(Job(desk, _again(desk, reprints, "t-3"), SETUP.clock, threading.Event()))
    with reading(desk.engine) as connection:
        keys = [card.made.key for card in load_run(connection, 2)]
    assert keys == [(BOX, "end-label", 1), (BOX, "end-label", 2)]


@pytest.mark.print
def test_the_printer_is_looked_up_when_the_work_begins(desk: Desk) -> None:
    """One that was measured meanwhile is used as it is now; one that is forgotten is told."""
    request = replace(LABELS, printer="office copier", tray="2")
    job = take_in_hand(desk, request)
    with pytest.raises(UnknownPrinterError, match="printer 'office copier'"):
        run_print(job)
    tray = TrayCorrection("2", "", Correction(shift_x_mm=-2.0), 0.1)
    keep_saved(desk.data_folder, Saved((Printer("Office copier", None, (tray,)),)))
    run_print(job)
    with reading(desk.engine) as connection:
        (run,) = list_runs(connection)
    assert (run.options["printer"], run.options["tray"]) == ("Office copier", "2")


def _again(desk: Desk, request: Request, task_id: str) -> Task:
    with writing(desk.engine) as connection:
        add_task(connection, task_id, kind_of(request), write_request(request), stamp=STAMP)
        return load_task(connection, task_id)


def test_an_import_is_told_with_what_was_noticed(desk: Desk) -> None:
    """A cell that cannot be read is a finding, and the record is taken in."""
    request = shelve_export(desk.shelf)
    job = take_in_hand(desk, request)
    run_import(job)
    task = task_of(job)
    with reading(desk.engine) as connection:
        (noted,) = list_imports(connection)
        assert load_object(connection, "X.112").title == "Buoy"
    assert task.result["import_id"] == noted.import_id
    assert task.result["summary"] == dict(noted.summary)
    assert "unreadable-weight" in str(task.result["findings"])
    # The same hash as for a file that is sent and taken in at once.
    digest = hashlib.sha256(b"export.json\0" + bytes.fromhex(request.files[0].sha256))
    assert noted.sha256 == digest.hexdigest()


def test_tables_of_one_export_are_read_together(desk: Desk) -> None:
    """Objects and museum come as two files under their own names."""
    tables = {"objects.csv": b"object_number,title\nX.112,Buoy\n", "museum.toml": b'name = "PM"\n'}
    files = tuple(
        ShelvedFile(name, desk.shelf.put(data, f".{name[-4:].lstrip('.')}").sha256)
        for name, data in tables.items()
    )
    job = take_in_hand(desk, ImportRequest(files))
    run_import(job)
    assert task_of(job).state is TaskState.DONE


def test_a_table_is_read_by_the_mapping_asked_for(desk: Desk) -> None:
    """The name goes with the request; what it says is looked up when the work begins."""
    request = shelve_export(desk.shelf)
    stored = desk.shelf.put(b"Was;Nr\nBoje;X.112\n", ".csv")
    files = (ShelvedFile("export.csv", stored.sha256),)
    mapping = ColumnMapping(headings=(("Nr", "object_number"), ("Was", "title")), ignored=("x",))
    with writing(desk.engine) as connection:
        save_mapping(connection, "ours", mapping, stamp=STAMP)
    run_import(take_in_hand(desk, replace(request, files=files, mapping="ours")))
    with reading(desk.engine) as connection:
        assert load_object(connection, "X.112").title == "Boje"


def test_a_lost_file_is_told(desk: Desk) -> None:
    """What is no longer on the shelf cannot be taken in, streamed or not."""
    for name in ("export.json", "export.xml"):
        job = Job(
            desk,
            _again(desk, ImportRequest((ShelvedFile(name, "a" * 64),)), name),
            SETUP.clock,
            threading.Event(),
        )
        with pytest.raises(FileNotStoredError):
            run_import(job)


def _pack(name: str) -> bytes:
    photo, packed = io.BytesIO(), io.BytesIO()
    Image.new("RGB", (400, 300), "#707070").save(photo, "JPEG")
    with zipfile.ZipFile(packed, "w") as entries:
        entries.writestr(name, photo.getvalue())
        entries.writestr("holiday.jpg", photo.getvalue())
    return packed.getvalue()


def test_photos_are_brought_once(desk: Desk) -> None:
    """Done once more, as after a crash before the task was finished, nothing is new."""
    stored = desk.shelf.put(_pack(f"{JAR}.jpg"), ".zip")
    request = PhotosRequest(ShelvedFile("photos.zip", stored.sha256))
    first = take_in_hand(desk, request)
    run_photos(first)
    assert (task_of(first).result["matched"], task_of(first).result["new"]) == (1, 1)
    assert "photo-not-named" in str(task_of(first).result["findings"])
    again = Job(desk, _again(desk, request, "t-2"), SETUP.clock, threading.Event())
    run_photos(again)
    assert task_of(again).result["new"] == 0


def test_a_damaged_zip_goes_by_its_own_name(desk: Desk) -> None:
    """The message names the file as it was brought, not as it lies on the shelf."""
    stored = desk.shelf.put(b"no zip file", ".zip")
    job = take_in_hand(desk, PhotosRequest(ShelvedFile("store room.zip", stored.sha256)))
    with pytest.raises(UnreadableFileError, match=r"store room\.zip"):
        run_photos(job)


@pytest.mark.print
def test_a_spoiled_sheet_is_printed_again_by_a_task(desk: Desk) -> None:
    """The new run is told as any other, and the cards of the sheet are spoiled from then on."""
    run_print(take_in_hand(desk, LABELS))
    with reading(desk.engine) as connection:
        (file,) = load_run_record(connection, 1).files
    run_spoiled(
        Job(
            desk,
            _again(desk, SpoiledRequest(1, file.name, 1), "t-2"),
            SETUP.clock,
            threading.Event(),
        )
    )
    with reading(desk.engine) as connection:
        spoiled, again = load_run(connection, 1), load_run(connection, 2)
    assert {card.state for card in spoiled} == {CardState.SPOILED}
    assert [card.made.key for card in again] == [card.made.key for card in spoiled]
    assert find_task(desk.engine, "t-2").result["run_id"] == 2
