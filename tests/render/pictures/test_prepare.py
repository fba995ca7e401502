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
from service.render.pictures.prepare import (
    PhotoSource,
    plain_reason,
    prepare_photos,
    restorer,
)
from service.render.pictures.source import restoring_source
from service.render.pictures.thumbnails import Grade, Thumbnails, make_thumbnails
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


@pytest.mark.parametrize("grade", Grade)
def test_a_damaged_picture_is_made_again(tmp_path: Path, workers: Workers, grade: Grade) -> None:
    """A stored JPEG that fails its hash when it is read is replaced by a good one."""
    ready, _ = prepare_photos({"a.jpg": PHOTO}, cache_folder=tmp_path, workers=workers, grade=grade)
    (path,) = tmp_path.rglob("*.thumbnails")
    whole = path.read_bytes()
    path.write_bytes(whole[:-9] + bytes(9))
    used = list(ready.items())
    restore = restorer(used, {"a.jpg": PHOTO}, cache_folder=tmp_path, workers=workers)
    read = restoring_source(ready.values(), restore)
    largest = make_thumbnails(PHOTO, name="a.jpg", grade=grade).largest
    assert read(largest.sha256) == largest.jpeg
    assert path.read_bytes() == whole


def test_a_picture_that_cannot_be_made_again_is_told(tmp_path: Path, workers: Workers) -> None:
    """A photo that changed or went during the run is an error that names it."""
    ready, _ = prepare_photos({"a.jpg": PHOTO}, cache_folder=tmp_path, workers=workers)
    photos: dict[str, PhotoSource] = {"a.jpg": SMALL}
    restore = restorer(list(ready.items()), photos, cache_folder=tmp_path, workers=workers)
    with pytest.raises(PictureError, match=r"a\.jpg: the photo was changed"):
        restore(ready["a.jpg"].largest.sha256)
    photos["a.jpg"] = b"Dear all"
    with pytest.raises(PictureError, match=r"a\.jpg: the file is not a photo"):
        restore(ready["a.jpg"].largest.sha256)


def test_a_changed_photo_is_made_anew(tmp_path: Path, workers: Workers) -> None:
    """A file that is written again under its name gives its new picture in the next run."""
    photo = tmp_path / "a.jpg"
    for data in (PHOTO, SMALL, PHOTO):
        photo.write_bytes(data)
        ready, _ = prepare_photos({"a.jpg": photo}, cache_folder=tmp_path / "kept", workers=workers)
        made = make_thumbnails(data, name="a.jpg")
        assert ready["a.jpg"].largest.sha256 == made.largest.sha256


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
