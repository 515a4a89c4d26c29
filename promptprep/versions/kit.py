"""Takes a script apart for a translator, and puts what comes back into a script of the same cues and ids."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import SequenceMatcher
from typing import NamedTuple

from promptprep.errors import UnreadableInput
from promptprep.model.kit import Filled, Kit, KitSegment, KitUnit
from promptprep.model.script import Cue, CueLine, Note, Paragraph, Script, Segment
from promptprep.spans import Span

_SAY = re.compile(r'\[([^\[\]\n]+)\]\{\s*say\s*=\s*"([^"\n]*)"\s*\}')
_BRACKET = re.compile(r"\[[^\[\]\n]*\](?!\{)")
_LOST_SAY = re.compile(r"\[([^\[\]\n]+)\]\s*\{\s*say\s*=([^{}\n]*)\}", re.IGNORECASE)
_QUOTES = " \t\u00a0\u202f\"“”„«»″'‘’"
_WIDE = str.maketrans({"［": "[", "］": "]", "【": "[", "】": "]", "｛": "{", "｝": "}"})
_MARKER = re.compile(r"\s*(?:[-*+]|\d+[.)])[ \t]+")
_NUMBERED = re.compile(r"[ \t]*(?:(\d+)([.)])|[•·▪-])[ \t]+")
_RISKY = re.compile(r"^(\s*)(#{1,6}\s|\+\+\+|>|<!--)")
_TITLE = re.compile(r"^title\s*=.*$", re.MULTILINE)
_ATTRIBUTES = re.compile(r"[ \t]*\{[^{}\n]*\}[ \t]*$")
SHOWN = ("graphic", "screen")  # cues whose words the audience reads
ALIKE = 0.8  # share of a source text that must agree for a row without its code to be taken for it


class Room(NamedTuple):
    """How fast the target's language runs: characters and words a second (words None without spaces), and whence."""

    characters_per_s: float
    words_per_s: float | None
    basis: str


def kit_of(
    script: Script, language: str, fixed_and_slot: Sequence[tuple[float, float | None]], room: Room | None,
    made: Mapping[str, str] | None = None, direction: str = "ltr",
) -> Kit:  # fmt: skip
    """The kit of a script for `language`. `fixed_and_slot` gives each segment's fixed time and slot in seconds;
    `made` translations that there are already, by unit code."""
    there = made or {}
    segments = []
    for index, segment in enumerate(script.segments):
        fixed, slot = fixed_and_slot[index]
        room_s = None if slot is None else max(0.0, slot - fixed)
        units = tuple(replace(u, target=there.get(u.code, "")) for u in _units(script, segment))
        wide = room is not None and room_s is not None
        segments.append(
            KitSegment(
                segment.id,
                segment.title,
                units,
                room_s,
                int(room_s * room.characters_per_s) if wide and room and room_s is not None else None,
                int(room_s * room.words_per_s) if wide and room and room.words_per_s and room_s is not None else None,
                tuple(c.kind + (f" {c.text}" if c.text else "") for c in segment.cues),
            )
        )
    title = KitUnit("title", "script title", script.title, there.get("title", ""))
    basis = room.basis if room else ""
    return Kit(script.name, script.language, language, title, tuple(segments), basis, direction)


def _units(script: Script, segment: Segment) -> Iterator[KitUnit]:
    if segment.title:
        yield KitUnit(f"{segment.id}/0", "title", segment.title)
    for number, block in enumerate(segment.blocks, 1):
        if isinstance(block, Paragraph):
            raw = (
                _MARKER.sub("", block.span.of(script.source), 1)
                if block.role == "item"
                else block.span.of(script.source)
            )
            says = tuple((m[1], m[2]) for m in _SAY.finditer(raw))
            text = " ".join(_SAY.sub(r"\1", raw).split())
            yield KitUnit(f"{segment.id}/{number}", "passage", text, "", says, tuple(_BRACKET.findall(text)))
        elif isinstance(block, Note):
            yield KitUnit(f"{segment.id}/{number}", "note", block.text)
        elif isinstance(block, CueLine) and block.cue.kind in SHOWN and block.cue.text:
            yield KitUnit(f"{segment.id}/{number}", "cue", block.cue.text)


def units_of(script: Script) -> dict[str, str]:
    """What a version says at each unit's code: a translation to begin from, where its blocks are the source's."""
    found = {"title": script.title}
    for segment in script.segments:
        for unit in _units(script, segment):
            raw = unit.text
            for word, say in unit.pronunciations:
                raw = raw.replace(word, f'[{word}]{{say="{say}"}}', 1)
            found[unit.code] = raw
    return found


