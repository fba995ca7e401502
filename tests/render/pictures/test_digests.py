from __future__ import annotations

import hashlib
import os
import time
from pathlib import Path

import pytest

from service.render.pictures.digests import DigestIndex

MOST_BYTES = 1000
HOUR_NS = 3_600_000_000_000


def _in_an_hour() -> int:
    """Tell a time at which every file of the test has long been at rest."""
    return time.time_ns() + HOUR_NS


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _index(folder: Path) -> DigestIndex:
    index = DigestIndex(folder / "digests", _in_an_hour)
    index.load()
    return index


def _learnt(folder: Path, photo: Path) -> Path:
    """Hash a photo, keep what was learnt, and give the file that holds it."""
    index = _index(folder)
    index.digest_of(photo, most_bytes=MOST_BYTES)
    index.keep()
    return folder / "digests"


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """Give a file."""
    path = tmp_path / "photo.jpg"
    path.write_bytes(b"picture")
    return path


def _swap_unseen(index: Path, old: bytes, new: bytes) -> None:
    """Put another digest into the index, so that one that was believed can be told."""
    lines = index.read_text().split("\n", 1)[1].replace(_digest(old), _digest(new))
    index.write_text(f"{_digest(lines.encode())}\n{lines}")


def test_the_digest_is_that_of_the_first_bytes(tmp_path: Path, photo: Path) -> None:
    """It is the SHA-256 of the file up to the limit."""
    assert _index(tmp_path).digest_of(photo, most_bytes=MOST_BYTES) == _digest(b"picture")
    assert _index(tmp_path).digest_of(photo, most_bytes=3) == _digest(b"pic")


def test_an_unchanged_file_is_not_read_again(tmp_path: Path, photo: Path) -> None:
    """What the index says is believed, in this run and the next."""
    _swap_unseen(_learnt(tmp_path, photo), b"picture", b"kept")
    index = _index(tmp_path)
    assert index.digest_of(photo, most_bytes=MOST_BYTES) == _digest(b"kept")


@pytest.mark.parametrize("content", [b"other picture", b"another"], ids=["longer", "as long"])
def test_a_changed_file_is_read_again(tmp_path: Path, photo: Path, content: bytes) -> None:
    """A change shows even when the length is the same and the file's own time is set back."""
    _learnt(tmp_path, photo)
    times = photo.stat()
    photo.write_bytes(content)
    os.utime(photo, ns=(times.st_atime_ns, times.st_mtime_ns))
    assert _index(tmp_path).digest_of(photo, most_bytes=MOST_BYTES) == _digest(content)


def test_another_file_in_its_place_is_read(tmp_path: Path, photo: Path) -> None:
    """A file moved to the name of another is not taken for it."""
    _learnt(tmp_path, photo)
    other = tmp_path / "other.jpg"
    other.write_bytes(b"another")
    other.replace(photo)
    assert _index(tmp_path).digest_of(photo, most_bytes=MOST_BYTES) == _digest(b"another")


def test_a_file_written_just_now_is_not_learnt(tmp_path: Path, photo: Path) -> None:
    """One that could change once more within the same tick of the clock is read each time."""
    index = DigestIndex(tmp_path / "digests")
    index.digest_of(photo, most_bytes=MOST_BYTES)
    index.keep()
    assert not (tmp_path / "digests").exists()


@pytest.mark.parametrize("damage", [b"", b"\xff\xfe", b"no hash", b"0\n1 2 3"], ids=repr)
def test_a_damaged_index_is_empty(tmp_path: Path, photo: Path, damage: bytes) -> None:
    """Whatever stands there instead costs one more reading and no error."""
    _learnt(tmp_path, photo).write_bytes(damage)
    assert _index(tmp_path).digest_of(photo, most_bytes=MOST_BYTES) == _digest(b"picture")


def test_one_changed_letter_is_noticed(tmp_path: Path, photo: Path) -> None:
    """A line that was altered on the disk is not believed."""
    index = _learnt(tmp_path, photo)
    index.write_text(index.read_text().replace(_digest(b"picture"), _digest(b"kept")))
    assert _index(tmp_path).digest_of(photo, most_bytes=MOST_BYTES) == _digest(b"picture")


def test_a_lost_file_is_told(tmp_path: Path, photo: Path) -> None:
    """A file that is gone is gone, whatever is known of it."""
    _learnt(tmp_path, photo)
    photo.unlink()
    with pytest.raises(FileNotFoundError):
        _index(tmp_path).digest_of(photo, most_bytes=MOST_BYTES)
