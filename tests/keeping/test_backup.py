"""Tests for backups and what is restored from them."""

from __future__ import annotations

import threading
import zipfile
from pathlib import Path

import pytest

from service.errors import BackupError, FileDamagedError
from service.keeping.backup import MANIFEST, MEASURES, make_backup, restore_backup
from service.keeping.desk import Desk
from service.keeping.repack import Seen, put_in
from service.records.record import PlaceRecord
from service.store.history import load_history
from service.store.open import open_folder, reading, writing
from service.store.shelf.files import open_shelf
from service.store.shelf.photos import note_file
from tests.keeping.made import EMPTY
from tests.store.made import STAMP, dump


@pytest.fixture
def backup(desk: Desk, tmp_path: Path) -> Path:
    """Back up a store that names one file."""
    stored = desk.shelf.put(b"%PDF-1.7 a card", ".pdf")
    with writing(desk.engine) as connection:
        note_file(connection, stored, stamp=STAMP)
    return make_backup(desk, tmp_path / "b.zip").path


def test_what_is_restored_is_what_was_backed_up(desk: Desk, backup: Path, tmp_path: Path) -> None:
    """Every row and every file comes back; the shelf gives the bytes that were put."""
    assert restore_backup(backup, tmp_path / "new") == 1
    other = open_folder(tmp_path / "new")
    with reading(desk.engine) as ours, reading(other) as theirs:
        assert dump(ours) == dump(theirs)
    other.dispose()
    shelf = open_shelf(tmp_path / "new" / "files", scratch=tmp_path)
    ((sha256, suffix, _),) = shelf.names()
    assert shelf.get(sha256, suffix) == b"%PDF-1.7 a card"


def test_what_was_measured_comes_back_too(desk: Desk, tmp_path: Path) -> None:
    """Printers and sheets are measured with a ruler; what a machine has measured itself stays."""
    for name in MEASURES:
        (desk.data_folder / name).write_text(f"{name} of the museum")
    backup = make_backup(desk, tmp_path / "m.zip")
    folder = tmp_path / "other"
    folder.mkdir()
    (folder / MEASURES[0]).write_text("measured here")
    assert restore_backup(backup.path, folder) == backup.files == 0
    assert (folder / MEASURES[0]).read_text() == "measured here"
    assert (folder / MEASURES[1]).read_text() == f"{MEASURES[1]} of the museum"


def test_a_backup_is_made_while_somebody_packs(desk: Desk, tmp_path: Path) -> None:
    """The copy is of one moment: no revision is skipped and no change is told in part."""
    stop = threading.Event()

    def pack() -> None:
        revision = 0
        while not stop.is_set():
            with writing(desk.engine) as connection:
                place = PlaceRecord(f"X.{revision}")
                revision = put_in(connection, Seen(EMPTY, revision), place, stamp=STAMP).revision

    packer = threading.Thread(target=pack)
    packer.start()
    try:
        made = [make_backup(desk, tmp_path / f"{n}.zip") for n in range(5)]
    finally:
        stop.set()
        packer.join()
    for number, one in enumerate(made):
        folder = tmp_path / f"r{number}"
        restore_backup(one.path, folder)
        engine = open_folder(folder)
        with reading(engine) as connection:
            events = load_history(connection, container_number=EMPTY)
        engine.dispose()
        revisions = [event.entry.revision for event in events if event.entry.revision]
        assert revisions == list(range(1, len(revisions) + 1))


def test_nothing_is_written_over(backup: Path, desk: Desk, tmp_path: Path) -> None:
    """Neither a backup that is there nor a store that is there."""
    with pytest.raises(BackupError, match="such a file already"):
        make_backup(desk, backup)
    with pytest.raises(BackupError, match="a store in it already"):
        restore_backup(backup, tmp_path)
    with pytest.raises(BackupError, match="no such folder"):
        make_backup(desk, tmp_path / "none" / "b.zip")