def taken_back(
    script: Script, filled: Filled, months: Collection[str] = (), before: Script | None = None
) -> tuple[str, list[str]]:
    """(the new version's text, what was lost). Cues, ids, slots and order are the source's.

    `months` are the target language's: a number before one is a date, not a list's. `before` is the version that
    stood there: its front matter stays (the reader, the mark), but for the title. Raises `UnreadableInput` where no
    text is the script's.
    """
    losses = list(filled.losses)
    known = {"title": KitUnit("title", "script title", script.title)}
    known |= {u.code: u for s in script.segments for u in _units(script, s)}
    written = {code.casefold(): code for code in known}
    targets = {
        written.get(code.casefold(), code): _unnumbered(t, known.get(code), months, losses)
        for code, t in filled.targets.items()
    }
    if filled.targets and not filled.loose and not (set(targets) - {"title"}) & set(known):
        hint = "name the source that the kit was made from"
        raise UnreadableInput("kit-of-another", "no text of this kit stands in this script", hint)
    _find_loose(known, targets, filled, losses)
    strays = [code for code in targets if code not in known]
    losses += [f"{code}: the source has no such text; left out: {_short(targets[code])}" for code in strays]
    edits: list[tuple[Span, str]] = []
    for segment in script.segments:
        edits += _segment_edits(script, segment, known, targets, losses)
    body_start = next((p.span.end for p in script.parts if p.kind == "front-matter"), 0)
    text = script.source
    for span, new in sorted(edits, reverse=True):
        text = text[: span.start] + new + text[span.end :]
    title = _clean_title(targets.get("title", "")) or ""
    front = _kept_front(before, title) or _front(script, filled.target_language, title)
    return front + text[body_start:].lstrip("\r\n"), losses


def _find_loose(known: Mapping[str, KitUnit], targets: dict[str, str], filled: Filled, losses: list[str]) -> None:
    """Rows that lost their code are known again by their source text."""
    for source, target in filled.loose:
        if not target.strip():
            continue
        free = [u for c, u in known.items() if not targets.get(c, "").strip()]
        rated = [(SequenceMatcher(None, u.text[:400], source[:400], autojunk=False).ratio(), u.code) for u in free]
        best = max(rated, default=(0.0, ""))
        if best[0] >= ALIKE:
            targets[best[1]] = target
            losses.append(f"{best[1]}: its code was lost in the file; known again by the source text beside it")
        else:
            losses.append(f"a row without code could not be placed; left out: {_short(target)}")


def _segment_edits(
    script: Script, segment: Segment, known: Mapping[str, KitUnit], targets: Mapping[str, str], losses: list[str]
) -> Iterator[tuple[Span, str]]:
    if segment.heading_span is not None:
        title = _clean_title(targets.get(f"{segment.id}/0", ""))
        if segment.title and not title:
            losses.append(f"{segment.id}/0: the segment's title is not translated")
        yield segment.heading_span, _heading(script, segment, title or segment.title)
    for number, block in enumerate(segment.blocks, 1):
        code = f"{segment.id}/{number}"
        unit = known.get(code)
        if unit is None:
            continue
        target = targets.get(code, "").strip()
        if isinstance(block, CueLine):
            if target and target != unit.text:
                yield block.cue.span, _cue(script, block.cue, target)
            continue
        if not target:
            losses.append(f"{code}: not translated; TODO stands in its place")
            target = f"TODO {unit.text}"
        if isinstance(block, Note):
            lines = "\n".join("> " + line if line.strip() else ">" for line in target.splitlines()).removeprefix("> ")
            yield block.span, lines + ("\n" if block.span.of(script.source).endswith("\n") else "")
        elif isinstance(block, Paragraph):
            yield block.span, _passage(script, block, unit, target, losses)


def _cue(script: Script, cue: Cue, target: str) -> str:
    """The cue with its words translated; a bracket in them would end it."""
    words = " ".join(re.sub(r"[\[\]]", "", target).split())
    raw = cue.span.of(script.source)
    at = raw.rfind(cue.text)
    return raw[:at] + words + raw[at + len(cue.text) :] if at >= 0 else raw


def _passage(script: Script, block: Paragraph, unit: KitUnit, target: str, losses: list[str]) -> str:
    text = mended(target, unit, losses)
    raw = block.span.of(script.source)
    marker = _MARKER.match(raw) if block.role == "item" else None
    tail = raw[len(raw.rstrip()) :]
    return (marker[0] if marker else "") + text + tail


