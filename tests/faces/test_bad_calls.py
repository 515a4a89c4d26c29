"""What the public functions do with arguments that are no text, no path, no pace and no reading: a fault, no crash."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import promptprep
from promptprep.errors import BadCall, PromptprepError

NONE_OF_IT = [None, 5, b"sky.en.md", float("nan"), {}]
TAKING_TEXT: list[Callable[[Any], object]] = [
    lambda odd: promptprep.spoken_form(odd, "en"),
    lambda odd: promptprep.spoken_form("Good evening.", odd),
    lambda odd: promptprep.time_text(odd, "en"),
    lambda odd: promptprep.check_text(odd, "en"),
    lambda odd: promptprep.difficulty(odd, "en"),
    lambda odd: promptprep.break_text(odd, "en", 18),
    lambda odd: promptprep.learn_pace([("Good evening.", 1.0)], odd),
    lambda odd: promptprep.read_script(odd),
    lambda odd: promptprep.prepare([odd], "never-made"),
    lambda odd: promptprep.prepare(["none.en.md"], odd),
    lambda odd: promptprep.learn_pace([(odd, 3.0)], "en"),
]


@pytest.mark.parametrize("odd", NONE_OF_IT, ids=repr)
@pytest.mark.parametrize("call", range(len(TAKING_TEXT)))
def test_what_is_no_text_and_no_path(call: int, odd: object) -> None:
    with pytest.raises(PromptprepError) as caught:
        TAKING_TEXT[call](odd)
    assert caught.value.hint


@pytest.mark.parametrize(
    "samples",
    [None, 5, "text", [None], [("Good evening.",)], ["ab"], [("Good evening.", None)], [("Good evening.", 10**400)]],
    ids=lambda samples: repr(samples)[:30],
)
def test_what_is_no_timed_reading(samples: Any) -> None:
    with pytest.raises(BadCall) as caught:
        promptprep.learn_pace(samples, "en")
    assert caught.value.hint


@pytest.mark.parametrize("pace", [5, "slow", {}])
def test_what_is_no_pace(pace: Any) -> None:
    with pytest.raises(BadCall):
        promptprep.time_text("Good evening.", "en", pace)


def test_one_script_may_be_named_by_itself(tmp_path: Path) -> None:
    script = tmp_path / "none.en.md"
    said: list[str] = []
    for named in (script, str(script), [script], (str(script),)):
        with pytest.raises(PromptprepError) as caught:
            promptprep.prepare(named, tmp_path / "out")
        said.append(str(caught.value))
    assert "none.en.md" in said[0]
    assert set(said) == {said[0]}
