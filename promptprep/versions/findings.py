"""What differs between a version and its source, as findings at a place in the version's file."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from promptprep.model.finding import Level
from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.script import Cue, Paragraph, Script, Segment
from promptprep.model.versions import Bead, Figure, Name, SegmentPair, VersionFinding
from promptprep.spans import Span
from promptprep.versions.figures import figure_reader, figures
from promptprep.versions.listening import Listener, listener_of
from promptprep.versions.match import Mismatch, mismatches
from promptprep.versions.names import LATIN, is_there, names_of, people_of

UNFINISHED = re.compile(r"\b(?:TODO|TBD|FIXME|XXX+|TKTK)\b|\?\?\?|\bTK\b")
SAME_WORDS = 0.6  # share of a sentence's words that stand in the source too: it was not translated
FEWEST_WORDS = 4
MOST_NAMES = 60  # of a segment that are looked for; no script that people read has more
_WORD = re.compile(r"[^\W\d_]{2,}")
_SENTENCE = re.compile(r"[^.!?…。！？।؟\n]+[.!?…。！？।؟]*")


@dataclass(frozen=True, eq=False)
class Side:
    """One of the two scripts with its language's data."""

    script: Script
    data: LanguageData
    engines: Engines

    def figures(self, paragraph: Paragraph) -> list[Figure]:
        """The values in a paragraph, in order."""
        return figures(paragraph.text, figure_reader(self.data, self.engines.speller))

    @property
    def listener(self) -> Listener:
        return listener_of(self.data, self.engines)


@dataclass(frozen=True, slots=True)
class _At:
    """A figure with the paragraph it stands in (an index into its segment's)."""

    figure: Figure
    paragraph: int


def pair_findings(
    source: Side, target: Side, pairs: Sequence[SegmentPair], beads: Mapping[int, Sequence[Bead]]
) -> list[VersionFinding]:
    """Everything that differs, in the order of the segments. `beads` pairs paragraphs, by the source segment."""
    found: list[VersionFinding] = []
    for pair in pairs:
        if pair.source is None or pair.target is None:
            found.append(_alone(source, target, pair))
            continue
        one = SegmentPairing(
            source, target, source.script.segments[pair.source], target.script.segments[pair.target],
            beads.get(pair.source, ()),
        )  # fmt: skip
        found += one.findings()
    return found


def _alone(source: Side, target: Side, pair: SegmentPair) -> VersionFinding:
    if pair.source is not None:
        lost = source.script.segments[pair.source]
        end = len(target.script.source)
        return VersionFinding(
            "segment-missing", "fix", target.data.tag, lost.id, end, end,
            f"the segment {lost.title or lost.id!r} of the source has no partner here",
            "translate it, or give its heading the same {#id} in both versions", about=lost.title or lost.id,
        )  # fmt: skip
    extra = target.script.segments[pair.target or 0]
    span = extra.heading_span or extra.span
    return VersionFinding(
        "segment-added", "fix", target.data.tag, extra.id, span.start, span.end,
        f"the segment {extra.title or extra.id!r} is not in the source",
        "take it out, or give its heading the same {#id} in both versions",
    )  # fmt: skip


