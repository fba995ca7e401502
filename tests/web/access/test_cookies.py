from __future__ import annotations

import pytest
from fastapi import Response

from service.web.access.cookies import clear_session, read_session, refuse_in_clear, set_session
from service.web.replies.refusals import RefusedError
from tests.web.access.made import make_request


def test_over_https_the_cookie_is_bound_to_the_host() -> None:
    """Every attribute that the prefix `__Host-` asks for, and no program of a page can read it."""
    response = Response()
    set_session(make_request("https", "store.local:8443"), response, "secret")
    name, *rest = response.headers["set-cookie"].split("; ")
    assert name == "__Host-underlid=secret"
    assert set(rest) == {"HttpOnly", "Max-Age=1209600", "Path=/", "SameSite=lax", "Secure"}


def test_on_this_machine_the_cookie_has_no_secure() -> None:
    """Browsers would not send it over http; the name says that it is another."""
    response = Response()
    set_session(make_request(), response, "secret")
    assert response.headers["set-cookie"].startswith("underlid=secret; HttpOnly")
    assert "Secure" not in response.headers["set-cookie"]


def test_each_scheme_reads_its_own() -> None:
    """What was set over http, which others may have read or set, signs nobody in over https."""
    both = "underlid=plain; __Host-underlid=secure"
    assert read_session(make_request("https", cookie=both)) == "secure"
    assert read_session(make_request(cookie=both)) == "plain"
    assert read_session(make_request("https", cookie="underlid=plain")) is None
    assert read_session(make_request(cookie="underlid=")) is None


def test_the_cookie_is_taken_away() -> None:
    """The browser forgets it at once."""
    response = Response()
    clear_session(make_request("https", "store.local"), response)
    assert 'underlid=""; HttpOnly; Max-Age=0' in response.headers["set-cookie"]


@pytest.mark.parametrize("host", ["store.local", "192.168.1.20:8000", "localhost.evil.example"])
def test_no_password_goes_in_clear(host: str) -> None:
    """Over a network only https is taken; on this machine http will do."""
    with pytest.raises(RefusedError, match="plain http"):
        refuse_in_clear(make_request(host=host))
    refuse_in_clear(make_request("https", host))
    for own in ("localhost:8000", "127.0.0.1", "[::1]:8000"):
        refuse_in_clear(make_request(host=own))
