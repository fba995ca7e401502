"""Write the photos of the folder photos_by_name: plain shapes under names as people give them.

Run it with Pillow installed; the same pictures come out every time.
"""

from __future__ import annotations

from pathlib import Path

from PIL import Image, ImageDraw

FOLDER = Path(__file__).resolve().parent / "photos"
SIZE_PX = (480, 360)
BACKGROUND = "#b8b8b4"

# The name of each file, the outline it shows and its colour.
PICTURES = {
    "1931-14-9.jpg": ("ellipse", "#6b5334"),
    "1931_14_9 back.JPG": ("ellipse", "#4d3b24"),
    "IMG_1987.412.3.jpg": ("rounded_rectangle", "#37556b"),
    "1987.412.3_2.jpg": ("rounded_rectangle", "#2a4050"),
    "1987.412.30 vorne.jpeg": ("rectangle", "#7a2f2f"),
    "PMM.77.3-detail-02.jpg": ("rectangle", "#8a7a3a"),
    "pmm 77 3 (2).jpg": ("rectangle", "#a08d45"),
    "1954.3.21b.jpg": ("ellipse", "#55604a"),
    "1987.412.3 with 1987.412.31.jpg": ("rounded_rectangle", "#555555"),
    "DSC_0042.jpg": ("ellipse", "#303030"),
}


def main() -> None:
    """Draw every picture; none is larger than a few kilobytes."""
    FOLDER.mkdir(exist_ok=True)
    for name, (outline, colour) in PICTURES.items():
        image = Image.new("RGB", SIZE_PX, BACKGROUND)
        getattr(ImageDraw.Draw(image), outline)((120, 90, 360, 270), fill=colour)
        image.save(FOLDER / name, "JPEG", quality=80)


if __name__ == "__main__":
    main()
