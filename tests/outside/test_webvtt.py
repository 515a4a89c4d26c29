"""Caption files against their standards' own rules.

WebVTT: W3C, section "WebVTT file structure" (times, arrow, order, escapes). SubRip: as described at wiki.x266.mov, no
formal standard. TTML: W3C TTML2 time expressions; IMSC 1.1 text profile designator.
"""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree import ElementTree as Xml

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep import faces
from promptprep.model.rig import Studio
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.outputs import paper_tools
from promptprep.pipeline.scripts import time_one
from promptprep.rendering.caption_files import chapters, chapters_list, chapters_vtt, srt, ttml, vtt
from promptprep.rendering.captions import Caption, caption_limits, captions_of, count
from promptprep.rendering.environment import environment
from promptprep.store.templates import shipped

LANGUAGES = ("ar", "de", "en", "es", "fr", "hi", "ja", "ko", "pt", "ru", "sw", "zh")
STAMP = r"(?:\d{2,}):[0-5]\d:[0-5]\d\.\d{3}"
TIMING = re.compile(rf"({STAMP}) --> ({STAMP})")
TTML = {"t": "http://www.w3.org/ns/ttml"}


def captions(source: str, language: str) -> list[Caption]:
    script, tools = parse_script(source, language=language), faces.tools()
    timing = time_one(script, Studio(), tools)
    printed = paper_tools(language, tools, environment([shipped("templates")]))
    return captions_of(script, timing, printed, caption_limits(tools.language(language)))


def demo(language: str) -> list[Caption]:
    return captions((shipped("scripts_demo") / f"sky.{language}.md").read_text("utf-8"), language)


def ms(stamp: str) -> int:
    hours, minutes, seconds = stamp.split(":")
    return round((int(hours) * 3600 + int(minutes) * 60) * 1000 + float(seconds) * 1000)


def valid_vtt(text: str) -> list[tuple[int, int, str]]:
    """The cues of a WebVTT text, read by the grammar; fails on anything that it does not allow."""
    head, *blocks = text.split("\n\n")
    assert head == "WEBVTT"
    found = []
    for block in filter(None, blocks):
        lines = block.rstrip("\n").split("\n")
        if lines[0].startswith("NOTE"):
            assert "-->" not in block
            continue
        assert "-->" not in lines[0]
        timing = TIMING.fullmatch(lines[1])
        assert timing
        payload = "\n".join(lines[2:])
        assert "-->" not in payload
        assert not re.search(r"&(?!amp;|lt;|gt;)|<", payload)
        found.append((ms(timing[1]), ms(timing[2]), payload))
    assert all(start < end for start, end, _ in found)
    assert [start for start, _, _ in found] == sorted(start for start, _, _ in found)
    return found


@pytest.mark.parametrize("language", LANGUAGES)
def test_captions_of_the_demo_keep_to_standard_and_limits(language: str) -> None:
    found = demo(language)
    limits = caption_limits(faces.tools().language(language))
    assert len(valid_vtt(vtt(found, "0123456789ab"))) == len(found) > 10
    for caption in found:
        assert 1 <= len(caption.lines) <= limits.lines
        assert all(count(line) <= limits.line_characters for line in caption.lines)
    assert all(a.end_ms <= b.start_ms for a, b in pairwise(found))


def test_all_that_is_said_is_captioned_and_nothing_else() -> None:
    source = (shipped("scripts_demo") / "sky.en.md").read_text("utf-8")
    script = parse_script(source, language="en")
    said = " ".join(" ".join(p.text for s in script.segments for p in s.paragraphs).split())
    assert " ".join(line for c in demo("en") for line in c.lines) == said


@settings(max_examples=40, deadline=None)
@given(st.text(max_size=200))
def test_any_text_gives_valid_files(text: str) -> None:
    found = captions(text, "en")
    valid_vtt(vtt(found))
    Xml.fromstring(ttml(found, "en", title=text))
    assert len(re.findall(r" --> ", srt(found))) >= len(found)


def test_signs_of_the_grammar_in_the_copy() -> None:
    (caption,) = captions("Is 3 < 4 --> yes & no?", "en")
    assert "3 &lt; 4 --&gt; yes &amp; no?" in vtt([caption]).replace("\n", " ")
    root = Xml.fromstring(ttml([caption], "en"))
    assert "".join(root.find(".//t:p", TTML).itertext()).replace("\n", " ").startswith("Is 3 < 4")  # type: ignore[union-attr]


def test_subrip_counts_from_one_with_a_comma() -> None:
    text = srt([Caption(3_599_999, 3_600_001, ("One", "two")), Caption(3_600_001, 3_601_000, ("three",))])
    assert text == "1\n00:59:59,999 --> 01:00:00,001\nOne\ntwo\n\n2\n01:00:00,001 --> 01:00:01,000\nthree\n"


def test_ttml_names_its_profile_and_its_direction() -> None:
    root = Xml.fromstring(ttml(demo("ar"), "ar", "rtl", "السماء"))
    assert root.get("{http://www.w3.org/XML/1998/namespace}lang") == "ar"
    profile = root.get("{http://www.w3.org/ns/ttml#parameter}contentProfiles")
    assert profile == "http://www.w3.org/ns/ttml/profile/imsc1.1/text"
    rows = root.findall(".//t:p", TTML)
    assert all(re.fullmatch(r"\d{2,}:[0-5]\d:[0-5]\d\.\d+", row.get("begin") or "") for row in rows)
    assert all(row.get("{http://www.w3.org/ns/ttml#styling}direction") == "rtl" for row in rows)


def test_chapters_are_the_segments() -> None:
    script = parse_script((shipped("scripts_demo") / "sky.en.md").read_text("utf-8"), language="en")
    found = chapters(time_one(script, Studio(), faces.tools()))
    assert [title for _, _, title in found] == [s.title for s in script.segments]
    assert [end for _, end, _ in found[:-1]] == [start for start, _, _ in found[1:]]
    assert len(valid_vtt(chapters_vtt(found))) == 4
    assert chapters_list(found).splitlines()[0] == "0:00 Opening"
