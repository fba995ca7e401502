"""Pictograms as plain operators, for engines that read no SVG."""

from __future__ import annotations

import io
from pathlib import Path

import pikepdf
import weasyprint


def mark_operators(drawing: Path) -> str:
    """Draw an SVG on a page of 24 x 24 points and give the operators; origin bottom left."""
    page = (
        "<style>@page { size: 24pt; margin: 0 } body { margin: 0 }"
        " img { display: block; width: 24pt; height: 24pt }</style>"
        f'<img src="{drawing.as_uri()}">'
    )
    data = weasyprint.HTML(string=page).write_pdf()
    with pikepdf.open(io.BytesIO(data)) as document:
        lines = document.pages[0].Contents.read_bytes().decode("ascii").splitlines()
    # All is drawn opaque: the graphics states say nothing and are no part of the operators.
    kept = [line for line in lines if not line.endswith(" gs")]
    return "\n".join(("q", *kept, "Q"))
