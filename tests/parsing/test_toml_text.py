"""TOML that people write: values with any line ends, and faults at their place."""

from __future__ import annotations

import pytest

from promptprep.errors import UnreadableInput
from promptprep.parsing.toml_text import toml_values


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_line_ends_do_not_matter(end: str) -> None:
    assert toml_values(f'a = 1{end}b = "x"{end}', "broken", "it", "mend it") == {"a": 1, "b": "x"}


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("a = 1\nb = \n", (2, 5)),
        ("a = 1\na = 2", (2, 1)),
        ("[a", (1, 1)),
        ("a = " + "9" * 5000, (1, 1)),  # more digits than Python turns into a number
        ("a = " + "[" * 20_000, (1, 1)),
    ],
    ids=lambda value: repr(value)[:20],
)
def test_a_fault_has_its_place_and_the_lines_before_count(text: str, place: tuple[int, int]) -> None:
    for before in (0, 3):
        with pytest.raises(UnreadableInput) as caught:
            toml_values(text, "it-broken", "the file", "mend it", "a.toml", lines_before=before)
        fault = caught.value
        assert (fault.code, fault.file, fault.hint) == ("it-broken", "a.toml", "mend it")
        assert fault.message.startswith("the file does not parse: ")
        assert (fault.line, fault.column) == (place[0] + before, place[1])
