"""Captions and chapters as files: WebVTT, SubRip text, TTML in the IMSC text profile, and a plain list.

WebVTT: W3C, times as hh:mm:ss.ttt, end after start, starts in order. SubRip has no formal standard: numbers from 1, a
comma before the milliseconds. TTML: W3C IMSC 1.1, text profile.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from xml.sax.saxutils import escape, quoteattr

from promptprep.model.timing import ScriptTiming
from promptprep.rendering.captions import Caption, Retime
from promptprep.rendering.xml_text import xml_text
from promptprep.units import clock_text


def stamp(milliseconds: int, point: str = ".") -> str:
    """A time stamp with hours and milliseconds."""
    seconds, ms = divmod(milliseconds, 1000)
    minutes, s = divmod(seconds, 60)
    hours, m = divmod(minutes, 60)
    return f"{hours:02d}:{m:02d}:{s:02d}{point}{ms:03d}"


def vtt(
    captions: Sequence[Caption], digest: str = "", origin: str = "times predicted", *, general: bool = False
) -> str:
    """WebVTT, with a note on the wording and on captions that are on too short to be read. `general`: their limits are
    not the language's own."""
    notes = [f"NOTE wording {digest}, {origin}\n"] if digest else []
    if general:
        notes.append("NOTE no limits are known for captions in this language: general ones were taken\n")
    fast = [str(n) for n, caption in enumerate(captions, 1) if caption.fast]
    if fast:
        notes.append(f"NOTE spoken faster than most people read: captions {', '.join(fast)}\n")
    blocks = [
        f"{n}\n{stamp(c.start_ms)} --> {stamp(c.end_ms)}\n" + "\n".join(_vtt_text(line) for line in c.lines) + "\n"
        for n, c in enumerate(captions, 1)
    ]
    return "WEBVTT\n\n" + "\n".join([*notes, *blocks])


def _vtt_text(text: str) -> str:
    plain = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return " ".join(plain.replace("\0", "\ufffd").split())


def srt(captions: Sequence[Caption]) -> str:
    """SubRip text."""
    return "\n".join(
        f"{n}\n{stamp(c.start_ms, ',')} --> {stamp(c.end_ms, ',')}\n"
        + "\n".join(" ".join(line.split()) for line in c.lines)
        + "\n"
        for n, c in enumerate(captions, 1)
    )


def ttml(captions: Sequence[Caption], language: str, direction: str = "ltr", title: str = "") -> str:
    """TTML, IMSC 1.1 text profile: one region low in the picture, lines from its bottom up."""
    way = ' tts:direction="rtl" tts:unicodeBidi="embed"' if direction == "rtl" else ""
    rows = "".join(
        f'<p xml:id="c{n}" begin="{stamp(c.start_ms)}" end="{stamp(c.end_ms)}" region="low" style="line"{way}>'
        + "<br/>".join(_xml(line) for line in c.lines)
        + "</p>\n"
        for n, c in enumerate(captions, 1)
    )
    return f"""<?xml version="1.0" encoding="UTF-8"?>
<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" \
xmlns:tts="http://www.w3.org/ns/ttml#styling" xmlns:ttm="http://www.w3.org/ns/ttml#metadata" \
xml:lang={quoteattr(language)} ttp:timeBase="media" ttp:cellResolution="32 15" \
ttp:contentProfiles="http://www.w3.org/ns/ttml/profile/imsc1.1/text">
<head>
<metadata><ttm:title>{_xml(title)}</ttm:title></metadata>
<styling><style xml:id="line" tts:fontFamily="proportionalSansSerif" tts:fontSize="100%" tts:lineHeight="125%" \
tts:textAlign="center" tts:color="white" tts:backgroundColor="black"/></styling>
<layout><region xml:id="low" tts:origin="10% 75%" tts:extent="80% 20%" tts:displayAlign="after" \
tts:showBackground="whenActive" tts:overflow="visible"/></layout>
</head>
<body><div>
{rows}</div></body>
</tt>
"""


def _xml(text: str) -> str:
    return escape(xml_text(" ".join(text.split())))


def chapters(timing: ScriptTiming, retime: Retime | None = None) -> list[tuple[int, int, str]]:
    """(start, end, title) of each segment that has a title and any length, in milliseconds."""
    moved = retime or (lambda seconds: seconds)
    edges = [round(moved(s.start_s) * 1000) for s in timing.segments] + [round(moved(timing.timing.mean_s) * 1000)]
    return [
        (start, end, " ".join(segment.title.split()))
        for segment, (start, end) in zip(timing.segments, pairwise(edges), strict=True)
        if segment.title.strip() and end > start
    ]


def chapters_vtt(found: Sequence[tuple[int, int, str]]) -> str:
    """Chapters as WebVTT (its metadata kind "chapters": one title a cue)."""
    blocks = [f"{n}\n{stamp(a)} --> {stamp(b)}\n{_vtt_text(title)}\n" for n, (a, b, title) in enumerate(found, 1)]
    return "WEBVTT\n\n" + "\n".join(blocks)


def chapters_list(found: Sequence[tuple[int, int, str]]) -> str:
    """A line a chapter: when it begins, and its title."""
    return "".join(f"{clock_text(start // 1000)} {title}\n" for start, _, title in found)
