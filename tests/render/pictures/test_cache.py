from __future__ import annotations

from pathlib import Path

import pytest

from service.render.pictures.cache import ThumbnailCache, digest_of
from service.render.pictures.thumbnails import LADDER_VERSION, Thumbnails, make_thumbnails
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


@pytest.mark.parametrize("place_ratio", [0.0, 0.002, 0.01, 0.1, 0.5, 0.999])
def test_one_changed_byte_makes_it_absent(
    tmp_path: Path, made: Thumbnails, place_ratio: float
) -> None:
    """Damage anywhere, in head, list or picture, is noticed; keeping it again mends it."""
    cache = ThumbnailCache(tmp_path)
    kept = cache.keep(DIGEST, made)
    path = _only_file(tmp_path)
    data = bytearray(path.read_bytes())
    data[int(place_ratio * len(data))] ^= 1
    path.write_bytes(data)
    assert cache.find(DIGEST) is None
    cache.keep(DIGEST, made)
    assert cache.find(DIGEST) == kept


@pytest.mark.parametrize("content", [b"", b"\n", b"a\nb\nc", b"\xff" * 99], ids=repr)
def test_any_other_content_makes_it_absent(
    tmp_path: Path, made: Thumbnails, content: bytes
) -> None:
    """A file of something else is no thumbnail and no error."""
    cache = ThumbnailCache(tmp_path)
    cache.keep(DIGEST, made)
    _only_file(tmp_path).write_bytes(content)
    assert cache.find(DIGEST) is None


def test_a_cut_file_is_absent(tmp_path: Path, made: Thumbnails) -> None:
    """A file that lost its end is made again."""
    cache = ThumbnailCache(tmp_path)
    cache.keep(DIGEST, made)
    path = _only_file(tmp_path)
    path.write_bytes(path.read_bytes()[:-1])
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
