"""Block tokens become segments and blocks, each at its place in the source."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from markdown_it.token import Token

from promptprep.model.script import Block, CueLine, Fault, InlineCue, Note, Paragraph, Remark, Run, Segment
from promptprep.parsing.front import read_slot
from promptprep.parsing.inline import Inline, SourcePlaces, read_inline
from promptprep.spans import LineIndex, Span

_ATTRIBUTES = re.compile(r"[ \t]*\{([^{}\n]*)\}[ \t]*$")
_ATTRIBUTE = re.compile(
    r'#(?P<id>[^\s"{}]+)|(?P<key>[\w-]+)\s*=\s*(?:"(?P<quoted>[^"]*)"|(?P<bare>[^\s"]+))|(?P<other>\S+)'
)
_ITEM_NUMBER = re.compile(r"\d{1,9}[.)]")
_HEAD_MARK = re.compile(r"[ \t>]*#{1,6}[ \t]*")
_ENDS = tuple(".!?…:;。！？؟।।")


@dataclass(slots=True)
class Draft:
    """A segment being read."""

    title: str = ""
    id: str | None = None
    slot_s: float | None = None
    heading: Span | None = None
    level: int = 1
    blocks: list[Block] = field(default_factory=list)


class BlockReader:
    """Reads the tokens of one script's copy. `source` is the whole text, `begin` where the copy starts in it."""

    def __init__(self, source: str, begin: int, file: str | None) -> None:
        self.source = source
        self.file = file
        self.index = LineIndex(source)
        copy = source[begin:]
        self.lines = [begin]
        self.lines += [begin + m.end() for m in re.finditer(r"\r\n|\r|\n", copy)]
        self.drafts = [Draft()]
        self.faults: list[Fault] = []
        self.quote_end: int | None = None
        self.item: list[str] = []
        self.marker: Run | None = None

    def read(self, tokens: Sequence[Token]) -> None:
        opener: Token | None = None
        for token in tokens:
            if token.type == "inline" and opener is not None:
                self._inline(opener, token)
            elif token.type == "blockquote_open":
                self._quote(token)
            elif token.type == "remark_block":
                self._remark_block(token)
            elif token.type == "list_item_open":
                self._item_open(token)
            elif token.type == "list_item_close":
                self.item.pop()
            opener = token

    # -- blocks ---------------------------------------------------------------------------------------------

    def _inline(self, opener: Token, token: Token) -> None:
        first = (token.map or [0])[0]
        if self.quote_end is not None and first >= self.quote_end:
            self.quote_end = None
        places = self._places(token, first, heading=opener.type == "heading_open" and opener.markup.startswith("#"))
        if opener.type == "heading_open" and self.quote_end is None:
            self._heading(opener, token, places)
            return
        if self.quote_end is not None:
            self._note(read_inline(token, places, keep_lines=True), token, places)
            return
        read = read_inline(token, places)
        self.faults.extend(read.faults)
        self.drafts[-1].blocks.extend(self._blocks(read))

    def _quote(self, token: Token) -> None:
        if self.quote_end is None or (token.map and token.map[0] >= self.quote_end):
            self.quote_end = token.map[1] if token.map else None

    def _note(self, read: Inline, token: Token, places: SourcePlaces) -> None:
        text = token.content if read.cues else "".join(run.text for run in read.runs)
        if text:
            self.drafts[-1].blocks.append(Note(text, places.of(token.content)))

    def _remark_block(self, token: Token) -> None:
        first = (token.map or [0])[0]
        start = self.source.index("<!--", self._line(first))
        end = self.source.index("-->", start) + 3
        self.drafts[-1].blocks.append(Remark(self.source[start + 4 : end - 3].strip(), Span(start, end)))

    def _item_open(self, token: Token) -> None:
        """An ordered item's number was seen and said: it stays in the copy. A bullet does not."""
        self.item.append(token.info)
        self.marker = None
        if token.info and token.map:
            found = _ITEM_NUMBER.search(self.source, self._line(token.map[0]))
            if found:
                self.marker = Run(found[0] + " ", Span(found.start(), found.end()))

    def _heading(self, opener: Token, token: Token, places: SourcePlaces) -> None:
        attributes = _ATTRIBUTES.search(token.content)
        title_end = attributes.start() if attributes else len(token.content)
        begin = self._line((opener.map or [0])[0])
        span = places.of(token.content) if token.content else Span(begin, begin + len(opener.markup))
        draft = Draft(heading=span, level=int(opener.tag[1:]))
        read = read_inline(token, places)
        if attributes:
            self._attributes(attributes[1], places.at(attributes.start(1)), draft)
        draft.title = _plain_title(read, places.at(title_end) if title_end < len(token.content) else span.end)
        draft.blocks.extend(CueLine(inline.cue, inline.cue.span) for inline in read.cues)
        self.faults.extend(read.faults)
        self.drafts.append(draft)

    def _attributes(self, text: str, begin: int, draft: Draft) -> None:
        for found in _ATTRIBUTE.finditer(text):
            place = Span(begin + found.start(), begin + found.end())
            value = found["quoted"] if found["quoted"] is not None else found["bare"]
            if found["id"]:
                draft.id = found["id"]
            elif found["key"] == "slot":
                draft.slot_s = read_slot(value, self.file, *self.index.place(place.start))
            else:
                hint = "a heading takes {slot=m:ss} and {#id}"
                self.faults.append(Fault("unknown-attribute", place, f"a heading has no attribute {found[0]!r}", hint))

    # -- copy -----------------------------------------------------------------------------------------------

    def _blocks(self, read: Inline) -> Iterator[Block]:
        """A paragraph, split at cues that stand on a line of their own after a finished sentence."""
        role = "item" if self.item else "body"
        runs = read.runs
        if self.marker is not None:
            runs = [self.marker, *runs]
            read.cues = [InlineCue(c.offset + len(self.marker.text), c.cue) for c in read.cues]
            self.marker = None
        yield from read.remarks
        pending: list[InlineCue] = []
        start = 0
        text = "".join(run.text for run in runs)
        for inline in read.cues:
            before = text[start : inline.offset].rstrip()
            if self._alone(inline.cue.span) and (not before or before.endswith(_ENDS)):
                if before:
                    yield _paragraph(runs, start, inline.offset, pending, role)
                    pending = []
                yield CueLine(inline.cue, inline.cue.span)
                start = inline.offset
            else:
                pending.append(inline)
        if text[start:].strip() or pending:
            yield _paragraph(runs, start, len(text), pending, role)

    def _alone(self, span: Span) -> bool:
        """Whether nothing but marks of lists and quotations stands beside a cue on its line."""
        begin, end = span.start - self.index.place(span.start)[1] + 1, span.end
        while end < len(self.source) and self.source[end] not in "\r\n":
            end += 1
        outside = self.source[begin : span.start] + self.source[span.end : end]
        return not outside.strip(" \t>-+*")

    # -- places ---------------------------------------------------------------------------------------------

    def _line(self, row: int) -> int:
        return self.lines[min(row, len(self.lines) - 1)]

    def _places(self, token: Token, first: int, *, heading: bool) -> SourcePlaces:
        content_starts, source_starts, at = [], [], 0
        for row, part in enumerate(token.content.split("\n")):
            begin = self._line(first + row)
            end = self.lines[first + row + 1] if first + row + 1 < len(self.lines) else len(self.source)
            line = self.source[begin:end].rstrip("\r\n").replace("\0", "\ufffd")  # as CommonMark shows NUL
            content_starts.append(at)
            source_starts.append(begin + _inset(line, part, heading))
            at += len(part) + 1
        return SourcePlaces(content_starts, source_starts)


