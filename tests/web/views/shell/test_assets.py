from __future__ import annotations

import hashlib
import re
import tomllib

import httpx
import pytest

from service.render.task import TEMPLATES
from service.web.views.shell.assets import STYLE, find_asset, load_assets
from tests.web.sent import problem_of

FONT = "AtkinsonHyperlegibleNext-Regular.woff2"
VENDOR = TEMPLATES / "web" / "vendor"


def test_every_file_is_given_under_the_address_of_its_content(client: httpx.Client) -> None:
    """A browser keeps it for a year; another content has another address."""
    for asset in load_assets().values():
        answer = client.get(asset.path)
        assert answer.content == asset.data
        assert answer.headers["content-type"] == asset.media_type
        assert "immutable" in answer.headers["cache-control"]


def test_what_is_large_goes_packed_to_whoever_takes_it(client: httpx.Client) -> None:
    """Script and style are read out of gzip as they are; a font is packed already."""
    for name, encoding in ((STYLE, "gzip"), ("htmx.min.js", "gzip"), (FONT, None)):
        asset = load_assets()[name]
        answer = client.get(asset.path, headers={"Accept-Encoding": "br, gzip"})
        assert answer.headers.get("content-encoding") == encoding
        assert answer.content == asset.data
        assert answer.headers["vary"] == "Accept-Encoding"
        plain = client.get(asset.path, headers={"Accept-Encoding": "identity"})
        assert "content-encoding" not in plain.headers
        assert plain.content == asset.data


@pytest.mark.parametrize("path", ["/assets/0000/pages.js", "/assets/x/..%2Flayout.html"])
def test_nothing_else_is_given(client: httpx.Client, path: str) -> None:
    """Neither an old content nor a file beside the folder."""
    assert problem_of(client.get(path))["status"] == 404


def test_the_style_names_its_fonts_by_their_addresses() -> None:
    """No file is fetched from elsewhere."""
    style = load_assets()[STYLE].data.decode()
    assert find_asset(FONT) in style
    assert "http" not in style


def test_the_dark_changes_colours_alone() -> None:
    """So the views are looked at whole in the light, and in the dark for contrast."""
    style = load_assets()[STYLE].data.decode()
    dark = re.findall(r"prefers-color-scheme[^{]*\{\s*([^{]+)\{([^}]*)\}\s*(.)", style)
    assert [(selector.strip(), after) for selector, _, after in dark] == [(":root", "}")]
    names = [said.split(":")[0].strip() for said in dark[0][1].split(";") if said.strip()]
    assert all(name.startswith("--") for name in names)


def test_what_others_made_is_as_they_made_it() -> None:
    """Each vendored file has its licence beside it and the digest that was written down."""
    table = tomllib.loads((VENDOR / "vendor.toml").read_text(encoding="utf-8"))
    named = {row["file"]: row for row in table.values()}
    assert set(named) == {path.name for path in VENDOR.glob("*.js")}
    for name, row in named.items():
        assert hashlib.sha256((VENDOR / name).read_bytes()).hexdigest() == row["sha256"]
        assert (VENDOR / row["licence_file"]).is_file()