def test_a_backup_that_fails_leaves_nothing(desk: Desk, backup: Path, tmp_path: Path) -> None:
    """Where a file is damaged there is no backup that only looks whole."""
    ((sha256, suffix, _),) = desk.shelf.names()
    desk.shelf.local_path(sha256, suffix).write_bytes(b"else")
    before = sorted(tmp_path.iterdir())
    with pytest.raises(FileDamagedError):
        make_backup(desk, tmp_path / "other.zip")
    assert sorted(tmp_path.iterdir()) == before
    assert backup.exists()


def damage(backup: Path, name: str, data: bytes | None) -> Path:
    """Write a backup anew with one entry changed, or without it."""
    other = backup.with_name("damaged.zip")
    with zipfile.ZipFile(backup) as source, zipfile.ZipFile(other, "w") as target:
        for entry in source.namelist():
            if entry != name:
                target.writestr(entry, source.read(entry))
        if data is not None:
            target.writestr(name, data)
    return other


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("store.db", b"text"),
        ("store.db", None),
        (MANIFEST, b"{}"),
        (MANIFEST, b'{"format": 2, "sha256": {"store.db": ""}}'),
        (MANIFEST, None),
    ],
    ids=["changed", "missing", "empty manifest", "other version", "no manifest"],
)
def test_a_damaged_backup_is_refused(
    backup: Path, tmp_path: Path, name: str, data: bytes | None
) -> None:
    """It is told what is wrong, and no store appears."""
    with pytest.raises(BackupError):
        restore_backup(damage(backup, name, data), tmp_path / "new")
    assert not (tmp_path / "new" / "store.db").exists()


def test_a_cut_backup_is_refused(backup: Path, tmp_path: Path) -> None:
    """A copy that was not finished is no backup."""
    cut = tmp_path / "cut.zip"
    cut.write_bytes(backup.read_bytes()[:-200])
    with pytest.raises(BackupError):
        restore_backup(cut, tmp_path / "new")
    with pytest.raises(BackupError):
        restore_backup(tmp_path / "none.zip", tmp_path / "new")


@pytest.mark.parametrize("left", ["store.db-journal", "store.db-wal"])
def test_a_journal_left_behind_is_refused(backup: Path, tmp_path: Path, left: str) -> None:
    """SQLite would play it into the restored store (sqlite.org, How To Corrupt, 1.4)."""
    (tmp_path / "new").mkdir()
    (tmp_path / "new" / left).write_bytes(b"of another store")
    with pytest.raises(BackupError, match=left):
        restore_backup(backup, tmp_path / "new")
    assert [path.name for path in (tmp_path / "new").iterdir()] == [left]


def test_a_damaged_file_on_the_shelf_is_mended(desk: Desk, backup: Path, tmp_path: Path) -> None:
    """Restoring into a folder whose files are still there leaves none of them damaged."""
    shelf = open_shelf(tmp_path / "new" / "files", scratch=tmp_path)
    ((sha256, suffix, _),) = desk.shelf.names()
    shelf.put(desk.shelf.get(sha256, suffix), suffix)
    shelf.local_path(sha256, suffix).write_bytes(b"else")
    restore_backup(backup, tmp_path / "new")
    assert shelf.get(sha256, suffix) == b"%PDF-1.7 a card"


def test_a_backup_packed_anew_and_damaged_is_refused(backup: Path, tmp_path: Path) -> None:
    """Other programs pack tighter; what cannot be unpacked, or is locked, is told all the same."""
    tight = tmp_path / "tight.zip"
    with zipfile.ZipFile(backup) as source, zipfile.ZipFile(tight, "w", zipfile.ZIP_DEFLATED) as to:
        for entry in source.namelist():
            to.writestr(entry, source.read(entry))
    broken = bytearray(tight.read_bytes())
    broken[60:64] = b"\xff" * 4
    tight.write_bytes(broken)
    with pytest.raises(BackupError, match=r"store\.db in it cannot be read"):
        restore_backup(tight, tmp_path / "new")
    locked = bytearray(backup.read_bytes())
    locked[6] |= 1
    locked[locked.find(b"PK\x01\x02") + 8] |= 1
    backup.write_bytes(locked)
    with pytest.raises(BackupError, match="password"):
        restore_backup(backup, tmp_path / "new")
