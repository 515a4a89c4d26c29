"""Inline tokens with their places: runs of copy, cues and remarks, each at its characters of the source."""

from __future__ import annotations

import difflib
import unicodedata
from bisect import bisect_right
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from markdown_it.token import Token

from promptprep.model.script import CUE_KINDS, Cue, Fault, InlineCue, Remark, Run
from promptprep.parsing.cues import read_cue
from promptprep.spans import Span

_KINDS = " ".join(CUE_KINDS)
_TIMED = {"pause": "[pause 2]", "clip": "[clip 0:10 Moonrise]", "live": "[live 1:15 interview]"}
_CLOSE = 0.75  # a slip of the pen; below it a word must begin alike ("grafik", but not "slide" for "live")


@dataclass(slots=True)
class SourcePlaces:
    """Maps offsets in an inline token's content to offsets in the source, line by line."""

    content_starts: list[int]
    source_starts: list[int]

    def at(self, offset: int) -> int:
        row = bisect_right(self.content_starts, offset) - 1
        return self.source_starts[row] + offset - self.content_starts[row]

    def of(self, content: str) -> Span:
        """The place of the whole content, which is not empty, or of its first character."""
        return Span(self.at(0), self.at(max(len(content) - 1, 0)) + 1)


@dataclass(slots=True)
class Inline:
    """What one inline token holds, read in order. `length` and `last` are those of the text of its runs so far."""

    runs: list[Run] = field(default_factory=list)
    cues: list[InlineCue] = field(default_factory=list)
    remarks: list[Remark] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    length: int = 0
    last: str = ""

    def add(self, text: str, span: Span, *, stress: bool = False, say: str | None = None) -> None:
        """Append copy; a space after a space (or at the very start) is dropped."""
        if text.startswith(" ") and self.last in ("", " ", "\n") and len(text) == len(span):
            kept = text.lstrip(" ")
            span = Span(span.end - len(kept), span.end)
            text = kept
        if not text:
            return
        self.runs.append(Run(text, span, stress, say))
        self.length += len(text)
        self.last = text[-1]


def read_inline(token: Token, places: SourcePlaces, *, keep_lines: bool = False) -> Inline:
    """Reads the children of an inline token. With `keep_lines` a line end in the source is one in the text."""
    return _Reader(token.content, places, "\n" if keep_lines else " ").read(token.children or [])


