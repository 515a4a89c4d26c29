"""Faults in the cues of one script, as they show up in a session."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from promptprep.model.finding import Level
from promptprep.model.script import POSITION_KINDS, Cue, CueLine, Paragraph, Script
from promptprep.model.session import Item, NumberedCue, SessionFinding
from promptprep.session.cue_labels import cue_labels
from promptprep.session.cue_words import CueWords
from promptprep.spans import LineIndex
from promptprep.units import clock_text

ONE_AT_ONCE = tuple(kind for kind in POSITION_KINDS if kind != "note")


class CueCheck:
    """Looks at one script's cues. `assets` are the names on the studio's list (empty: it keeps none)."""

    def __init__(
        self, item: Item, script: Script, cues: Sequence[NumberedCue], words: CueWords, assets: Sequence[str]
    ) -> None:
        self.item, self.script, self.cues, self.words = item, script, cues, words
        self.assets = [a.casefold().rsplit(".", 1)[0] if a[-5:].count(".") else a.casefold() for a in assets]
        self.index = LineIndex(script.source)
        self.flat = [(numbered, cue) for numbered in cues for cue in numbered.actions]

    def findings(self) -> Iterator[SessionFinding]:
        """All faults of the script's cues."""
        yield from self._numbers()
        yield from self._at_once()
        yield from self._unlisted()
        yield from self._no_text()
        yield from self._left_on()
        yield from self._long_clips()
        yield from self._returns()

    def _finding(
        self, name: str, level: Level, numbered: NumberedCue, cue: Cue, message: str, hint: str
    ) -> SessionFinding:
        line, column = self.index.place(cue.span.start)
        excerpt = cue.span.of(self.script.source)[:120]
        return SessionFinding(
            name, level, message, hint, self.item.code, numbered.label, self.script.file, line, column, excerpt
        )

    def _numbers(self) -> Iterator[SessionFinding]:
        labels = cue_labels(self.script, [c.actions[0] for c in self.cues])
        for i in labels.broken:
            cue = self.cues[i]
            message = "this cue's kept number is out of order; it is called " + cue.label
            hint = "promptprep session --keep-numbers writes the remarks anew"
            yield self._finding("cue-number-out-of-order", "look", cue, cue.actions[0], message, hint)

    def _at_once(self) -> Iterator[SessionFinding]:
        for numbered in self.cues:
            by_kind: dict[str, list[Cue]] = {}
            for cue in numbered.actions:
                by_kind.setdefault(cue.kind, []).append(cue)
            for kind in ONE_AT_ONCE:
                same = by_kind.get(kind, [])
                wanted = {" ".join(c.text.casefold().split()) for c in same if not self.words.says(c.text, "off")}
                if len(wanted) > 1:
                    message = f"{kind} has {len(same)} things to do at one point"
                    hint = "put them into one cue in the order wanted, or let some words pass between"
                    yield self._finding("two-at-once", "look", numbered, same[1], message, hint)

    def _unlisted(self) -> Iterator[SessionFinding]:
        if not self.assets:
            return
        for numbered, cue in self.flat:
            if cue.kind not in ("clip", "graphic") or not cue.text or self.words.says(cue.text, "off"):
                continue
            name = cue.text.casefold()
            if not any(name == a or name.startswith((f"{a},", f"{a} ")) for a in self.assets):
                message = f"no {cue.kind} called {cue.text.split(',')[0].strip()!r} is on the asset list"
                yield self._finding("unlisted-asset", "fix", numbered, cue, message,
                                    "add it to assets in studio.toml, or correct its name")  # fmt: skip

    def _no_text(self) -> Iterator[SessionFinding]:
        """A prompter change after which copy must be said before the copy is back."""
        away: tuple[NumberedCue, Cue] | None = None
        at = {cue.span.start: (numbered, cue) for numbered, cue in self.flat if cue.kind == "prompter"}
        for kind, start in self._order():
            if kind == "cue" and start in at:
                away = None if self.words.says(at[start][1].text, "copy") else at[start]
            elif kind == "copy" and away:
                line, _ = self.index.place(start)
                message = f"the prompter shows no copy, but the reader must speak from line {line} on"
                hint = "give the prompter the copy back before those words, or move the change after them"
                yield self._finding("reader-without-text", "fix", *away, message, hint)
                away = None

    def _order(self) -> Iterator[tuple[str, int]]:
        """("cue" or "copy", place in the source) in the order of the text."""
        for segment in self.script.segments:
            for block in segment.blocks:
                if isinstance(block, CueLine):
                    yield "cue", block.cue.span.start
                if not isinstance(block, Paragraph):
                    continue
                said = 0
                for inline in block.cues:
                    if block.text[said : inline.offset].strip():
                        yield "copy", block.source_offset(said)
                    said = inline.offset
                    yield "cue", inline.cue.span.start
                if block.text[said:].strip():
                    yield "copy", block.source_offset(said)

    def _left_on(self) -> Iterator[SessionFinding]:
        on: tuple[NumberedCue, Cue] | None = None
        for numbered, cue in self.flat:
            if cue.kind == "graphic":
                on = None if self.words.says(cue.text, "off") else (numbered, cue)
        if on:
            name = re.split("[,،、，]", on[1].text)[0].strip() or "it"
            yield self._finding("graphic-left-on", "look", *on, f"the graphic {name!r} is never taken off",
                                f"add [graphic: {name} off] where it goes")  # fmt: skip

    def _long_clips(self) -> Iterator[SessionFinding]:
        whole_ms = self.item.slot_ms if self.item.slot_ms is not None else _ms(self.script.slot_s)
        for numbered, cue in self.flat:
            if cue.kind != "clip" or cue.duration_s is None:
                continue
            own_ms = _ms(self.script.segments[numbered.segment].slot_s)
            slots = [ms for ms in (own_ms, whole_ms) if ms is not None]
            if slots and cue.duration_s * 1000 > min(slots):
                slot = clock_text(min(slots) / 1000)
                message = f"the clip of {clock_text(cue.duration_s)} is longer than its slot of {slot}"
                yield self._finding("clip-over-slot", "fix", numbered, cue, message, "cut the clip or widen the slot")

    def _returns(self) -> Iterator[SessionFinding]:
        opened = ever = False
        live: tuple[NumberedCue, Cue] | None = None
        guest = bool(self.item.guests)
        for numbered, cue in self.flat:
            guest = guest or self.words.names_guest(cue)
            if cue.kind == "sound" and self.words.says(cue.text, "return"):
                opened = not self.words.says(cue.text, "shut")
                ever = ever or opened
            elif cue.kind == "live" and live is None and not opened:
                live = (numbered, cue)
        if guest and live:
            yield self._finding("return-not-open", "fix", *live, "the guest speaks before their return sound is open",
                                "add [sound: open return to guest] before it")  # fmt: skip
        elif guest and not ever and self.flat:
            numbered, cue = self.flat[0]
            yield self._finding("return-not-open", "fix", numbered, cue, "the guest's return sound is never opened",
                                "add [sound: open return to guest] before the guest is spoken to")  # fmt: skip


def _ms(seconds: float | None) -> int | None:
    return None if seconds is None else round(seconds * 1000)
