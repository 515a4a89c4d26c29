"""The fonts inside the screen copy: the copy's own, and one for the panels whatever language the operator reads."""

from __future__ import annotations

import base64
from collections.abc import Callable, Iterator, Sequence

from promptprep.model.language import base_of
from promptprep.model.prepared import PreparedScript
from promptprep.rendering.screen_plan import ScreenPlan
from promptprep.rendering.screen_words import READER, ScreenWords

Fonts = Callable[[str, str, bool], Sequence[bytes]]
"""(language, text, bold) -> WOFF2 subsets that hold the text's characters, in the order in which they are asked."""

UNDERLINED = ("ja", "zh", "ko")
"""Languages whose bundled font has one weight: stress is shown by a line under the words, and widths hold."""

PLAIN = "".join(chr(code) for code in range(0x20, 0x7F)) + "°·×–−←→↑↓…"


def copy_faces(prepared: PreparedScript, plan: ScreenPlan, fonts: Fonts, words: ScreenWords) -> list[dict[str, str]]:
    """What the picture is set in: families "copy-0", "copy-1" ... in the order in which they are asked."""
    language = prepared.script.language
    plain = "".join([*_shown(prepared, plan), *_in_picture(words), "0123456789:.,–-+×° "])
    underlined = base_of(language) in UNDERLINED
    bold = "" if underlined else "".join(run.text for placed in plan.lines for run in placed.runs if run.stress)
    faces = _faces("copy", "400", fonts(language, _once(plain), False))
    return [*faces, *(_faces("copy", "700", fonts(language, _once(bold), True)) if bold else ())]


def panel_faces(prepared: PreparedScript, plan: ScreenPlan, fonts: Fonts, words: ScreenWords) -> list[dict[str, str]]:
    """What the panels and the operator's board are set in, for all weights: families "panel-0", "panel-1" ..."""
    script = prepared.script
    shown = [script.title, script.name, *words.texts.values(), *(segment.title for segment in script.segments)]
    shown += [action.text for cue in plan.cues for action in cue.actions]
    return _faces("panel", "100 900", fonts(words.language, _once("".join(shown) + PLAIN), False))


def _shown(prepared: PreparedScript, plan: ScreenPlan) -> Iterator[str]:
    yield prepared.script.title
    yield prepared.script.name
    yield prepared.rig.title or prepared.rig.id
    for placed in plan.lines:
        yield from (run.text + (run.say or "") for run in placed.runs)
    for wait in plan.waits:
        yield from (wait.text, *wait.names, *wait.notes, *(part for pair in wait.sayings for part in pair))


def _in_picture(words: ScreenWords) -> Iterator[str]:
    return (text for name, text in words.texts.items() if name in READER or name.startswith("chart_"))


def _once(text: str) -> str:
    return "".join(sorted(set(text)))


def _faces(family: str, weight: str, files: Sequence[bytes]) -> list[dict[str, str]]:
    sources = [f"data:font/woff2;base64,{base64.b64encode(file).decode('ascii')}" for file in files]
    return [{"family": f"{family}-{i}", "weight": weight, "source": source} for i, source in enumerate(sources)]
