"""Sending files by the form, as a browser without script does."""

from __future__ import annotations

import re

import httpx

from tests.web.sent import SAMPLES
from tests.web.views.opened import HTML, show

UNTIDY = (SAMPLES / "untidy_export.csv").read_bytes()
WITH_BOXES = b"Object no,Title,Box,Tray\nT.1,Lead,N-1,1\nT.2,Line,N-1,2\nT.3,Hook,,\n"
"""A list of objects with a column that says in which box each lies."""
PHOTO = (SAMPLES / "port_merrow" / "photos" / "1902.7_front.jpg").read_bytes()
_TOKEN = re.compile(r'name="form_token" value="([^"]+)"')
_HIDDEN = re.compile(r'<input type="hidden" name="([^"]+)" value="([^"]*)">')
_SELECT = re.compile(r'<select[^>]* name="([^"]+)".*?</select>', re.DOTALL)
_CHOSEN = re.compile(r'value="([^"]*)" selected')


def send_files(client: httpx.Client, *files: tuple[str, bytes], status: int = 303) -> str:
    """Send files and give the address that comes next; with faults the page itself."""
    token = _TOKEN.search(show(client, "/import"))
    assert token is not None
    sent = [("files", one) for one in files]
    answer = client.post("/import", data={"form_token": token[1]}, files=sent, headers=HTML)
    assert answer.status_code == status, answer.text
    return str(answer.headers.get("location", answer.text))


def press(
    client: httpx.Client,
    page: str,
    path: str,
    said: dict[str, str] | None = None,
    *,
    status: int = 303,
) -> str:
    """Send the form of a page as it stands there but for what is said; give what comes next."""
    text = show(client, page)
    form = text[text.index(f'method="post" action="{path}"', text.index("<main")) :]
    form = form[: form.index("</form>")]
    fields = dict(_HIDDEN.findall(form))
    for select in _SELECT.finditer(form):
        chosen = _CHOSEN.search(select[0])
        fields[select[1]] = chosen[1] if chosen else ""
    answer = client.post(path, data=fields | (said or {}), headers=HTML)
    assert answer.status_code == status, answer.text
    return str(answer.headers.get("location", answer.text))


def field_of(text: str, heading: str) -> str:
    """Give the name of the field in which it is said what a heading means."""
    found = re.search(rf'<label for="field-(t\dh\d+)">{re.escape(heading)}</label>', text)
    assert found is not None
    return found[1]
