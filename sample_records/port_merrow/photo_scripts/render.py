"""Render the demo photographs: all of them, or those whose file name holds a given text.

python render.py                 every picture
python render.py 1931.14 PMM     some pictures
python render.py --draft 2003    small and quick, to ./drafts
python render.py --missing       only what is not there yet

It needs `requirements.txt` and the DejaVu fonts. With an LLVM library of version 16 or later (named
in DRJIT_LIBLLVM_PATH where several are installed) it is about twice as fast as without.
"""

from __future__ import annotations

import argparse
import time
from pathlib import Path

import mitsuba as mi

mi.set_variant("llvm_ad_rgb", "scalar_rgb")

from catalogue import PICTURES, Picture  # noqa: E402
from filing import save  # noqa: E402
from studio import photograph  # noqa: E402

PHOTOS = Path(__file__).resolve().parent.parent / "photos"
DRAFT_PX = 640


def load_settings() -> None:
    """Import every module that enters pictures in the catalogue."""
    for module in Path(__file__).resolve().parent.glob("scenes_*.py"):
        __import__(module.stem)


def wanted(texts: list[str], *, missing: bool) -> list[Picture]:
    """Return the pictures whose names hold one of the texts, or all."""
    chosen = [p for n, p in PICTURES.items() if not texts or any(text in n for text in texts)]
    return [p for p in chosen if not (missing and (PHOTOS / p.file).exists())]


def main() -> None:
    """Render what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("texts", nargs="*")
    parser.add_argument("--draft", action="store_true")
    parser.add_argument("--missing", action="store_true")
    parser.add_argument("-o", "--out", type=Path)
    asked = parser.parse_args()
    load_settings()
    out: Path = asked.out or (Path("drafts") if asked.draft else PHOTOS)
    out.mkdir(parents=True, exist_ok=True)
    for picture in wanted(asked.texts, missing=asked.missing):
        start = time.monotonic()
        long_px = DRAFT_PX if asked.draft else 1600
        screen = photograph(
            picture.setting(), picture.view, long_px=long_px, samples=picture.samples
        )
        name = Path(picture.file).with_suffix(".jpg") if asked.draft else Path(picture.file)
        save(screen, out / name)
        print(f"{picture.file}  {time.monotonic() - start:.0f} s", flush=True)


if __name__ == "__main__":
    main()
