from __future__ import annotations

import hashlib
from datetime import timedelta
from pathlib import Path

import pytest

from service.errors import FileDamagedError, FileNotStoredError
from service.store.shelf.files import FileShelf, StoredFile, open_bucket, open_shelf

DATA = b"%PDF-1.7 a card"
SHA256 = hashlib.sha256(DATA).hexdigest()


@pytest.fixture
def shelf(tmp_path: Path) -> FileShelf:
    """Give an empty shelf."""
    return open_shelf(tmp_path / "files", scratch=tmp_path)


def test_a_file_comes_back_as_it_was_put(shelf: FileShelf, tmp_path: Path) -> None:
    """Bytes and files alike are named by their hash; the same again is the same file."""
    path = tmp_path / "card.pdf"
    path.write_bytes(DATA)
    assert (
        shelf.put(DATA, ".pdf") == shelf.put(path, ".pdf") == StoredFile(SHA256, ".pdf", len(DATA))
    )
    assert shelf.get(SHA256, ".pdf") == DATA
    assert shelf.local_path(SHA256, ".pdf").read_bytes() == DATA
    assert [(sha256, suffix) for sha256, suffix, _ in shelf.names()] == [(SHA256, ".pdf")]


def test_a_file_is_written_once(shelf: FileShelf) -> None:
    """What is there already is left alone, damaged or not: only a backup mends it."""
    shelf.put(DATA, ".pdf")
    path = shelf.local_path(SHA256, ".pdf")
    path.write_bytes(b"something else")
    shelf.put(DATA, ".pdf")
    with pytest.raises(FileDamagedError, match=SHA256):
        shelf.get(SHA256, ".pdf")


def test_what_was_never_put_is_told(shelf: FileShelf) -> None:
    """A file that is lost is named by its hash, and there is nothing at its path."""
    with pytest.raises(FileNotStoredError, match=SHA256):
        shelf.get(SHA256, ".pdf")
    assert not shelf.local_path(SHA256, ".pdf").exists()


def test_only_files_without_a_row_are_swept(shelf: FileShelf) -> None:
    """What a row names stays, and what was put lately stays as well."""
    kept, lost = shelf.put(DATA, ".pdf"), shelf.put(b"lost", ".jpg")
    ((_, _, put_at), _) = shelf.names()
    later = put_at + timedelta(minutes=1)
    assert shelf.sweep(set[str]().__contains__, before=later - timedelta(days=1)) == 0
    assert shelf.sweep({kept.sha256}.__contains__, before=later) == 1
    assert [sha256 for sha256, _, _ in shelf.names()] == [kept.sha256]
    assert lost.sha256 != kept.sha256


def test_a_shelf_elsewhere_is_copied_from(tmp_path: Path) -> None:
    """What lies on no disk of ours is read from a copy in the scratch folder."""
    shelf = open_bucket("memory:///", scratch=tmp_path)
    shelf.put(DATA, ".pdf")
    assert shelf.local_path(SHA256, ".pdf").read_bytes() == DATA
    assert not shelf.local_path("0" * 64, ".pdf").exists()


def test_only_what_is_damaged_is_put_back(shelf: FileShelf) -> None:
    """A whole file is left as it is; a damaged one is replaced by that of a backup."""
    shelf.put_back(DATA, ".pdf")
    path = shelf.local_path(SHA256, ".pdf")
    before = path.stat().st_ino
    shelf.put_back(DATA, ".pdf")
    assert path.stat().st_ino == before
    path.write_bytes(b"something else")
    shelf.put_back(DATA, ".pdf")
    assert shelf.get(SHA256, ".pdf") == DATA
