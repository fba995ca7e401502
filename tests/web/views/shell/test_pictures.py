from __future__ import annotations

from service.web.views.shell.pictures import page_of_picture, page_of_whole


def test_a_number_is_told_whole() -> None:
    """As its object shows it, or as it came."""
    assert page_of_picture("ab", "PM/7 a", 160) == "/api/photos/ab?object=PM%2F7+a&width_px=160"
    assert page_of_whole("ab", 640) == "/api/photos/ab?width_px=640"
