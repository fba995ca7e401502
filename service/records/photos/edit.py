"""How a photo is shown on cards: a part of it, turned. The file itself is never changed."""

from __future__ import annotations

from dataclasses import dataclass

_DIGITS = 4
"""A ten-thousandth of a side is less than a pixel of most photos."""

QUARTERS = 4
LEAST_CROP_PX = 16
"""What is left of a photo measures at least so much each way; common practice, no source."""


@dataclass(frozen=True, slots=True)
class PhotoCrop:
    """A rectangle of the upright photo, before it is turned, in shares of its width and height."""

    left_ratio: float
    top_ratio: float
    right_ratio: float
    bottom_ratio: float

    @property
    def ratios(self) -> tuple[float, float, float, float]:
        """The four edges: left, top, right, bottom."""
        return (self.left_ratio, self.top_ratio, self.right_ratio, self.bottom_ratio)

    def box_px(self, width_px: int, height_px: int) -> tuple[int, int, int, int]:
        """Give the rectangle of a picture of this size, of one pixel at least."""
        left, right = _edges_px(self.left_ratio, self.right_ratio, width_px)
        top, bottom = _edges_px(self.top_ratio, self.bottom_ratio, height_px)
        return (left, top, right, bottom)


@dataclass(frozen=True, slots=True)
class PhotoEdit:
    """What is shown of a photo, and by how many quarter turns clockwise it is turned then."""

    turns: int = 0
    crop: PhotoCrop | None = None

    @property
    def key(self) -> str:
        """What tells it from every other edit, in signs that a file's name may hold.

        Empty where the photo is shown as it came.
        """
        turned = f"-t{self.turns}" if self.turns else ""
        if self.crop is None:
            return turned
        return f"{turned}-c" + ".".join(f"{ratio * 10**_DIGITS:.0f}" for ratio in self.crop.ratios)

    def size_px(self, width_px: int, height_px: int) -> tuple[int, int]:
        """Give width and height of what is shown of an upright photo of this size."""
        if self.crop is not None:
            left, top, right, bottom = self.crop.box_px(width_px, height_px)
            width_px, height_px = right - left, bottom - top
        return (height_px, width_px) if self.turns % 2 else (width_px, height_px)


AS_IT_CAME = PhotoEdit()


def make_crop(ratios: tuple[float, float, float, float]) -> PhotoCrop | None:
    """Make a crop of left, top, right and bottom; the whole photo is none.

    Raises:
        ValueError: When they are no rectangle within the photo; the message says so in words.
    """
    left, top, right, bottom = (round(ratio, _DIGITS) for ratio in ratios)
    if not (0 <= left < right <= 1 and 0 <= top < bottom <= 1):
        message = "A part of a photo lies between 0 and 1, left before right, top before bottom."
        raise ValueError(message)
    return (
        None if (left, top, right, bottom) == (0, 0, 1, 1) else PhotoCrop(left, top, right, bottom)
    )


def _edges_px(low_ratio: float, high_ratio: float, side_px: int) -> tuple[int, int]:
    low = min(round(low_ratio * side_px), side_px - 1)
    return low, max(low + 1, round(high_ratio * side_px))
