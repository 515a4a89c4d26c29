"""The cues of one script as the crew needs them: with the words before and after, and the time from its start."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.model.script import Paragraph, Script
from promptprep.model.session import ItemCue, NumberedCue

WORDS = 5  # "first five words in, last five out" (a journalism textbook's rule for recorded inserts)


def cue_sheet(script: Script, cues: tuple[NumberedCue, ...]) -> tuple[ItemCue, ...]:
    """All numbered cues of a script in order. Linear in the script's length."""
    texts = [
        (s, b, block.text)
        for s, segment in enumerate(script.segments)
        for b, block in enumerate(segment.blocks)
        if isinstance(block, Paragraph) and block.text.strip()
    ]
    found: list[ItemCue] = []
    said = None
    for cue, (before, after) in zip(cues, _around(cues, texts), strict=True):
        found.append(
            ItemCue(
                label=cue.label,
                at_ms=round(cue.at_s * 1000),
                segment=script.segments[cue.segment].title,
                words=_last(before),
                first_words=_first(after),
                actions=cue.actions,
                after=_running(found[-1]) if found and said == (before, after) else "",
            )
        )
        said = (before, after)
    return tuple(found)


def _running(cue: ItemCue) -> str:
    """The last clip or live part of a cue, or what ran before it, if nothing has been said since."""
    timed = [a for a in cue.actions if a.kind in ("clip", "live") and a.duration_s]
    return f"{timed[-1].kind} {timed[-1].text}".strip() if timed else cue.after


def _around(cues: tuple[NumberedCue, ...], texts: list[tuple[int, int, str]]) -> Iterator[tuple[str, str]]:
    """For each cue the stretch of copy before it and the one after it."""
    i = 0
    for cue in cues:
        while i < len(texts) and texts[i][:2] < (cue.segment, cue.block):
            i += 1
        before, after = (texts[i - 1][2] if i else ""), (texts[i][2] if i < len(texts) else "")
        if i < len(texts) and texts[i][:2] == (cue.segment, cue.block) and cue.offset is not None:
            said, left = after[: cue.offset], after[cue.offset :]
            following = texts[i + 1][2] if i + 1 < len(texts) else ""
            yield (said if said.strip() else before), (left if left.strip() else following)
        else:
            yield before, after


def _last(text: str) -> str:
    words = text[-400:].split()
    return " ".join(words[-WORDS:]) if len(words) > 1 else text.strip()[-3 * WORDS :]


def _first(text: str) -> str:
    words = text.strip()[:400].split()
    return " ".join(words[:WORDS]) if len(words) > 1 else text.strip()[: 3 * WORDS]
