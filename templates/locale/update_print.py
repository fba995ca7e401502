"""Bring the catalogue of every printed word up to date with the code.

    PYTHONPATH=. python templates/locale/update_print.py

A test compares the two, so that no printed word is missing from it.
"""

from __future__ import annotations

from service.languages.printed_words import TEMPLATE, find_printed, write_template

if __name__ == "__main__":
    TEMPLATE.write_text(write_template(), encoding="utf-8", newline="\n")
    print(f"{TEMPLATE}: {len(find_printed())} messages")