def _inset(line: str, part: str, heading: bool) -> int:
    """How far into its source line a line of inline content begins."""
    if heading:
        mark = _HEAD_MARK.match(line)
        return max(line.find(part, mark.end() if mark else 0), 0)
    lead = len(part) - len(part.lstrip())
    core = part.strip()
    shown = line.rstrip()
    if shown.endswith(core):
        return len(shown) - len(core) - lead
    return max(line.find(core), 0) - lead


def _paragraph(runs: Sequence[Run], start: int, end: int, cues: Sequence[InlineCue], role: str) -> Paragraph:
    """The copy between two offsets, without white space at its ends."""
    text = "".join(run.text for run in runs)[start:end]
    start, end = start + len(text) - len(text.lstrip()), start + len(text.rstrip())
    kept: list[Run] = []
    at = 0
    for run in runs:
        kept.extend(_cut(run, start - at, end - at))
        at += len(run.text)
    moved = tuple(InlineCue(min(max(c.offset - start, 0), max(end - start, 0)), c.cue) for c in cues)
    places = [run.span for run in kept] + [c.cue.span for c in moved]
    span = Span(min(p.start for p in places), max(p.end for p in places))
    return Paragraph(tuple(kept), span, moved, "item" if role == "item" else "body")


def _cut(run: Run, start: int, end: int) -> Iterator[Run]:
    low, high = max(start, 0), min(end, len(run.text))
    if low >= high:
        return
    if (low, high) == (0, len(run.text)):
        yield run
    elif len(run.text) == len(run.span):
        yield Run(run.text[low:high], Span(run.span.start + low, run.span.start + high), run.stress, run.say)
    else:
        yield Run(run.text[low:high], run.span, run.stress, run.say)


def _plain_title(read: Inline, end: int) -> str:
    """The heading's copy before source offset `end`."""
    shown = (
        r.text[: end - r.span.start] if len(r.text) == len(r.span) else r.text for r in read.runs if r.span.start < end
    )
    return "".join(shown).strip()


def segments(drafts: Sequence[Draft], source: str, begin: int) -> tuple[list[Segment], list[Fault]]:
    """Finished segments; the one before the first heading stays only if it holds something."""
    kept = [d for d in drafts if d.heading is not None or any(not isinstance(b, Remark) for b in d.blocks)]
    faults: list[Fault] = []
    taken: set[str] = set()
    done = []
    for number, draft in enumerate(kept):
        start = draft.heading.start if draft.heading and number else begin
        after = kept[number + 1].heading if number + 1 < len(kept) else None
        span = Span(source.rfind("\n", 0, start) + 1 if number else begin, after.start if after else len(source))
        name = draft.id or _slug(draft.title) or ("start" if not draft.title else f"segment-{number + 1}")
        if name in taken and draft.id and draft.heading:
            hint = "give each segment its own {#id}"
            faults.append(Fault("duplicate-id", draft.heading, f"two segments have the id {name!r}", hint))
        unique, count = name, 1
        while unique in taken:
            count += 1
            unique = f"{name}-{count}"
        taken.add(unique)
        done.append(Segment(unique, draft.title, tuple(draft.blocks), span, draft.slot_s, draft.heading, draft.level))
    return done, faults


def _slug(title: str) -> str:
    return "-".join(re.findall(r"\w+", title.lower()))[:60]
