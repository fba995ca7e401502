from __future__ import annotations

import pytest

from service.render.reading.objects import Ref, Value, read_value


@pytest.mark.parametrize(
    ("written", "value"),
    [
        (b"12", 12.0),
        (b"-.5", -0.5),
        (b"+3.25 ", 3.25),
        (b"/Name", "/Name"),
        (b"true", True),
        (b"null", None),
        (b"12 0 R", Ref(12)),
        (b"[1 2 0 R 3]", [1.0, Ref(2), 3.0]),
        (b"[1 2 0 RG]", None),
        (b"(a \\) (b) c)", b"a \\) (b) c"),
        (b"<0a0B>", b"<0a0B>"),
        (b"<</A<</B[/C/D]>>/E 1>>", {"/A": {"/B": ["/C", "/D"]}, "/E": 1.0}),
        (b"% said aside\n<<>>", {}),
        (b"[]", []),
    ],
)
def test_values_are_read(written: bytes, value: Value) -> None:
    """Each kind of value of ISO 32000-1, 7.3, is what its bytes say."""
    if value is None and written != b"null":
        with pytest.raises(ValueError, match="no value"):
            read_value(written)
    else:
        assert read_value(written)[0] == value


def test_a_value_ends_where_the_next_begins() -> None:
    """The end is told, and a beginning can be given."""
    assert read_value(b"/A /B /C", 2) == ("/B", 5)


@pytest.mark.parametrize(
    "written", [b"", b"endobj", b"[1", b"<</A", b"<</A 1 /B>>", b"<</A 1/A 2>>", b"<<1 2>>", b"]"]
)
def test_damage_is_no_value(written: bytes) -> None:
    """What does not end, or does not pair, is refused."""
    with pytest.raises(ValueError, match=r"."):
        read_value(written)
