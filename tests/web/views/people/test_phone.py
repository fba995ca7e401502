from __future__ import annotations

import httpx
from fastapi import Request

from service.keeping.sharing.reach import UNREACHED, Reach
from service.symbols.outline import symbol_path
from service.symbols.symbol import Level, encode_symbol
from service.web.views.people.phone import draw_code, find_address
from tests.web.store.opened import MOMENT
from tests.web.store.people.people import CODE, DEE
from tests.web.views.opened import send, show
from tests.web.views.people.conftest import ADDRESS
from tests.web.views.people.entered import sign_in_as

PAGE = "/people/phone"


def _request(scheme: str, host: str) -> Request:
    """Give a request as it came in by an address."""
    headers = [(b"host", host.encode())]
    scope = {"type": "http", "scheme": scheme, "path": PAGE, "headers": headers}
    return Request({**scope, "query_string": b"", "server": (host, 443)})


def test_the_page_shows_the_code_and_where_to_type_it(staffed: httpx.Client) -> None:
    """In letters, as a symbol, and for how long."""
    sign_in_as(staffed, DEE)
    assert 'id="countdown"' not in show(staffed, PAGE)
    page = send(staffed, PAGE, PAGE, {}, status=200).text
    assert f"{ADDRESS}/pair<" in page
    assert 'data-seconds="300"' in page
    assert "<svg" in page
    assert "style=" not in page


def test_the_symbol_leads_to_the_page_of_the_code() -> None:
    """It holds the whole address, so that scanning is all there is to do."""
    shown = draw_code(CODE, MOMENT, ADDRESS)
    symbol = encode_symbol("https://192.168.1.20:8000/pair/7KMT-F4RQ-9XWN", level=Level.M)
    assert shown.path == symbol_path(symbol)
    assert shown.side_modules == symbol.full_side_modules


def test_a_phone_is_sent_where_it_can_go() -> None:
    """To the address this page came by, unless that is this machine's own or in clear."""
    reach = Reach((ADDRESS,))
    named = "cards.museum.example"
    assert find_address(_request("https", named), reach) == f"https://{named}"
    assert find_address(_request("https", "127.0.0.1"), reach) == ADDRESS
    assert find_address(_request("http", named), reach) == ADDRESS
    assert find_address(_request("http", "localhost"), UNREACHED) == ""


def test_without_users_the_page_says_what_comes_first(client: httpx.Client) -> None:
    """There is nobody a phone could be signed in as."""
    assert "Add the first user" in show(client, PAGE)
    assert send(client, "/people", PAGE, {}).headers["location"] == "/sign-in"
