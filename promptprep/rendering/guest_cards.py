"""Cards to hand over: for each live part who is on, for how long, and the reader's notes for it."""

from __future__ import annotations

from dataclasses import dataclass

from promptprep.model.prepared import PreparedScript
from promptprep.model.script import Cue, Note, Segment
from promptprep.rendering.commas import after_comma
from promptprep.rendering.printing import PaperTools
from promptprep.rendering.sheets import Sheet
from promptprep.units import clock_text

CARD_PT = 18.0  # UKAAF G003 (2019): large print is at least 16 points, ideally 18
CARD_LINE_PT = 27.0
CARD_GAP_PT = 10.0
WHAT_LINES = 6
HEAD_LINES = 4  # lines that title and name take at most, and the space between
BULLET_MM = 8.0


@dataclass(frozen=True, slots=True)
class GuestCard:
    """One card, or a further page of one. `what`, the live parts with their times, and `notes` are wrapped."""

    title: str
    name: tuple[str, ...]
    what: tuple[str, ...]
    notes: tuple[tuple[str, ...], ...]


def guest_cards(one: PreparedScript, sheet: Sheet, tools: PaperTools) -> list[GuestCard]:
    """The cards of a script in its order; notes that need more room go on on another card."""
    return [card for segment in one.script.segments for card in _of_segment(segment, sheet, tools)]


def _of_segment(segment: Segment, sheet: Sheet, tools: PaperTools) -> list[GuestCard]:
    live = [cue for cue in segment.cues if cue.kind == "live"]
    if not live:
        return []
    width = sheet.width_mm - sheet.margin_mm - sheet.end_mm
    measure = tools.measure
    straps = [who for cue in segment.cues if cue.kind == "graphic" and (who := after_comma(cue.text))]
    name = measure.wrapped(straps[0], width, CARD_PT, bold=tools.bold)[:2] if straps else []
    what = [line for text in _parts(live) for line in measure.wrapped(text, width, CARD_PT)][:WHAT_LINES]
    written = [line for block in segment.blocks if isinstance(block, Note) for line in block.text.split("\n")]
    notes = [tuple(tools.sense_lines(line, width - BULLET_MM, CARD_PT)) for line in written if line.strip()]
    title = measure.shortened(segment.title, width, CARD_PT, bold=tools.bold)
    return [GuestCard(title, tuple(name), tuple(what), some) for some in _shared_out(notes, sheet, len(what))]


def _parts(live: list[Cue]) -> list[str]:
    """Each live part with its time; before several of them, their time in all."""
    parts = [" · ".join(filter(None, (clock_text(cue.fixed_s), cue.text))) for cue in live]
    return parts if len(parts) == 1 else [clock_text(sum(cue.fixed_s for cue in live)), *parts]


def _shared_out(notes: list[tuple[str, ...]], sheet: Sheet, what_lines: int) -> list[tuple[tuple[str, ...], ...]]:
    """Notes for each card; a note that is longer than a card is cut between lines."""
    head_lines = HEAD_LINES + what_lines
    most = max(1, int((sheet.body_pt - head_lines * CARD_LINE_PT) / (CARD_LINE_PT + CARD_GAP_PT / 2)))
    short = [note[at : at + most] for note in notes for at in range(0, len(note), most)]
    cards: list[list[tuple[str, ...]]] = [[]]
    for note in short:
        if cards[-1] and sum(len(n) for n in cards[-1]) + len(note) > most:
            cards.append([])
        cards[-1].append(note)
    return [tuple(card) for card in cards]
