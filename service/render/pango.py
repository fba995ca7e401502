"""A small binding to Pango: paragraphs broken, measured and shaped with the shipped fonts only.

The libraries are those the layout engine loads too, so that what is measured here is what is
drawn. A private fontconfig set-up is built from `templates/fonts/fonts.conf`; nothing of the
system's fonts can be chosen. Lengths at this level are CSS pixels in Pango units (1/1024).
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import cffi

UNITS_PER_PIXEL = 1024
FAMILY = "Atkinson Hyperlegible Next"
FEATURES = b"tnum=1"
_WRAP_WORD_CHARACTER = 2
_LEFT_TO_RIGHT, _RIGHT_TO_LEFT = 0, 1
_KEPT_DESCRIPTIONS = 512
"""Sizes and weights kept at a time: a fit tries some hundred."""

_DECLARATIONS = """
typedef int boolean;
typedef struct { int number, width, x_offset, y_offset; unsigned int bits; } Glyph;
typedef struct { int count; Glyph *glyphs; int *clusters; int space; } Glyphs;
typedef struct {
    int offset, length, characters;
    void *shape_engine, *language_engine, *font;
    uint8_t level, gravity, flags, script;
    void *language, *attributes;
} Item;
typedef struct { Item *item; Glyphs *glyphs; int y_offset, start_x_offset, end_x_offset; } Run;
typedef struct Runs { Run *run; struct Runs *next; } Runs;
typedef struct { void *layout; int start_index; int length; Runs *runs; unsigned int bits; } Line;
typedef struct { int x, y, width, height; } Rectangle;
void g_object_unref(void *object);
void *g_object_ref(void *object);
void *FcConfigCreate(void);
boolean FcConfigParseAndLoad(void *config, const char *file, boolean complain);
boolean FcConfigBuildFonts(void *config);
boolean FcConfigSetCurrent(void *config);
int FcPatternGetString(void *pattern, const char *object, int number, const char **string);
void *pango_ft2_font_map_new(void);
void pango_fc_font_map_set_config(void *map, void *config);
void *pango_fc_font_get_pattern(void *font);
void *pango_font_map_create_context(void *map);
void pango_context_set_round_glyph_positions(void *context, boolean on);
void pango_context_set_language(void *context, void *language);
void pango_context_set_base_dir(void *context, int direction);
void *pango_language_from_string(const char *language);
void *pango_layout_new(void *context);
void pango_layout_set_text(void *layout, const char *text, int length);
void pango_layout_set_width(void *layout, int width);
void pango_layout_set_wrap(void *layout, int wrap);
void pango_layout_set_auto_dir(void *layout, boolean on);
void pango_layout_set_attributes(void *layout, void *attributes);
void pango_layout_set_font_description(void *layout, void *description);
void pango_layout_context_changed(void *layout);
int pango_layout_get_line_count(void *layout);
int pango_layout_get_unknown_glyphs_count(void *layout);
Line *pango_layout_get_line_readonly(void *layout, int number);
void pango_layout_line_get_extents(Line *line, Rectangle *ink, Rectangle *logical);
void *pango_font_description_new(void);
void pango_font_description_free(void *description);
void pango_font_description_set_family(void *description, const char *family);
void pango_font_description_set_weight(void *description, int weight);
void pango_font_description_set_absolute_size(void *description, double size);
void *pango_attr_list_new(void);
void pango_attr_list_unref(void *list);
void *pango_attr_font_features_new(const char *features);
void pango_attr_list_insert(void *list, void *attribute);
int pango_find_base_dir(const char *text, int length);
"""

_NAMES = {
    "linux": "libpango-1.0.so.0 libpangoft2-1.0.so.0 libfontconfig.so.1 libgobject-2.0.so.0",
    "darwin": "libpango-1.0.dylib libpangoft2-1.0.dylib libfontconfig.1.dylib libgobject-2.0.dylib",
    "win32": "pango-1.0-0.dll pangoft2-1.0-0.dll fontconfig-1.dll gobject-2.0-0.dll",
}


@dataclass(frozen=True, slots=True)
class PangoLine:
    """One line as bytes of the paragraph, and its advance width in Pango units."""

    start: int
    length: int
    width: int


@dataclass(frozen=True, slots=True)
class _Libraries:
    ffi: Any
    pango: Any
    pangoft2: Any
    fontconfig: Any
    gobject: Any


@cache
def _load() -> _Libraries:
    ffi = cffi.FFI()
    ffi.cdef(_DECLARATIONS)
    names = _NAMES.get(sys.platform, _NAMES["linux"])
    return _Libraries(ffi, *(ffi.dlopen(name) for name in names.split()))


class Paragraphs:
    """Sets paragraphs with one private set of fonts. Not for use by two threads at once."""

    def __init__(self, fonts_conf: Path) -> None:
        """Build the font map from a fontconfig file.

        Raises:
            OSError: When the file or its fonts cannot be read.
        """
        self._lib = _load()
        config = self._lib.fontconfig.FcConfigCreate()
        loaded = self._lib.fontconfig.FcConfigParseAndLoad(config, str(fonts_conf).encode(), 1)
        if not loaded or not self._lib.fontconfig.FcConfigBuildFonts(config):
            message = f"the fonts named in {fonts_conf.name} cannot be loaded"
            raise OSError(message)
        # Some versions of Pango ask the current set-up, not the map's own, for its rules.
        self._lib.fontconfig.FcConfigSetCurrent(config)
        self._map = self._owned(self._lib.pangoft2.pango_ft2_font_map_new())
        self._lib.pangoft2.pango_fc_font_map_set_config(self._map, config)
        pango = self._lib.pango
        self._context = self._owned(pango.pango_font_map_create_context(self._map))
        pango.pango_context_set_round_glyph_positions(self._context, 0)
        self._layout = self._owned(pango.pango_layout_new(self._context))
        pango.pango_layout_set_wrap(self._layout, _WRAP_WORD_CHARACTER)
        attributes = pango.pango_attr_list_new()
        pango.pango_attr_list_insert(attributes, pango.pango_attr_font_features_new(FEATURES))
        pango.pango_layout_set_attributes(self._layout, attributes)
        pango.pango_attr_list_unref(attributes)
        self._descriptions: dict[tuple[float, int], Any] = {}
        self._logical = self._lib.ffi.new("Rectangle *")
        self._manner: tuple[str, bool | None] | None = None

    def set_paragraph(
        self, text: bytes, *, size_px: float, weight: int, language: str, width_px: float | None
    ) -> None:
        """Lay a paragraph out; `width_px` None keeps it on one line."""
        self._speak(language, is_right_to_left=None)
        width = -1 if width_px is None else max(1, int(width_px * UNITS_PER_PIXEL))
        self._set(text, self._describe(size_px, weight), width)

    def lines(self) -> tuple[PangoLine, ...]:
        """Give the lines of the paragraph laid out last."""
        pango = self._lib.pango
        found = []
        for number in range(pango.pango_layout_get_line_count(self._layout)):
            line = pango.pango_layout_get_line_readonly(self._layout, number)
            width = self._extents(line).width
            found.append(PangoLine(line.start_index, line.length, width))
        return tuple(found)

    def unknown_glyphs(self) -> int:
        """Count the glyphs of the paragraph laid out last that no font holds."""
        return int(self._lib.pango.pango_layout_get_unknown_glyphs_count(self._layout))

    def is_right_to_left(self, text: bytes) -> bool:
        """Tell whether the first strong letter of a text runs from right to left."""
        return bool(self._lib.pango.pango_find_base_dir(text, len(text)) == _RIGHT_TO_LEFT)

    def _owned(self, pointer: Any) -> Any:  # noqa: ANN401 - a C pointer
        return self._lib.ffi.gc(pointer, self._lib.gobject.g_object_unref)

    def _set(self, text: bytes, description: Any, width: int) -> None:  # noqa: ANN401
        pango, layout = self._lib.pango, self._layout
        pango.pango_layout_set_font_description(layout, description)
        pango.pango_layout_set_width(layout, width)
        pango.pango_layout_set_text(layout, text, len(text))

    def _extents(self, line: Any) -> Any:  # noqa: ANN401 - C pointers
        logical = self._logical
        self._lib.pango.pango_layout_line_get_extents(line, self._lib.ffi.NULL, logical)
        return logical

    def _speak(self, language: str, *, is_right_to_left: bool | None) -> None:
        """Change language and base direction; None takes the direction from the letters."""
        if (language, is_right_to_left) == self._manner:
            return
        self._manner = (language, is_right_to_left)
        pango = self._lib.pango
        tag = pango.pango_language_from_string((language or "en").encode())
        pango.pango_context_set_language(self._context, tag)
        direction = _RIGHT_TO_LEFT if is_right_to_left else _LEFT_TO_RIGHT
        pango.pango_context_set_base_dir(self._context, direction)
        pango.pango_layout_set_auto_dir(self._layout, is_right_to_left is None)
        pango.pango_layout_context_changed(self._layout)

    def _describe(self, size_px: float, weight: int) -> Any:  # noqa: ANN401 - a C pointer
        key = (size_px, weight)
        if key not in self._descriptions:
            if len(self._descriptions) >= _KEPT_DESCRIPTIONS:
                self._descriptions.clear()
            pango = self._lib.pango
            made = pango.pango_font_description_new()
            description = self._lib.ffi.gc(made, pango.pango_font_description_free)
            pango.pango_font_description_set_family(description, FAMILY.encode())
            pango.pango_font_description_set_weight(description, weight)
            units = round(size_px * UNITS_PER_PIXEL)
            pango.pango_font_description_set_absolute_size(description, units)
            self._descriptions[key] = description
        return self._descriptions[key]
