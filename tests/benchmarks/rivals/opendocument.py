"""Head and tail of a flat OpenDocument text: name spaces, page, styles, page breaks."""

from __future__ import annotations

from collections.abc import Iterator

FAMILIES = {
    "": "Atkinson Hyperlegible Next",
    "el": "Noto Sans",
    "ar": "Noto Sans Arabic",
    "hi": "Noto Sans Devanagari",
    "ja": "Noto Sans JP",
}
_OASIS = "urn:oasis:names:tc:opendocument:xmlns"
_SPACES = {
    "office": f"{_OASIS}:office:1.0",
    "style": f"{_OASIS}:style:1.0",
    "text": f"{_OASIS}:text:1.0",
    "draw": f"{_OASIS}:drawing:1.0",
    "fo": f"{_OASIS}:xsl-fo-compatible:1.0",
    "svg": f"{_OASIS}:svg-compatible:1.0",
    "xlink": "http://www.w3.org/1999/xlink",
}
_SIZES_PT = {
    "box": 48, "head": 15, "sub": 9, "number": 7.5, "title": 7, "note": 6, "key": 7, "fact": 12,
    "warn": 10, "words": 6.5, "large": 17,
}  # fmt: skip
_BOLD = {"box", "head", "number", "fact", "warn", "large"}
_GREY = {"note", "key"}
_ON_PAGE = (
    'style:wrap="run-through" style:horizontal-pos="from-left" style:horizontal-rel="page"'
    ' style:vertical-pos="from-top" style:vertical-rel="page" draw:fill="none"'
    ' draw:stroke="none"'
    ' fo:padding="0mm"'
)


def head(width_mm: float, height_mm: float) -> str:
    """Give everything before the first frame."""
    spaces = " ".join(f'xmlns:{name}="{address}"' for name, address in _SPACES.items())
    page = f'fo:page-width="{width_mm}mm" fo:page-height="{height_mm}mm" fo:margin="0mm"'
    return (
        '<?xml version="1.0" encoding="UTF-8"?>'
        f'<office:document {spaces} office:mimetype="application/vnd.oasis.opendocument.text"'
        ' office:version="1.3"><office:automatic-styles>'
        '<style:page-layout style:name="layout">'
        f"<style:page-layout-properties {page}/></style:page-layout>"
        '<style:style style:name="break" style:family="paragraph">'
        '<style:paragraph-properties fo:break-before="page"/>'
        '<style:text-properties fo:font-size="2pt"/></style:style>'
        f"{_frame_style('bare', 'none')}{_frame_style('ruled', '0.5mm solid #bb0000')}"
        f"{''.join(_text_styles())}</office:automatic-styles><office:master-styles>"
        '<style:master-page style:name="Standard" style:page-layout-name="layout"/>'
        "</office:master-styles><office:body><office:text>"
    )


def tail(pages: int) -> str:
    """Give as many empty paragraphs as there are pages, and the end."""
    breaks = '<text:p text:style-name="break"/>' * (pages - 1)
    return f"<text:p/>{breaks}</office:text></office:body></office:document>"


def _frame_style(name: str, border: str) -> str:
    return (
        f'<style:style style:name="{name}" style:family="graphic">'
        f'<style:graphic-properties {_ON_PAGE} fo:border="{border}"/></style:style>'
    )


def _text_styles() -> Iterator[str]:
    for name, size_pt in _SIZES_PT.items():
        for language, family in FAMILIES.items():
            is_bold = name in _BOLD and not language
            yield (
                f'<style:style style:name="{name}{language}" style:family="paragraph">'
                f"<style:paragraph-properties{_direction(language)}/>"
                f'<style:text-properties fo:font-family="{family}" '
                f'style:font-family-asian="{family}" style:font-family-complex="{family}"'
                f' fo:font-size="{size_pt}pt" style:font-size-asian="{size_pt}pt"'
                f' style:font-size-complex="{size_pt}pt"'
                f' fo:font-weight="{"bold" if is_bold else "normal"}"'
                f' fo:color="{"#555555" if name in _GREY else "#111111"}"/></style:style>'
            )


def _direction(language: str) -> str:
    return ' fo:text-align="end" style:writing-mode="rl-tb"' if language == "ar" else ""
