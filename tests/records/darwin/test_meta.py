from __future__ import annotations

from collections.abc import Callable

import pytest

from service.errors import UnreadableFileError
from service.records.darwin.meta import Field, read_meta
from service.records.sources.delimited import Form

Maker = Callable[..., bytes]
DWC = "http://rs.tdwg.org/dwc/terms/"
NAMESPACE = b'xmlns="http://rs.tdwg.org/dwc/text/"'
LAUGHS = '<!DOCTYPE a [<!ENTITY l "ha"><!ENTITY m "&l;&l;&l;&l;">]>'


def test_terms_become_headings(make_meta: Maker) -> None:
    """Each field has the short name of its term, its index, and what empty cells mean."""
    fields = (
        f'<id index="0"/><field index="1" term="{DWC}catalogNumber"/>'
        '<field index="2" term="http://purl.org/dc/terms/title"/>'
        f'<field term="{DWC}preparations" default="skin"/>'
        '<field index="3" term="http://x.example/other#term"/>'
    )
    core = read_meta(make_meta(fields), name="x.zip").core
    assert (core.file, core.row_type, core.id_index) == ("core.txt", "Occurrence", 0)
    assert core.form == Form("\t", quoted=True, skipped_lines=1)
    assert core.fields == (
        Field("dwc:catalogNumber", 1),
        Field("dcterms:title", 2),
        Field("dwc:preparations", None, "skin"),
        Field("http://x.example/other#term", 3),
    )


def test_usual_form_is_comma_and_quotes() -> None:
    """What the description leaves out has the value the text guide gives."""
    data = b"<archive %s><core><files><location>a</location></files></core></archive>" % NAMESPACE
    assert read_meta(data, name="x.zip").core.form == Form(",", quoted=True, skipped_lines=0)


@pytest.mark.parametrize(
    ("fields", "head", "reason"),
    [
        ("", LAUGHS, "DOCTYPE"),
        ("<id index='&l;'/>", LAUGHS, "DOCTYPE|XML"),
        ("", '<!DOCTYPE a SYSTEM "http://192.0.2.1/x.dtd">', "DOCTYPE"),
        ("<id index='&nothing;'/>", "", "not usable XML"),
        ("<id index='-1'/>", "", "counts"),
        ("<id index='99999999999'/>", "", "counts"),
        ("<field index='200' term='x'/>", "", "columns"),
        ("<files><location>b</location></files>", "", "several"),
        ("</core><core>", "", "one table"),
        ("x" * 1_000_000, "", "longer"),
    ],
    ids=[
        "laughs",
        "attribute",
        "DTD",
        "entity",
        "minus",
        "large",
        "wide",
        "files",
        "cores",
        "long",
    ],
)
def test_bad_description_is_refused(make_meta: Maker, fields: str, head: str, reason: str) -> None:
    """What means harm or cannot be meant is an error that names the archive."""
    with pytest.raises(UnreadableFileError, match=rf"x\.zip.*(?:{reason})"):
        read_meta(make_meta(fields, head=head), name="x.zip")


@pytest.mark.parametrize(
    "form", ['fieldsTerminatedBy="ab"', 'fieldsTerminatedBy=""', 'fieldsEnclosedBy="\'"']
)
def test_form_that_cannot_be_read_is_refused(form: str) -> None:
    """A table cut in a way the reader does not know is not guessed at."""
    part = f"<core {form}><files><location>a</location></files></core>".encode()
    with pytest.raises(UnreadableFileError, match="divided by"):
        read_meta(b"<archive %s>%s</archive>" % (NAMESPACE, part), name="x.zip")