@dataclass(frozen=True, eq=False)
class SegmentPairing:
    """Two segments that should say the same."""

    source: Side
    target: Side
    a: Segment
    b: Segment
    beads: Sequence[Bead]

    def findings(self) -> list[VersionFinding]:
        same = self._identical()
        if same is not None:
            return [same, *self._unfinished()]
        untranslated = list(self._left_over())
        return [
            *self._unfinished(), *self._passages(), *self._values([f.start for f in untranslated]), *self._names(),
            *self._cues(), *self._pronunciations(), *untranslated,
        ]  # fmt: skip

    def _finding(
        self, name: str, level: Level, span: Span, message: str, hint: str = "", about: str = ""
    ) -> VersionFinding:
        tag = self.target.data.tag
        return VersionFinding(name, level, tag, self.b.id, span.start, span.end, message, hint, about=about)

    def _head(self) -> Span:
        return self.b.heading_span or Span(self.b.span.start, self.b.span.start)

    # -- passages ---------------------------------------------------------------------------------------------

    def _identical(self) -> VersionFinding | None:
        ours, theirs = (" ".join(" ".join(p.text for p in s.paragraphs).split()) for s in (self.a, self.b))
        if ours != theirs or len(_WORD.findall(ours)) < FEWEST_WORDS:
            return None
        if self.source.data.base == self.target.data.base:
            return None
        return self._finding(
            "segment-untranslated", "fix", self._head(), "this segment is word for word the source's", "translate it"
        )

    def _unfinished(self) -> Iterator[VersionFinding]:
        text = self.target.script.source[self.b.span.start : self.b.span.end]
        for m in UNFINISHED.finditer(text):
            span = Span(*m.span()).shifted(self.b.span.start)
            yield self._finding("version-unfinished", "fix", span, f"{m[0]} is still standing here", "finish the copy")

    def _passages(self) -> Iterator[VersionFinding]:
        for bead in self.beads:
            if bead.source and not bead.target:
                text = self.a.paragraphs[bead.source[0]].text
                yield self._finding(
                    "passage-missing", "look", self._head(),
                    f"no passage here says what the source does in {_short(text)}",
                    "translate it, or check that it was left out on purpose",
                )  # fmt: skip
            elif bead.target and not bead.source:
                p = self.b.paragraphs[bead.target[0]]
                yield self._finding("passage-added", "look", p.span, "the source has no passage that says this")

    # -- values -----------------------------------------------------------------------------------------------

    def _values(self, untranslated: Sequence[int]) -> Iterator[VersionFinding]:
        """What differs in value; copy that is still in the source's language says nothing about values."""
        lost: list[_At] = []
        gained: list[_At] = []
        for bead in self.beads or (Bead((), ()),):
            if any(self.b.paragraphs[j].span.start <= at < self.b.paragraphs[j].span.end
                   for j in bead.target for at in untranslated):  # fmt: skip
                continue
            ours = [_At(f, i) for i in bead.source for f in self.source.figures(self.a.paragraphs[i])]
            theirs = [_At(f, j) for j in bead.target for f in self.target.figures(self.b.paragraphs[j])]
            for miss in mismatches([x.figure for x in ours], [x.figure for x in theirs]):
                at = next((x for x in theirs if x.figure is miss.target), None)
                come = next((x for x in ours if x.figure is miss.source), None)
                if at is not None and come is not None:
                    yield self._differs(miss, at)
                elif come is not None:
                    lost.append(come)
                elif at is not None:
                    gained.append(at)
        _cancel(lost, gained)
        for come in lost:
            yield self._finding(
                "value-missing", "fix", self._near(come.paragraph),
                f"the source's {come.figure.text!r} is not said here",
                "put it in, or check that it was left out on purpose", come.figure.text,
            )  # fmt: skip
        for at in gained:
            yield self._finding(
                "value-added", "fix", self._place(at), f"the source does not say {at.figure.text!r}", "check the figure"
            )

    def _place(self, at: _At) -> Span:
        return self.b.paragraphs[at.paragraph].source_span(at.figure.span)

    def _near(self, paragraph: int) -> Span:
        """Where in the version the source's paragraph is said."""
        for bead in self.beads:
            if paragraph in bead.source and bead.target:
                return self.b.paragraphs[bead.target[0]].span
        return self._head()

    def _differs(self, miss: Mismatch, at: _At) -> VersionFinding:
        ours, theirs = miss.source, miss.target
        if ours is None or theirs is None:
            raise ValueError("only a pair differs")
        if miss.what == "unit":
            message = f"the source says {ours.text!r} in {ours.unit}, this version {theirs.text!r} in {theirs.unit}"
            return self._finding("unit-differs", "fix", self._place(at), message, "check the unit", ours.text)
        message = f"the source says {ours.text!r}, this version {theirs.text!r}"
        return self._finding("value-differs", "fix", self._place(at), message, "check the figure in both", ours.text)

    # -- names ------------------------------------------------------------------------------------------------

    def _names(self) -> Iterator[VersionFinding]:
        people = people_of(self.a)
        marked = {w.casefold() for text in marked_words(self.source.script, self.a) for w in text.split()}
        whole = self._said(range(len(self.b.paragraphs)))
        done: set[str] = set()
        for i, paragraph in enumerate(self.a.paragraphs):
            near = self._said([j for b in self.beads if i in b.source for j in b.target]) or whole
            for name in names_of(paragraph.text, self.source.data, self.source.engines.frequency, people):
                low = name.text.casefold()
                if low in done or low in marked or len(done) > MOST_NAMES:
                    continue
                done.add(low)
                if not name.certain and self.target.data.base not in LATIN:
                    continue
                if not is_there(name, near, whole, self.target.listener):
                    yield self._finding(
                        "name-missing", self._name_level(name), self._near(i),
                        f"the source's name {name.text!r} is not in this version, or is written otherwise",
                        "check the name, letter by letter", name.text,
                    )  # fmt: skip

    def _name_level(self, name: Name) -> Level:
        """Chinese names foreigners by habit as much as by sound: there a person has to look."""
        return "fix" if name.certain and self.target.data.base != "zh" else "look"

    def _said(self, paragraphs: Iterable[int]) -> str:
        return "\n".join(self.b.paragraphs[j].text for j in paragraphs)

    # -- cues and pronunciations ------------------------------------------------------------------------------

    def _cues(self) -> Iterator[VersionFinding]:
        ours, theirs = (Counter(map(_cue_key, s.cues)) for s in (self.a, self.b))
        lost, gained = ours - theirs, theirs - ours
        for key in list(lost.elements()):
            twin = next((g for g in gained.elements() if g[0] == key[0]), None)
            if twin is not None:
                gained[twin] -= 1
                span = next(c.span for c in self.b.cues if _cue_key(c) == twin)
                message = f"a {key[0]} cue takes {_seconds(twin[1])} here, {_seconds(key[1])} in the source"
                yield self._finding("cue-differs", "fix", span, message, "give both the same length")
            else:
                example = next(c for c in self.a.cues if _cue_key(c) == key)
                yield self._finding(
                    "cue-missing", "fix", self._head(), f"the source's cue [{key[0]} {example.text}] is not here",
                    "put it in: the crew's sheet follows it", f"[{key[0]} {example.text}]",
                )  # fmt: skip
        for key in gained.elements():
            span = next(c.span for c in self.b.cues if _cue_key(c) == key)
            yield self._finding("cue-added", "look", span, f"the source has no such {key[0]} cue")

    def _pronunciations(self) -> Iterator[VersionFinding]:
        ours, theirs = marked_words(self.source.script, self.a), len(marked_words(self.target.script, self.b))
        if len(ours) > theirs and ours:
            message = f"the source marks how {', '.join(ours)} sounds; {theirs} of {len(ours)} are marked here"
            yield self._finding("pronunciation-missing", "note", self._head(), message, "add {say=...} if it is needed")

    # -- left in the source's language ------------------------------------------------------------------------

    def _left_over(self) -> Iterator[VersionFinding]:
        if self.source.data.base == self.target.data.base:
            return
        known = {w.casefold() for p in self.a.paragraphs for w in _WORD.findall(p.text)}
        for paragraph in self.b.paragraphs:
            for m in _SENTENCE.finditer(paragraph.text):
                words = [w.casefold() for w in _WORD.findall(m[0])]
                plain = [w for w in words if len(w) > 1]
                if len(plain) >= FEWEST_WORDS and sum(w in known for w in plain) >= SAME_WORDS * len(plain):
                    span = paragraph.source_span(Span(*m.span()))
                    yield self._finding(
                        "passage-untranslated", "fix", span, f"this stands in the source's language: {_short(m[0])}",
                        "translate it",
                    )  # fmt: skip


def marked_words(script: Script, segment: Segment) -> list[str]:
    """Words whose pronunciation stands in the script itself (a lexicon's marks are put to words by the studio)."""
    return [
        span.of(p.text)
        for p in segment.paragraphs
        for span, _ in p.said()
        if script.source[p.source_offset(span.start) - 1] == "["
    ]


def _cancel(lost: list[_At], gained: list[_At]) -> None:
    """What one paragraph lacks and another of the same segment has was only moved."""
    for one in list(lost):
        twin = next((g for g in gained if g.figure.keys & one.figure.keys), None)
        if twin is not None:
            lost.remove(one)
            gained.remove(twin)


def _cue_key(cue: Cue) -> tuple[str, float | None]:
    return cue.kind, cue.duration_s


def _seconds(value: float | None) -> str:
    return "no stated time" if value is None else f"{value:g} s"


def _short(text: str, most: int = 60) -> str:
    flat = " ".join(text.split())
    return f"“{flat}”" if len(flat) <= most else f"“{flat[: most - 1]}…”"
