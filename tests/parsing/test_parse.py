"""The parser: segments, cues, places, and that nothing of the source is lost."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from promptprep.errors import UnreadableInput
from promptprep.model.script import CueLine, Note, Paragraph, Remark, Script
from promptprep.parsing.parse import parse_script

WHOLE = """+++
title = "The sky this month"
language = "en"
reader = "ines"
slot = "4:00"
+++

# Opening {slot=0:20 #hello}

Good evening. I'm under [Betelgeuse]{say="BEE-tel-jooz"}, and it is *not* [pause 2] about to explode.

[clip 0:25 Moonrise over the ridge]
[graphic: name strap, Dr Amina Osei]

# What the probe saw

> Ask about the dust.

<!-- check the date -->
- first
- second
"""


def joined(script: Script) -> str:
    return "".join(part.span.of(script.source) for part in script.parts)


def test_the_whole_format_is_read() -> None:
    script = parse_script(WHOLE, file="sky.en.md")
    opening, probe = script.segments
    assert (script.title, script.language, script.reader, script.slot_s) == ("The sky this month", "en", "ines", 240)
    assert (opening.id, opening.title, opening.slot_s) == ("hello", "Opening", 20)
    copy, clip, graphic = opening.blocks
    assert isinstance(copy, Paragraph)
    assert copy.text == "Good evening. I'm under Betelgeuse, and it is not about to explode."
    assert [(r.text, r.say) for r in copy.runs if r.say] == [("Betelgeuse", "BEE-tel-jooz")]
    assert [r.text for r in copy.runs if r.stress] == ["not"]
    assert copy.text[: copy.cues[0].offset].endswith("it is not ")
    assert copy.cues[0].cue.duration_s == 2
    assert isinstance(clip, CueLine)
    assert (clip.cue.kind, clip.cue.duration_s, clip.cue.text) == ("clip", 25, "Moonrise over the ridge")
    assert isinstance(graphic, CueLine)
    assert (graphic.cue.kind, graphic.cue.text) == ("graphic", "name strap, Dr Amina Osei")
    assert [type(b) for b in probe.blocks] == [Note, Remark, Paragraph, Paragraph]
    assert opening.fixed_s == 27


def test_every_visible_character_knows_its_place() -> None:
    script = parse_script(WHOLE)
    copy = script.segments[0].paragraphs[0]
    for word in ("Good", "Betelgeuse", "not", "explode"):
        at = copy.text.index(word)
        assert copy.source_offset(at) == WHOLE.index(word, WHOLE.index("Good") if word != "not" else 0)


def test_plain_pasted_text_is_a_script() -> None:
    script = parse_script("Good evening.\n\n    Indented copy is copy.\n\n2026. What a year.\n\n```\nso is this\n```\n")
    texts = [p.text for p in script.segments[0].paragraphs]
    assert texts == ["Good evening.", "Indented copy is copy.", "2026. What a year.", "``` so is this ```"]


def test_html_is_copy_and_not_markup() -> None:
    (segment,) = parse_script("<script>alert(1)</script> and <b>this</b>\n").segments
    assert segment.paragraphs[0].text == "<script>alert(1)</script> and <b>this</b>"


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("[zoom in] Hello.", "unknown-cue"),
        ("[clip Moonrise]", "cue-without-time"),
        ("Won[pause 1]derful.", "cue-inside-word"),
        ("# A {#x}\n\na\n\n# B {#x}\n\nb", "duplicate-id"),
        ("# A {colour=red}\n\na", "unknown-attribute"),
    ],
)
def test_what_the_parser_notices(text: str, name: str) -> None:
    assert [fault.name for fault in parse_script(text).faults] == [name]


def test_an_unknown_cue_takes_no_time_and_is_not_copy() -> None:
    script = parse_script("[zoom 0:30] Hello.")
    assert script.fixed_s == 0
    assert script.segments[0].paragraphs[0].text == "Hello."


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("+++\ntitle = \n+++\nx", "front-matter-broken", 2),
        ("+++\ntitle = 'a'\nx", "front-matter-open", 1),
        ("+++\ntitle = 'a'\nsolt = '1:00'\n+++\nx", "unknown-key", 3),
        ("+++\nslot = 'long'\n+++\nx", "slot-no-time", 2),
        ("+++\nreader = 3\n+++\nx", "wrong-value", 2),
        ("a\n\n# B {slot=soon}\n", "slot-no-time", 3),
    ],
)
def test_bad_input_has_a_place_and_a_hint(text: str, code: str, line: int) -> None:
    with pytest.raises(UnreadableInput) as caught:
        parse_script(text, file="bad.md")
    fault = caught.value
    assert (fault.code, fault.file, fault.line) == (code, "bad.md", line)
    assert fault.hint


MARKUP = ["# Head", "{slot=0:10}", "[pause 2]", "[clip 0:05 x]", '[a]{say="b"}', "*", "**", "> ", "- ", "1. ", "&amp;"]
MARKUP += ["\\*", "[x](y)", "---", "===", "`", "+++\n", "<!--", "-->", "  ", "\t", "\n", "\r\n", "\r", "\n\n"]
PIECES = st.sampled_from([*MARKUP, "Good evening.", "月が", "مساء"])


@settings(max_examples=300, deadline=None)
@example("\x0c\x00")
@given(st.one_of(st.text(max_size=200), st.lists(PIECES, max_size=25).map("".join)))
def test_parts_join_to_the_source(text: str) -> None:
    try:
        script = parse_script(text)
    except UnreadableInput:
        return
    assert joined(script) == text
    for segment in script.segments:
        for paragraph in segment.paragraphs:
            assert paragraph.text == paragraph.text.strip()
            at = 0
            for run in paragraph.runs:
                assert 0 <= run.span.start <= run.span.end <= len(text)
                if len(run.text) == len(run.span) and run.text not in (" ", "\n"):
                    assert run.span.of(text).replace("\0", "\ufffd") == run.text
                at += len(run.text)
            assert all(0 <= inline.offset <= at for inline in paragraph.cues)


def test_each_line_of_a_note_stays_a_line() -> None:
    (note,) = parse_script("> Ask about the *dust*.\n> Ask about the landing.").segments[0].blocks
    assert isinstance(note, Note)
    assert note.text == "Ask about the dust.\nAsk about the landing."


def test_windows_line_ends_and_a_byte_order_mark_are_kept() -> None:
    text = '\ufeff+++\r\ntitle = "A"\r\n+++\r\n# One\r\n\r\nLine one\r\nline two.\r\n'
    script = parse_script(text)
    assert joined(script) == text
    assert script.segments[0].paragraphs[0].text == "Line one line two."
