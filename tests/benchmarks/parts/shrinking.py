"""Thumbnails of photos of 12 megapixels: ours, and a full decoding with the same filter."""

from __future__ import annotations

import io
import math
import sys
import time
from collections.abc import Callable

import numpy as np
from PIL import Image

from service.render.pictures.photos import open_photo
from service.render.pictures.thumbnails import make_thumbnails
from tests.benchmarks.content.photos import THUMBNAIL_PX, photo_paths
from tests.benchmarks.engine import read_job, say

_ROUNDS = 3


def main() -> None:
    """Shrink every photo each way, in turn, and say what one took and how near the results are."""
    job = read_job(sys.argv[1:])
    photos = [path.read_bytes() for path in photo_paths(job.store.folder / "photos")]
    photos = photos[: job.count]
    taken: dict[str, list[float]] = {"full": [], "draft": [], "ladder": []}
    ways: dict[str, Callable[[bytes], object]] = {"full": _full, "draft": _draft, "ladder": _ladder}
    for _ in range(_ROUNDS):
        for name, way in ways.items():
            began = time.process_time()
            for photo in photos:
                way(photo)
            taken[name].append((time.process_time() - began) / len(photos))
    each = {f"{name}_seconds": sorted(times)[_ROUNDS // 2] for name, times in taken.items()}
    say({**each, "nearness_db": min(_nearness_db(photo) for photo in photos)})


def _full(photo: bytes) -> Image.Image:
    return _shrunk(Image.open(io.BytesIO(photo)).convert("RGB"))


def _draft(photo: bytes) -> Image.Image:
    """Decode as the service does: a quarter of the size, still half as large again as needed."""
    return _shrunk(open_photo(photo, name="photo", long_side_px=2 * THUMBNAIL_PX))


def _ladder(photo: bytes) -> object:
    """Do all that is done to a photo: trim, contrast, sharpening, each size, encoding."""
    return make_thumbnails(photo, name="photo")


def _shrunk(image: Image.Image) -> Image.Image:
    scale = THUMBNAIL_PX / max(image.size)
    width, height = (round(side * scale) for side in image.size)
    return image.resize((width, height), Image.Resampling.LANCZOS)


def _nearness_db(photo: bytes) -> float:
    """Give the peak signal-to-noise ratio of our way against the full decoding."""
    full, draft = (np.asarray(way(photo), dtype=np.float64) for way in (_full, _draft))
    return 10 * math.log10(255**2 / float(np.mean((full - draft) ** 2)))


if __name__ == "__main__":
    main()
