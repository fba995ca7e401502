"""Packages unpacked without root, by programs that write down how they were called."""

from __future__ import annotations

import pytest

from service.bootstrap import system_files
from tests.bootstrap.conftest import Tree

# A download that fetches one package with a library, pip's wheel and two certificates.
APT = """
echo apt-get "$@" >> calls
for word in "$@"; do
    [ "$word" = --download-only ] && : > .syslibs/apt/archives/pango.deb
done
exit 0
"""
DPKG = """
echo dpkg-deb "$1" "${2##*/}" >> calls
root="$3/usr"
/bin/mkdir -p "$root/lib/any-linux-gnu" "$root/share/python-wheels"
/bin/mkdir -p "$root/share/ca-certificates/mozilla"
: > "$root/share/python-wheels/pip-99-py3-none-any.whl"
echo one > "$root/share/ca-certificates/mozilla/a.crt"
echo two > "$root/share/ca-certificates/mozilla/b.crt"
"""
UNPACK = "from service.bootstrap.system_files import *; unpack(['pango', 'pip'])"


def test_packages_are_fetched_checked_and_unpacked(tree: Tree) -> None:
    """Downloads go into our folder, are unpacked there, and the names are remembered."""
    tree.write_program("apt-get", APT)
    tree.write_program("dpkg-deb", DPKG)
    child = tree.python("-c", f"{UNPACK}; print(*sorted(unpacked()))")
    assert child.stdout == "pango pip\n", child.stderr
    calls = (tree.folder / "calls").read_text().splitlines()
    assert calls[0].endswith(" update")
    assert calls[1].endswith(" --download-only pango pip")
    assert calls[2:] == ["dpkg-deb -x pango.deb"]


def test_unpacked_files_are_found(tree: Tree) -> None:
    """Libraries come before those the reader named; pip gets its wheel and certificates."""
    tree.write_program("apt-get", APT)
    tree.write_program("dpkg-deb", DPKG)
    show = "search_variables({'LD_LIBRARY_PATH': 'own'}), pip_variables({'PIP_CERT': 'given'})"
    child = tree.python("-c", f"{UNPACK}; print({show})")
    usr = tree.folder / ".syslibs" / "usr"
    search = {"LD_LIBRARY_PATH": f"{usr / 'lib/any-linux-gnu'}:own"}
    pip = {"PYTHONPATH": str(usr / "share/python-wheels/pip-99-py3-none-any.whl")}
    assert child.stdout == f"{search} {pip}\n"


@pytest.mark.parametrize(
    ("variables", "expected"),
    [({}, "one\ntwo\n"), ({"PIP_CERT": "given"}, "given")],
    ids=["none named", "own named"],
)
def test_pip_has_certificates_where_the_system_has_none(
    tree: Tree, variables: dict[str, str], expected: str
) -> None:
    """Without certificates of the system pip gets the reader's own, else those unpacked."""
    tree.write_program("apt-get", APT)
    tree.write_program("dpkg-deb", DPKG)
    script = f"{UNPACK}\nfound = pip_variables({variables}, system_certificates=Path('none'))\n"
    script += "path = Path(found['PIP_CERT'])\n"
    script += "print(path.read_text() if path.exists() else path, end='')"
    assert tree.python("-c", script).stdout == expected


def test_nothing_unpacked_changes_nothing(tree: Tree) -> None:
    """Where nothing was unpacked, no process is started anew and pip is left alone."""
    script = "from service.bootstrap.system_files import *\n"
    script += "print(search_variables({}), pip_variables({}), unpacked())"
    assert tree.python("-c", script).stdout == "{} {} frozenset()\n"


def test_download_touches_nothing_of_the_system() -> None:
    """Lists and archives lie in our folder; no lock is taken and nothing installed."""
    update, install = system_files.download_commands(["pango"])
    folder = system_files.FOLDER / "apt"
    for command in (update, install):
        assert f"Dir::State::lists={folder}/lists" in command
        assert f"Dir::Cache={folder}" in command
        assert "Debug::NoLocking=1" in command
    assert "--download-only" in install
