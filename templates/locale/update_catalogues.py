"""Bring message catalogues up to date with the words that cards print.

    PYTHONPATH=. python templates/locale/update_catalogues.py [LANGUAGE ...]

Without a language every catalogue is brought up to date. Translations stay, messages that are new
stand empty, those that nothing prints any more go. A language that has no catalogue gets one.
"""

from __future__ import annotations

import json
import sys

from service.cards.second.phrases import list_phrases
from service.languages.catalogue import catalogue_path, read_phrasebook
from service.records.museum.language import LANGUAGE_NAMES, Language

HEAD = r"""# Words of handling in {name}, beside the English ones on cards.
# Translation not reviewed by a specialist. Whoever has reviewed it writes "X-Reviewed: yes".
msgid ""
msgstr ""
"Project-Id-Version: underlid\n"
"Language: {code}\n"
"MIME-Version: 1.0\n"
"Content-Type: text/plain; charset=utf-8\n"
"Content-Transfer-Encoding: 8bit\n"
"X-Reviewed: no\n"
"""


def main(codes: list[str]) -> None:
    """Bring the catalogues of some languages up to date, or all."""
    for language in map(Language, codes or LANGUAGE_NAMES):
        path = catalogue_path(language)
        path.parent.mkdir(exist_ok=True)
        if not path.exists():
            head = HEAD.format(name=LANGUAGE_NAMES[language], code=language.value)
            path.write_text(head, encoding="utf-8", newline="\n")
        content = path.read_bytes()
        head = content.decode().partition("\n\n")[0].rstrip("\n")
        known = read_phrasebook(language, content)
        entries = [
            f"msgid {quote(phrase)}\nmsgstr {quote(known.say(phrase))}" for phrase in list_phrases()
        ]
        path.write_text("\n\n".join([head, *entries]) + "\n", encoding="utf-8", newline="\n")
        missing = sum(not known.say(phrase) for phrase in list_phrases())
        print(f"{path}: {len(entries)} messages, {missing} not translated")


def quote(text: str) -> str:
    """Write a text as a string of PO, which escapes as JSON does."""
    return json.dumps(text, ensure_ascii=False)


if __name__ == "__main__":
    main(sys.argv[1:])
