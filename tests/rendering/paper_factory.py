"""Scripts for the tests of print: written by Hypothesis from the demo's own words, timed by the real engines."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any, cast

from hypothesis import strategies as st

from promptprep import faces
from promptprep.model.language import FIRST_CLASS
from promptprep.model.lines import BrokenScript, Column
from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Paper, Reader, Studio
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.outputs import paper_tools
from promptprep.pipeline.scripts import FALLBACK_RIG, time_one, wording_digest
from promptprep.rendering.environment import environment
from promptprep.rendering.printing import PaperTools
from promptprep.store.templates import shipped

DEMO = Path(__file__).parents[2] / "scripts_demo"
UNSPACED = ("ja", "zh")
ENDS = {"ja": "。", "zh": "。", "hi": "।", "ar": "."}
CUES = (
    "[vision: two-shot]",
    "[clip 0:20 Moonrise over the ridge]",
    "[pause 2]",
    "[graphic: name strap, Dr Osei]",
    "[live 1:10 interview]",
    "[lights: dome, dim red, and keep it there until the end]",
    "[zoom: in on the ring]",
)


@lru_cache(maxsize=16)
def demo_words(language: str) -> tuple[str, ...]:
    """Plain words of the demo's copy; phrases of a few characters where there are no spaces."""
    script = faces.read_script(DEMO / f"sky.{language}.md")
    text = " ".join(p.text for segment in script.segments for p in segment.paragraphs)
    plain = "".join(c if c.isalnum() or c in "'’-" or not c.isascii() else " " for c in text)
    for mark in "。，、：；！？।؟،؛«»“”„—–":
        plain = plain.replace(mark, " ")
    if language in UNSPACED:
        run = plain.replace(" ", "")
        return tuple(run[at : at + 3] for at in range(0, len(run) - 3, 3))
    return tuple(word for word in plain.split() if word.strip("'’-"))


@st.composite
def sentences(draw: st.DrawFn, language: str, most: int) -> str:
    """One sentence with, now and then, stress, a pronunciation or a cue inside."""
    words = list(draw(st.lists(st.sampled_from(demo_words(language)), min_size=1, max_size=most)))
    look = draw(st.sampled_from(("plain", "plain", "plain", "stress", "say", "cue")))
    at = draw(st.integers(0, len(words) - 1))
    if look == "stress":
        words[at] = f" *{words[at]}* "
    elif look == "say":
        words[at] = f'[{words[at]}]{{say="SAY-it-so"}}'
    elif look == "cue":
        words[at] = f"{words[at]} {draw(st.sampled_from(CUES))}"
    joint = "" if language in UNSPACED else " "
    return joint.join(words).strip() + ENDS.get(language, ".")


@st.composite
def blocks(draw: st.DrawFn, language: str, most_words: int, cues: int) -> str:
    kind = draw(st.sampled_from(("copy",) * 4 + ("note",) + ("cue",) * cues))
    if kind == "cue":
        return "\n\n".join(draw(st.lists(st.sampled_from(CUES), min_size=1, max_size=1 + 2 * cues)))
    text = (" " if language not in UNSPACED else "").join(
        draw(st.lists(sentences(language, most_words), min_size=1, max_size=9))
    )
    return f"> {text.replace('[', '(').replace(']', ')')}" if kind == "note" else text


@st.composite
def script_texts(draw: st.DrawFn, languages: tuple[str, ...] = FIRST_CLASS) -> tuple[str, str]:
    """(language, source) of a script: none to a dozen segments, long and short, with few cues or many."""
    language = draw(st.sampled_from(languages))
    most_words, cues = draw(st.sampled_from((6, 25, 60))), draw(st.integers(0, 3))
    parts = []
    for _ in range(draw(st.integers(1, 5))):
        if draw(st.booleans()):
            parts.append("# " + " ".join(draw(st.lists(st.sampled_from(demo_words(language)), min_size=1, max_size=9))))
        parts += draw(st.lists(blocks(language, most_words, cues), min_size=0, max_size=6))
    return language, "\n\n".join(parts)


papers = st.builds(
    Paper,
    size=st.sampled_from(("A4", "letter", "A5")),
    orientation=st.sampled_from(("portrait", "landscape")),
    font_pt=st.sampled_from((None, 14.0, 18.0)),
    punched=st.booleans(),
    cards=st.sampled_from((1, 2, 4)),
)


def prepared(text: str, language: str, studio: Studio | None = None, reader: Reader | None = None) -> PreparedScript:
    """A script as print needs it: timed, without lines for the screen, findings or sightline."""
    script = parse_script(text, language=language, name="made")
    studio = studio or Studio()
    direction = str(faces.tools().language(language).maybe("fonts", "direction", "ltr"))
    return PreparedScript(
        script=script,
        timing=time_one(script, studio, faces.tools()),
        findings=(),
        broken=BrokenScript(language, direction, Column(1000, 50, 75), ()),
        sightline=cast(Any, None),
        rig=FALLBACK_RIG,
        digest=wording_digest(script),
        direction=direction,
        reader=reader,
    )


@lru_cache(maxsize=16)
def printing(language: str) -> PaperTools:
    return paper_tools(language, faces.tools(), environment([shipped("templates")]))


@lru_cache(maxsize=16)
def demo(language: str) -> PreparedScript:
    return prepared((DEMO / f"sky.{language}.md").read_text("utf-8"), language)
