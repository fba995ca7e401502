"""Tests for the catalogue of every printed word."""

from __future__ import annotations

from io import BytesIO

from babel.messages.pofile import read_po

from service.languages.printed_words import TEMPLATE, find_printed, write_template


def test_marks_nouns_and_tables_are_found() -> None:
    """What the code marks, what it counts, and what tables of handling and marks hold."""
    found = find_printed()
    assert "service/pages/asked/warning_label.py" in found["Ask first: {asked}"]
    assert "service/pages/lid/space.py" in found["card {number} of {of}"]
    assert {"object", "layer", "container"} <= {*found}
    assert found["Arsenic"] == ("tables of handling and of marks",)
    assert "a certified industrial hygienist" in found


def test_each_phrase_is_there_once_and_nowhere_translated() -> None:
    """The template is a catalogue that any tool reads; English is its key and needs no other."""
    catalogue = read_po(BytesIO(TEMPLATE.read_bytes()), abort_invalid=True)
    messages = [message for message in catalogue if message.id]
    assert len(messages) == len(find_printed())
    assert {str(message.id) for message in messages} == {*find_printed()}
    assert not any(message.string for message in messages)


def test_a_template_says_where_its_words_are_printed() -> None:
    """Whoever translates finds the card behind a word."""
    place, msgid = "#: service/pages/lid/foot.py", 'msgid "Checked: date, initials"'
    assert f"{place}\n{msgid}\n" in write_template()