class _Reader:
    def __init__(self, content: str, places: SourcePlaces, soft: str) -> None:
        self.content = content
        self.soft = soft
        self.places = places
        self.out = Inline()
        self.at = 0
        self.depth = 0

    def read(self, children: Sequence[Token]) -> Inline:
        for child in children:
            reader = _READERS.get(child.type)
            if reader is not None:
                reader(self, child)
            else:
                self.at += len(child.markup)
        self._trim()
        return self.out

    def _span(self, start: int, end: int) -> Span:
        return Span(self.places.at(start), self.places.at(end - 1) + 1 if end > start else self.places.at(start))

    def _take(self, length: int) -> Span:
        span = self._span(self.at, self.at + length)
        self.at += length
        return span

    def _text(self, token: Token) -> None:
        if not token.content:
            return
        if not self.content.startswith(token.content, self.at):
            found = self.content.find(token.content, self.at)
            self.at = found if found >= 0 else self.at
        self._open_remark(token.content)
        self.out.add(token.content, self._take(len(token.content)), stress=self.depth > 0)

    def _open_remark(self, text: str) -> None:
        """A remark that is opened and never closed is copy: what was to be hidden would be read out."""
        found = text.find("<!--")
        if found >= 0 and not any(fault.name == "unclosed-remark" for fault in self.out.faults[-1:]):
            place = self._span(self.at + found, self.at + found + 4)
            message = "this remark is never closed in its paragraph, and would be read out"
            self.out.faults.append(Fault("unclosed-remark", place, message, "close it with -->"))

    def _text_special(self, token: Token) -> None:
        self.out.add(token.content, self._take(len(token.markup)), stress=self.depth > 0)

    def _em_open(self, token: Token) -> None:
        self.depth += 1
        self.at += len(token.markup)

    def _em_close(self, token: Token) -> None:
        self.depth -= 1
        self.at += len(token.markup)

    def _link_open(self, token: Token) -> None:
        self.at += 1

    def _link_close(self, token: Token) -> None:
        self.at = token.meta["end"]

    def _say(self, token: Token) -> None:
        shown, said = token.meta["groups"]
        self.at = token.meta["end"]
        start = token.meta["start"] + 1
        self.out.add(shown, self._span(start, start + len(shown)), stress=self.depth > 0, say=said.strip() or None)

    def _cue(self, token: Token) -> None:
        self.at = token.meta["end"]
        span = self._span(token.meta["start"], token.meta["end"])
        kind, rest = token.meta["groups"]
        cue = read_cue(kind, rest, span)
        self.out.cues.append(InlineCue(self.out.length, cue))
        self.out.faults.extend(cue_faults(cue, self._inside_word(token.meta["start"], self.at)))

    def _inside_word(self, start: int, end: int) -> bool:
        before, after = self.content[start - 1 : start], self.content[end : end + 1]
        return before.isalnum() and after.isalnum() and not (is_unspaced(before) or is_unspaced(after))

    def _remark(self, token: Token) -> None:
        self.at = token.meta["end"]
        span = self._span(token.meta["start"], token.meta["end"])
        self.out.remarks.append(Remark(token.meta["groups"][0].strip(), span))

    def _softbreak(self, token: Token) -> None:
        self._line_end(self.soft)

    def _hardbreak(self, token: Token) -> None:
        self._line_end("\n")

    def _line_end(self, text: str) -> None:
        start = self.at
        self.at = self.content.index("\n", start) + 1
        while self.content[self.at : self.at + 1] in (" ", "\t"):
            self.at += 1
        if text == " " and is_unspaced(self.out.last) and is_unspaced(self.content[self.at : self.at + 1]):
            return
        if self.out.last in ("", " ", "\n"):
            return
        self.out.add(text, Span(self.places.at(start), max(self.places.at(self.at), self.places.at(start) + 1)))

    def _trim(self) -> None:
        """Drops white space at the end of the copy."""
        while self.out.runs and not self.out.runs[-1].text.rstrip():
            self.out.length -= len(self.out.runs.pop().text)
        if self.out.runs:
            run = self.out.runs[-1]
            kept = run.text.rstrip()
            if kept != run.text and len(run.text) == len(run.span):
                self.out.length -= len(run.text) - len(kept)
                self.out.runs[-1] = Run(kept, Span(run.span.start, run.span.start + len(kept)), run.stress, run.say)
        self.out.cues = [InlineCue(min(c.offset, self.out.length), c.cue) for c in self.out.cues]


_READERS: Mapping[str, Callable[[_Reader, Token], None]] = {
    "text": _Reader._text,
    "text_special": _Reader._text_special,
    "em_open": _Reader._em_open,
    "em_close": _Reader._em_close,
    "strong_open": _Reader._em_open,
    "strong_close": _Reader._em_close,
    "link_open": _Reader._link_open,
    "link_close": _Reader._link_close,
    "say": _Reader._say,
    "cue": _Reader._cue,
    "remark": _Reader._remark,
    "softbreak": _Reader._softbreak,
    "hardbreak": _Reader._hardbreak,
}


def cue_faults(cue: Cue, inside_word: bool = False) -> list[Fault]:
    """What is wrong with a cue in itself."""
    faults = []
    if not cue.known:
        hint = f"{_near_kind(cue.kind)}use one of the cue kinds ({_KINDS}), or round brackets if it is meant to be read"
        faults.append(Fault("unknown-cue", cue.span, f"no cue is called {cue.kind!r}: it is not read out", hint))
    elif cue.kind in ("pause", "clip", "live") and cue.duration_s is None:
        hint = f"write how long it takes behind the kind, such as {_TIMED[cue.kind]}"
        faults.append(Fault("cue-without-time", cue.span, f"this {cue.kind} has no time, so it counts as none", hint))
    if inside_word:
        faults.append(
            Fault("cue-inside-word", cue.span, "this cue stands inside a word", "move it before or after the word")
        )
    return faults


def _near_kind(kind: str) -> str:
    if len(kind) > 2 * max(map(len, CUE_KINDS)):
        return ""
    alike = [known for known in CUE_KINDS if known[0] == kind[0]]
    near = difflib.get_close_matches(kind, CUE_KINDS, 1, _CLOSE) or difflib.get_close_matches(kind, alike, 1)
    return f"did you mean {near[0]!r}? " if near else ""


def is_unspaced(character: str) -> bool:
    """Whether a character belongs to a script written without spaces (Han, kana and their marks)."""
    return bool(character) and unicodedata.east_asian_width(character) in "WF" and not "가" <= character <= "힣"
