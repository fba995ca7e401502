from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from service.errors import (
    JobCrashedError,
    JobError,
    JobTimedOutError,
    PictureError,
    ServiceError,
)
from service.findings import Finding
from service.render.pictures.prepare import PhotoSource, plain_reason, prepare_photos
from service.render.pictures.thumbnails import Thumbnails, make_thumbnails
from service.render.worker import Workers
from tests.render.pictures.camera import take_photo

pytestmark = pytest.mark.slow

PHOTO = take_photo((640, 480))
SMALL = take_photo((260, 200))


@pytest.fixture(scope="module")
def workers() -> Iterator[Workers]:
    """Give two child processes for all tests of this file."""
    with Workers(2) as made:
        yield made


def _told(findings: tuple[Finding, ...]) -> list[tuple[str, str]]:
    return [(finding.where.file, finding.code) for finding in findings]


def test_good_photos_are_made_and_bad_ones_told(tmp_path: Path, workers: Workers) -> None:
    """Each bad photo costs a finding with its name; the good ones come in the order asked."""
    (tmp_path / "hat.jpg").write_bytes(PHOTO)
    (tmp_path / "folder.jpg").mkdir()
    photos: dict[str, PhotoSource] = {
        "hat.jpg": tmp_path / "hat.jpg",
        "lost.jpg": tmp_path / "lost.jpg",
        "folder.jpg": tmp_path / "folder.jpg",
        "cut.jpg": PHOTO[:-400],
        "letter.jpg": b"Dear all",
        "small.jpg": SMALL,
        "glove.jpg": PHOTO,
    }
    ready, findings = prepare_photos(photos, cache_folder=tmp_path / "kept", workers=workers)
    assert list(ready) == ["hat.jpg", "small.jpg", "glove.jpg"]
    assert _told(findings) == [
        ("lost.jpg", "photo-missing"),
        ("folder.jpg", "photo-unusable"),
        ("cut.jpg", "photo-unusable"),
        ("letter.jpg", "photo-unusable"),
        ("small.jpg", "photo-too-small"),
    ]
    assert findings[2].message == "cut.jpg: the file is cut short."
    assert (tmp_path / "hat.jpg").read_bytes() == PHOTO


def test_pictures_are_those_made_at_home(tmp_path: Path, workers: Workers) -> None:
    """A child process gives the bytes that this process gives."""
    ready, _ = prepare_photos({"a.jpg": PHOTO}, cache_folder=tmp_path, workers=workers)
    at_home = make_thumbnails(PHOTO, name="a.jpg")
    assert [size.jpeg for size in ready["a.jpg"].sizes] == [size.jpeg for size in at_home.sizes]


def test_a_photo_is_decoded_once(tmp_path: Path, workers: Workers) -> None:
    """The second run finds everything kept, under another name too, and decodes nothing."""
    told: list[int] = []

    def prepare(name: str) -> Thumbnails:
        ready, _ = prepare_photos(
            {name: PHOTO}, cache_folder=tmp_path, workers=workers, on_progress=told.append
        )
        return ready[name]

    assert prepare("a.jpg") == prepare("b.jpg")
    assert told == [1]


def test_a_damaged_entry_is_made_again(tmp_path: Path, workers: Workers) -> None:
    """A thumbnail that fails its hash is replaced by a good one."""
    ready, _ = prepare_photos({"a.jpg": PHOTO}, cache_folder=tmp_path, workers=workers)
    (path,) = (path for path in tmp_path.rglob("*") if path.is_file())
    whole = path.read_bytes()
    path.write_bytes(whole[:-9] + bytes(9))
    again, _ = prepare_photos({"a.jpg": PHOTO}, cache_folder=tmp_path, workers=workers)
    assert again == ready
    assert path.read_bytes() == whole


def test_a_cache_that_cannot_be_written_costs_nothing(tmp_path: Path, workers: Workers) -> None:
    """Where the folder's place is taken by a file, thumbnails are handed over in memory."""
    (tmp_path / "taken").touch()
    ready, findings = prepare_photos(
        {"a.jpg": PHOTO}, cache_folder=tmp_path / "taken", workers=workers
    )
    assert (ready["a.jpg"], findings) == (make_thumbnails(PHOTO, name="a.jpg"), ())


def test_a_photo_that_eats_memory_costs_itself(tmp_path: Path) -> None:
    """Under a limit of memory a huge photo is a finding and a modest one is made."""
    huge = io.BytesIO()
    Image.new("RGB", (9000, 9000)).save(huge, "PNG", compress_level=1)
    photos: dict[str, PhotoSource] = {"huge.png": huge.getvalue(), "hat.jpg": PHOTO}
    with Workers(1, memory_bytes=300 << 20) as workers:
        ready, findings = prepare_photos(photos, cache_folder=tmp_path, workers=workers)
    assert list(ready) == ["hat.jpg"]
    assert _told(findings) == [("huge.png", "photo-unusable")]
    assert "too much memory" in findings[0].message


@pytest.mark.parametrize(
    ("error", "reason"),
    [
        (PictureError("a.jpg", reason="the file is cut short"), "the file is cut short"),
        (JobTimedOutError(seconds=30.0), "it could not be opened within 30 seconds"),
        (JobCrashedError(exit_code=-11), "opening it made the program that opens photos fail"),
        (JobError("The work failed with KeyError."), "it could not be opened"),
    ],
)
def test_every_way_to_fail_is_told_in_plain_words(error: ServiceError, reason: str) -> None:
    """No exit code and no name of an exception reaches the reader."""
    assert plain_reason(error) == reason
