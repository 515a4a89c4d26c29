"""Remembers the state of the source that a version was made from, and names what has changed since.

The mark is a table `made_from` in the version's front matter: for each segment of the source a line of short digests,
one a sentence. What the digests stand for is kept once a show, in a file beside the source, so that the changed words
can be shown; without that file the changed sentences are.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from promptprep.model.script import Script, Segment
from promptprep.model.versions import WordChange
from promptprep.versions.words import word_changes

DIGITS = 8  # hex digits a sentence: two sentences of one segment collide once in some 4 billion pairs
Sentences = Callable[[str], Sequence[int]]
_TABLE = re.compile(r"^\[made_from\][^\n]*\n(?:(?!\[|\+\+\+).*\n)*", re.MULTILINE)
_CUE_END = re.compile(r" +(\d+\.\d+)?\]$")
_BARE = re.compile(r"[A-Za-z0-9_-]+")


@dataclass(frozen=True, slots=True)
class Stale:
    """A segment whose source has changed, and how; `unknown` sentences are gone whose words were not kept."""

    segment: str
    changes: tuple[WordChange, ...]
    unknown: int = 0
    new: bool = False


def sentence_texts(segment: Segment, sentences: Sentences) -> list[str]:
    """The sentences of a segment's copy, blanks evened out, and its cues."""
    found: list[str] = []
    for paragraph in segment.paragraphs:
        at = 0
        for end in sentences(paragraph.text):
            text = " ".join(paragraph.text[at:end].split())
            at = end
            if text:
                found.append(text)
    found += [f"[{cue.kind} {cue.text} {cue.duration_s or ''}]" for cue in segment.cues]
    return found


def readable(text: str) -> str:
    """A sentence or a cue as people write it."""
    return _CUE_END.sub(lambda m: f" {float(m[1]):g} s]" if m[1] else "]", text) if text.startswith("[") else text


def digest(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:DIGITS]


def state_of(script: Script, sentences: Sentences) -> dict[str, str]:
    """Segment id -> the digests of its sentences, a blank between."""
    return {s.id: " ".join(map(digest, sentence_texts(s, sentences))) for s in script.segments}


def sentences_of(script: Script, sentences: Sentences) -> dict[str, str]:
    """Digest -> sentence: what the digests of a mark stand for."""
    return {digest(text): readable(text) for s in script.segments for text in sentence_texts(s, sentences)}


def stale_segments(
    marked: object, source: Script, sentences: Sentences, kept: Mapping[str, str] | None = None
) -> list[Stale]:
    """What has changed in the source since a version was marked; nothing where it never was.

    `kept` holds sentences of the marked state by their digests; without one, only the new sentence is known.
    """
    if not isinstance(marked, dict) or not marked:
        return []
    known = kept or {}
    found = []
    for segment in source.segments:
        before = marked.get(segment.id)
        texts = sentence_texts(segment, sentences)
        if not isinstance(before, str):
            found.append(Stale(segment.id, tuple(WordChange("", "", readable(t), "") for t in texts), new=True))
            continue
        old, now = before.split(), [digest(t) for t in texts]
        if old != now:
            found.append(_stale(segment.id, old, now, texts, known))
    left = {s.id for s in source.segments}
    return found + [_stale(str(name), str(marked[name]).split(), [], [], known) for name in marked if name not in left]


def _stale(name: str, old: Sequence[str], now: Sequence[str], texts: Sequence[str], known: Mapping[str, str]) -> Stale:
    changes: list[WordChange] = []
    unknown = 0
    for tag, i, j, k, stop in SequenceMatcher(None, old, now, autojunk=False).get_opcodes():
        if tag == "equal":
            continue
        gone = [known.get(one) for one in old[i:j]]
        unknown += gone.count(None)
        changes += _changes(
            [text for text in gone if text is not None], list(map(readable, texts[k:stop])), None in gone
        )
    return Stale(name, tuple(changes), unknown)


def _changes(gone: Sequence[str], new: Sequence[str], unsure: bool) -> list[WordChange]:
    """Changed words, sentence by sentence where as many came as went; what was only added or taken out, whole."""
    if unsure or not gone or not new:
        return [WordChange("", text, "", "") for text in gone] + [WordChange("", "", text, "") for text in new]
    if len(gone) != len(new):
        return word_changes(" ".join(gone), " ".join(new))
    return [change for a, b in zip(gone, new, strict=True) for change in word_changes(a, b)]


def with_mark(source_text: str, state: dict[str, str]) -> str:
    """A version's text with its mark in the front matter; a version without front matter gets one."""
    end = "\r\n" if "\r\n" in source_text[:200] else "\n"
    lines = [f"{_key(name)} = {_quoted(value)}" for name, value in state.items()]
    table = "[made_from]\n" + "\n".join(lines) + "\n"
    bom = "\ufeff" if source_text.startswith("\ufeff") else ""
    body = source_text.removeprefix("\ufeff").replace("\r\n", "\n")
    if not body.startswith("+++"):
        made = f"+++\n{table}+++\n\n{body}"
    else:
        stop = re.compile(r"^\+\+\+[ \t]*$", re.MULTILINE).search(body, 3)
        close = stop.start() if stop else len(body)
        head = _TABLE.sub("", body[:close])
        made = f"{head.rstrip()}\n\n{table}{body[close:]}" if head.strip() != "+++" else f"+++\n{table}{body[close:]}"
    return bom + made.replace("\n", end)


def _key(name: str) -> str:
    return name if _BARE.fullmatch(name) else _quoted(name)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
