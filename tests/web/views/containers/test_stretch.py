from __future__ import annotations

import httpx
import pytest

from service.records.record import PlaceRecord
from service.web.views.containers.asked import Asked
from service.web.views.containers.contents import place_key, show_layers
from service.web.views.containers.stretch import cut_stretch
from tests.web.store.opened import EMPTY_BOX
from tests.web.views.containers.made import look
from tests.web.views.contents.packed import change, places_of
from tests.web.views.opened import show

MOST_BYTES = 90_000
"""What is left of 150 KB beside style, scripts, fonts and marks, which a browser test weighs."""
LAYERS = show_layers(look([], [PlaceRecord(f"P.{n}", layer=1 + n // 50) for n in range(400)]))


@pytest.mark.parametrize(
    ("asked", "first", "last", "layers"),
    [
        (Asked(), 1, 60, [(1, 50), (2, 10)]),
        (Asked(begin=60), 1, 60, [(1, 50), (2, 10)]),
        (Asked(begin=61), 61, 120, [(2, 40), (3, 20)]),
        (Asked(begin=9_999), 361, 400, [(8, 40)]),
        (Asked(open=place_key(PlaceRecord("P.250"))), 241, 300, [(5, 10), (6, 50)]),
        (Asked(focus=f"layer-up-{place_key(PlaceRecord('P.59'))}"), 1, 60, [(1, 50), (2, 10)]),
        (Asked(focus=f"up-{place_key(PlaceRecord('P.60'))}"), 61, 120, [(2, 40), (3, 20)]),
    ],
    ids=["start", "its last", "next", "past the end", "open", "keyboard", "keyboard on the next"],
)
def test_sixty_are_shown_at_once(
    asked: Asked, first: int, last: int, layers: list[tuple[int, int]]
) -> None:
    """In the order in which they lie, and what is worked on among them."""
    stretch = cut_stretch(LAYERS, asked)
    assert (stretch.first, stretch.last, stretch.total) == (first, last, 400)
    assert [(layer.number, len(layer.objects)) for layer in stretch.layers] == layers
    assert stretch.earlier == max(first - 60, 0)
    assert stretch.later == (0 if last == 400 else last + 1)


@pytest.mark.parametrize("many", [0, 1, 60])
def test_what_is_few_is_shown_whole(many: int) -> None:
    """Further pages are for what is more than sixty."""
    layers = show_layers(look([], [PlaceRecord(str(number)) for number in range(many)]))
    stretch = cut_stretch(layers, Asked(begin=7))
    assert (stretch.earlier, stretch.later, stretch.last) == (0, 0, many)
    assert not stretch.is_layered
    assert sum(len(layer.objects) for layer in stretch.layers) == many


@pytest.fixture
def crowded(client: httpx.Client) -> httpx.Client:
    """Pack four hundred things into the empty box."""
    places = [{"object_number": f"P.{number}", "layer": 1} for number in range(400)]
    path = f"/api/containers/{EMPTY_BOX}/packings"
    answer = client.post(path, json={"places": places}, headers={"If-Match": '"r0"'})
    assert answer.status_code == 201
    return client


@pytest.mark.parametrize("query", ["", "?begin=301", "?arrange=yes", "?arrange=yes&begin=301"])
def test_four_hundred_objects_make_no_large_page(crowded: httpx.Client, query: str) -> None:
    """A cabinet of coins is looked at on a phone, too."""
    page = show(crowded, f"/containers/{EMPTY_BOX}{query}")
    assert len(page.encode()) < MOST_BYTES
    assert "400 objects" in page
    assert page.count('class="handle"' if "arrange" in query else 'class="object"') == 60


def test_a_change_comes_back_to_where_one_was(crowded: httpx.Client) -> None:
    """The further objects stay on the page after one of them was taken out, moved or noted."""
    key = place_key(PlaceRecord("P.350"))
    fields = {"key": key, "begin": "301", "layer": "1", "note": "in its tray"}
    page = change(crowded, "/contents/place", fields, number=EMPTY_BOX)
    assert "301 to 360 of 400" in page
    assert "in its tray" in page


def test_an_order_of_those_shown_leaves_the_others(crowded: httpx.Client) -> None:
    """The fourth sixty turned round; those before and behind lie as they lay."""
    keys = [place_key(PlaceRecord(f"P.{number}")) for number in range(239, 179, -1)]
    order = " ".join(f"1:{key}" for key in keys)
    page = change(crowded, "/contents/order", {"order": order, "begin": "181"}, number=EMPTY_BOX)
    lies = [number for number, _ in places_of(crowded, EMPTY_BOX)]
    turned = [*range(180), *range(239, 179, -1), *range(240, 400)]
    assert lies == [f"P.{number}" for number in turned]
    assert "181 to 240 of 400" in page