def mended(target: str, unit: KitUnit, losses: list[str]) -> str:
    """A translation with what a word processor spoils put right: quotes, brackets, numbering, lost cues."""
    text = target.translate(_WIDE)
    for m in list(_LOST_SAY.finditer(text)):
        if not _SAY.fullmatch(m[0]):
            text = text.replace(m[0], f'[{m[1]}]{{say="{m[2].strip(_QUOTES)}"}}')
            losses.append(f"{unit.code}: the marks around the pronunciation of {m[1]!r} were changed; put right")
    text = _with_cues(text, unit, losses)
    given = {m[1] for m in _SAY.finditer(text)}
    if unit.pronunciations and not given:
        words = ", ".join(word for word, _ in unit.pronunciations)
        losses.append(f"{unit.code}: no pronunciation is given for {words}; add {{say=...}} if it is needed")
    lines = [_RISKY.sub(r"\1\\\2", " ".join(line.split())) for line in re.split(r"\n\s*\n|\n", text)]
    return "\n\n".join(line for line in lines if line)


def _unnumbered(text: str, unit: KitUnit | None, months: Collection[str], losses: list[str]) -> str:
    """Lines without the numbers and bullets of a word processor's list; a date's or the source's own number stays."""
    if unit is None or _NUMBERED.match(unit.text):
        return text
    own = set(re.findall(r"\d+", unit.text))
    lines = []
    for line in text.split("\n"):
        m = _NUMBERED.match(line)
        word = re.match(r"[^\W\d_]*", line[m.end() :]) if m else None
        is_date = bool(m and word and m[2] == "." and (m[1] in own or word[0].casefold() in months))
        if m and not is_date:
            losses.append(f"{unit.code}: {m[0].strip()!r} that the word processor put before it was taken off")
            line = line[m.end() :]
        lines.append(line)
    return "\n".join(lines)


def _with_cues(text: str, unit: KitUnit, losses: list[str]) -> str:
    """The source's inline cues, in their order: translated ones are put back, lost ones stand at the end."""
    found = list(_BRACKET.finditer(text))
    if [m[0] for m in found] == list(unit.cues):
        return text
    if len(found) == len(unit.cues):
        for m, cue in zip(reversed(found), reversed(unit.cues), strict=True):
            if m[0] != cue:
                losses.append(f"{unit.code}: the cue {cue} had become {m[0]}; put right")
                text = text[: m.start()] + cue + text[m.end() :]
        return text
    left = [m[0] for m in found]
    for cue in unit.cues:
        if cue in left:
            left.remove(cue)
        else:
            losses.append(f"{unit.code}: the cue {cue} was lost; it stands at the end of the passage now")
            text = f"{text.rstrip()} {cue}"
    return text


def _heading(script: Script, segment: Segment, title: str) -> str:
    raw = segment.heading_span.of(script.source) if segment.heading_span else ""
    first = raw.splitlines()[0] if raw else ""
    found = _ATTRIBUTES.search(first)
    attributes = found[0].strip() if found else ""
    if "#" not in attributes:
        attributes = f"{{#{segment.id} {attributes.strip('{} ')}".rstrip() + "}"
    tail = raw[len(raw.rstrip()) :]
    return f"{title} {attributes}{tail}"


def _clean_title(text: str) -> str:
    return _ATTRIBUTES.sub("", " ".join(text.translate(_WIDE).split()).lstrip("#").strip()).replace("\n", " ")


def _kept_front(before: Script | None, title: str) -> str:
    """The front matter of the version that stood there with the new title; "" where it has none."""
    part = next((p for p in before.parts if p.kind == "front-matter"), None) if before else None
    if before is None or part is None:
        return ""
    head = part.span.of(before.source).rstrip().replace("\r\n", "\n")
    if title:
        line = f"title = {_quoted(title)}"
        head = (
            _TITLE.sub(lambda _: line, head, count=1) if _TITLE.search(head) else head.replace("\n", f"\n{line}\n", 1)
        )
    return head + "\n\n"


def _front(script: Script, language: str, title: str) -> str:
    lines = ["+++", f"title = {_quoted(title or 'TODO ' + script.title)}", f"language = {_quoted(language)}"]
    for key in ("rig", "slot"):
        if key in script.front:
            value = script.front[key]
            lines.append(f"{key} = {_quoted(value) if isinstance(value, str) else value}")
    if "date" in script.front:
        value = script.front["date"]
        lines.append(f"date = {_quoted(value) if isinstance(value, str) else value.isoformat()}")
    return "\n".join([*lines, "+++", "", ""])


def _quoted(text: str) -> str:
    clean = " ".join(str(text).split())
    return '"' + clean.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _short(text: str, most: int = 50) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= most else flat[: most - 1] + "…"
