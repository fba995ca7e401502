from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import PictureError
from service.render.pictures.cache import ThumbnailCache, digest_of
from service.render.pictures.thumbnails import LADDER_VERSION, Grade, Thumbnails, make_thumbnails
from tests.render.pictures.camera import take_photo

PHOTO = take_photo((500, 400))
DIGEST = digest_of(PHOTO)


@pytest.fixture(scope="module")
def made() -> Thumbnails:
    """Give the thumbnails of one photo."""
    return make_thumbnails(PHOTO, name="a.jpg")


def _only_file(folder: Path) -> Path:
    (path,) = (path for path in folder.rglob("*") if path.is_file())
    return path


def _damage(path: Path, place: int) -> None:
    data = bytearray(path.read_bytes())
    data[place] ^= 1
    path.write_bytes(data)


def test_the_key_is_the_sha_256_of_the_photo() -> None:
    """The hash of "abc" is that of FIPS 180-2, appendix B.1."""
    expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert digest_of(b"abc") == expected


def test_what_is_kept_is_found(tmp_path: Path, made: Thumbnails) -> None:
    """The same sizes and bytes come back, from a file whose name tells photo and version."""
    cache = ThumbnailCache(tmp_path / "new" / "folder")
    kept, found = cache.keep(DIGEST, made), cache.find(DIGEST)
    assert found == kept
    assert [size.jpeg for size in kept.sizes] == [size.jpeg for size in made.sizes]
    path = _only_file(tmp_path)
    assert DIGEST in path.name
    assert f"v{LADDER_VERSION}" in path.parts


def test_what_is_not_kept_is_not_found(tmp_path: Path) -> None:
    """An empty or absent folder holds nothing."""
    assert ThumbnailCache(tmp_path).find(DIGEST) is None
    assert ThumbnailCache(tmp_path / "absent").find(DIGEST) is None


def test_each_grade_is_kept_apart(tmp_path: Path, made: Thumbnails) -> None:
    """A photo kept in the small grade is not found in the large one, and then both are."""
    cache = ThumbnailCache(tmp_path)
    small = cache.keep(DIGEST, made)
    assert cache.find(DIGEST, Grade.LARGE) is None
    large = cache.keep(DIGEST, make_thumbnails(PHOTO, name="a.jpg", grade=Grade.LARGE))
    assert cache.find(DIGEST, Grade.SMALL) == small
    assert cache.find(DIGEST, Grade.LARGE) == large


@pytest.mark.parametrize("place", [0, 30, 64, 65, 100, 200])
def test_one_changed_byte_of_the_head_makes_it_absent(
    tmp_path: Path, made: Thumbnails, place: int
) -> None:
    """Damage to the hash or the list is noticed at once; keeping it again mends it."""
    cache = ThumbnailCache(tmp_path)
    kept = cache.keep(DIGEST, made)
    _damage(_only_file(tmp_path), place)
    assert cache.find(DIGEST) is None
    cache.keep(DIGEST, made)
    assert cache.find(DIGEST) == kept


@pytest.mark.parametrize("place", [-1, -3000])
def test_one_changed_byte_of_a_picture_is_noticed_when_it_is_read(
    tmp_path: Path, made: Thumbnails, place: int
) -> None:
    """A damaged JPEG is found, for looking up reads none, and refused as it is read."""
    cache = ThumbnailCache(tmp_path)
    cache.keep(DIGEST, made)
    _damage(_only_file(tmp_path), place)
    found = cache.find(DIGEST)
    assert found is not None
    with pytest.raises(PictureError, match="damaged"):
        _ = found.largest.jpeg


@pytest.mark.parametrize("content", [b"", b"\n", b"a\nb\nc", b"\xff" * 99], ids=repr)
def test_any_other_content_makes_it_absent(
    tmp_path: Path, made: Thumbnails, content: bytes
) -> None:
    """A file of something else is no thumbnail and no error."""
    cache = ThumbnailCache(tmp_path)
    cache.keep(DIGEST, made)
    _only_file(tmp_path).write_bytes(content)
    assert cache.find(DIGEST) is None


@pytest.mark.parametrize("change", [-1, 1])
def test_a_file_of_another_length_is_absent(tmp_path: Path, made: Thumbnails, change: int) -> None:
    """A file that lost its end, or gained one, is made again."""
    cache = ThumbnailCache(tmp_path)
    cache.keep(DIGEST, made)
    path = _only_file(tmp_path)
    data = path.read_bytes()
    path.write_bytes(data[:change] if change < 0 else data + bytes(change))
    assert cache.find(DIGEST) is None


def test_nothing_half_written_is_left(tmp_path: Path, made: Thumbnails) -> None:
    """A rename that fails takes the file beside it away too."""
    cache = ThumbnailCache(tmp_path)
    cache.keep(DIGEST, made)
    path = _only_file(tmp_path)
    path.unlink()
    path.mkdir()
    (path / "in the way").touch()
    with pytest.raises(OSError, match="thumbnails"):
        cache.keep(DIGEST, made)
    assert [left.name for left in path.parent.iterdir()] == [path.name]
