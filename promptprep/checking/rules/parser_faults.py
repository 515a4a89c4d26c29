"""What the parser noticed and read past, each as a finding of that name."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.model.finding import Level


def _finder(name: str) -> Callable[[Context], Iterator[Hit]]:
    def find(context: Context) -> Iterator[Hit]:
        for fault in context.script.faults:
            if fault.name == name:
                yield Hit(fault.span, fault.message, fault.hint)

    return find


def _rule(name: str, level: Level, sees: str, trips: str, fires: str, silent: str) -> Rule:
    return Rule(
        name, level, _finder(name), sees, trips, ("promptprep's script format",), EVERY, fires=fires, silent=silent
    )


RULES = (
    _rule(
        "unknown-cue", "fix",
        "A bracket that looks like a cue, of a kind that nobody in the room has.",
        "It is not read out, takes no time and reaches no position: whoever it was meant for misses it.",
        "Look at this. [camera: close]", "Look at this. [vision: camera 2, close]",
    ),
    _rule(
        "cue-without-time", "fix",
        "A pause, a clip or a live part that does not say how long it takes.",
        "It counts as no time at all, and every back time after it is wrong.",
        "Look at this. [clip Moonrise over the ridge]", "Look at this. [clip 0:20 Moonrise over the ridge]",
    ),
    _rule(
        "cue-inside-word", "fix",
        "A cue that stands between two letters of one word.",
        "The word is torn in two on the screen, and the cue falls at a place that nobody can hear.",
        "The tele[vision: sky]scope is open.", "The telescope [vision: sky] is open.",
    ),
    _rule(
        "unclosed-remark", "fix",
        "A remark that is opened with <!-- and not closed with --> in its paragraph.",
        "What was meant for nobody's ear stands on the screen and is read out.",
        "Good evening. <!-- ask Ines about the dust", "Good evening. <!-- ask Ines about the dust -->",
    ),
    _rule(
        "duplicate-id", "fix",
        "Two segments with one id.",
        "Ids pair the segments of language versions and of sessions: two of a name cannot be told apart.",
        "# One {#sky}\n\nGood evening.\n\n# Two {#sky}\n\nGood night.",
        "# One {#dusk}\n\nGood evening.\n\n# Two {#dawn}\n\nGood night.",
    ),
    _rule(
        "two-languages", "fix",
        "A file whose name says one language and whose front matter says another.",
        "It is timed, checked and set by the rules of the wrong one, as often as not.",
        '+++\nlanguage = "fr"\n+++\n\nGood evening.', '+++\nlanguage = "en"\n+++\n\nGood evening.',
    ),
    _rule(
        "unknown-attribute", "fix",
        "Something in a heading's braces that is neither a slot nor an id.",
        "What it was meant to set is not set, in silence.",
        "# Opening {slott=0:20}\n\nGood evening.", "# Opening {slot=0:20}\n\nGood evening.",
    ),
)  # fmt: skip
