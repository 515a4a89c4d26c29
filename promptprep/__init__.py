"""promptprep: times, checks and prints host copy for a through-the-glass prompter.

The public faces, loaded at first use:

    spoken_form(text, language) -> str
    time_text(text, language, pace=None) -> Timing
    learn_pace(samples, language) -> Pace
    break_text(text, language, width_em) -> list[str]
    check_text(text, language) -> list[Finding]
    difficulty(text, language) -> float
    read_script(path) -> Script
    prepare(paths, out) -> Report
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from promptprep.faces import (
        break_text,
        check_text,
        difficulty,
        learn_pace,
        prepare,
        read_script,
        spoken_form,
        time_text,
    )

__version__ = "0.1.0"
__all__ = [
    "break_text",
    "check_text",
    "difficulty",
    "learn_pace",
    "prepare",
    "read_script",
    "spoken_form",
    "time_text",
]


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from promptprep import faces

    return getattr(faces, name)
