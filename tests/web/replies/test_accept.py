from __future__ import annotations

import pytest

from service.web.replies.accept import choose_media_type

OFFERED = ("application/pdf", "image/png", "application/json")


@pytest.mark.parametrize(
    ("accept", "chosen"),
    [
        pytest.param("", "application/pdf", id="nothing said"),
        pytest.param("*/*", "application/pdf", id="anything"),
        pytest.param("image/*", "image/png", id="a kind"),
        pytest.param("IMAGE/PNG", "image/png", id="capitals"),
        pytest.param("text/html, */*;q=0.1", "application/pdf", id="browser"),
        pytest.param("application/pdf;q=0.5, image/png", "image/png", id="weights"),
        pytest.param("*/*, application/pdf;q=0", "image/png", id="all but one"),
        pytest.param("application/*;q=0.9, application/json", "application/json", id="closest"),
        pytest.param("text/html", None, id="not offered"),
        pytest.param("application/pdf;q=nan", None, id="weight not a number"),
        pytest.param("application/pdf;q=7", None, id="weight out of range"),
        pytest.param(";;;,/,", None, id="rubbish"),
    ],
)
def test_media_type_is_negotiated(accept: str, chosen: str | None) -> None:
    """Weights and closeness decide as RFC 9110, section 12.5.1, has it."""
    assert choose_media_type(accept, OFFERED) == chosen
