"""The paper copy: the script in the hand when the glass goes dark."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Studio
from promptprep.model.script import Cue, CueLine, Note, Paragraph, Segment
from promptprep.model.timing import BlockTiming
from promptprep.rendering.pages import Breaker, Filler, Item, Page, Piece
from promptprep.rendering.sheets import Sheet, sheet_for
from promptprep.spans import Span
from promptprep.units import MM_PER_PT, clock_text

Words = Callable[[str], str]  # a text of the interface in the script's language

LANE_PT = 10.0  # small type of the margin
LANE_LINE_PT = 12.5
SAY_PT = 11.0
NOTE_PT = 12.0
NOTE_LINE_PT = 16.0
HEADING_PT = 30.0
PARAGRAPH_GAP_PT = 12.0
NOTE_LINES = 20  # a longer note is put in several boxes


@dataclass(frozen=True, slots=True)
class PaperTools:
    """What a printed page needs from outside: texts of the interface, line breaks, sentence ends, and `faces`: the
    `@font-face` rules that show a text, in families "copy-0", "copy-1" ..."""

    words: Words
    breaker: Breaker
    sentences: Callable[[str], Sequence[int]]
    faces: Callable[[str], str]
    env: Environment


@dataclass(slots=True)
class LineView:
    """One printed line: what is said, and what stands beside it in the margin."""

    runs: list[dict[str, Any]]
    height_pt: float
    lane: list[dict[str, str]] = field(default_factory=list)


@dataclass(slots=True)
class PieceView:
    kind: str
    height_pt: float = 0.0
    text: str = ""
    gap_pt: float = 0.0
    lines: list[LineView] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    lane: list[dict[str, str]] = field(default_factory=list)


@dataclass(slots=True)
class PageView:
    pieces: list[PieceView]
    segment: str
    segment_time: str
    following: str
    goes_on: bool


def paper_html(one: PreparedScript, studio: Studio, tools: PaperTools) -> str:
    """The printed script as one HTML text for the page renderer."""
    sheet = sheet_for(studio.paper)
    maker = _Maker(one, sheet, tools)
    pages = maker.pages()
    return rendered(
        tools,
        "paper/script.html",
        one=one,
        script=one.script,
        studio=studio,
        sheet=sheet,
        pages=pages,
        cards=guest_cards(one),
        whole=clock_text(one.timing.timing.mean_s),
        low=clock_text(one.timing.timing.low_s),
        high=clock_text(one.timing.timing.high_s),
        slot="" if one.timing.slot_s is None else clock_text(one.timing.slot_s),
        date=str(one.script.front.get("date", "")),
        low_ink=studio.paper.low_ink,
    )


def rendered(tools: PaperTools, template: str, **values: Any) -> str:
    """A printed page's HTML with the faces of all characters on it embedded."""
    page = tools.env.get_template(template)
    bare = page.render(**values, _=tools.words, faces="", families="")
    faces = tools.faces("".join(sorted({c for c in bare if c.isprintable()})))
    count = max([int(n) for n in re.findall(r"'copy-(\d+)'", faces)], default=0) + 1
    families = ",".join(f"copy-{n}" for n in range(count))
    return page.render(**values, _=tools.words, faces=Markup(faces), families=Markup(families))


def paper_pdf(one: PreparedScript, studio: Studio, tools: PaperTools) -> bytes:
    """A tagged PDF. The same script and studio give the same bytes."""
    return pdf_from_html(paper_html(one, studio, tools), f"{one.script.name}.{one.script.language}.{one.digest}")


def pdf_from_html(html: str, identity: str) -> bytes:
    """PDF bytes of a page text, with structure tags; `identity` makes the file's identifier."""
    from weasyprint import HTML

    written = HTML(string=html, base_url="/").write_pdf(
        pdf_variant="pdf/ua-1", pdf_tags=True, pdf_identifier=identity.encode("utf-8"), full_fonts=False
    )
    assert isinstance(written, bytes)
    return written


def guest_cards(one: PreparedScript) -> list[dict[str, Any]]:
    """A card for each live part: who is on, for how long, and the reader's notes for it."""
    cards = []
    for segment in one.script.segments:
        live = [cue for cue in segment.cues if cue.kind == "live"]
        if not live:
            continue
        straps = [c.text.split(",", 1)[1].strip() for c in segment.cues if c.kind == "graphic" and "," in c.text]
        cards.append(
            {
                "title": segment.title,
                "strap": straps[0] if straps else "",
                "time": clock_text(sum(cue.fixed_s for cue in live)),
                "what": ", ".join(cue.text for cue in live if cue.text),
                "notes": [line for b in segment.blocks if isinstance(b, Note) for line in b.text.split("\n")],
            }
        )
    return cards


class _Maker:
    """Turns one prepared script into pages of views."""

    def __init__(self, one: PreparedScript, sheet: Sheet, tools: PaperTools) -> None:
        self.one = one
        self.sheet = sheet
        self.tools = tools
        self.total_s = one.timing.timing.mean_s
        self.times: dict[tuple[int, int], BlockTiming] = {
            (number, block.block): block for number, s in enumerate(one.timing.segments) for block in s.blocks
        }
        self.said_before: set[tuple[int, str]] = set()

    def pages(self) -> list[PageView]:
        items = list(self._items())
        filler = Filler(self.sheet.body_pt, self.sheet.line_pt, self.sheet.copy_em, self.tools.breaker, self._extra_pt)
        pages = filler.fill(items)
        return [self._page(page, pages[n + 1] if n + 1 < len(pages) else None) for n, page in enumerate(pages)]

    # -- items ------------------------------------------------------------------------------------------------

    def _items(self) -> Iterator[Item]:
        for number, segment in enumerate(self.one.script.segments):
            if segment.title:
                yield Item("heading", segment.title, (number, -1), HEADING_PT, gap_pt=PARAGRAPH_GAP_PT)
            yield from self._segment_items(number, segment)

    def _segment_items(self, number: int, segment: Segment) -> Iterator[Item]:
        for index, block in enumerate(segment.blocks):
            if isinstance(block, CueLine):
                height = max(self._lane_lines(self._cue_text(block.cue)) * LANE_LINE_PT + 4, 17.0)
                yield Item("cue", self._cue_text(block.cue), (number, index), height)
            elif isinstance(block, Note):
                yield from self._note_items(block, (number, index))
            elif isinstance(block, Paragraph) and block.text.strip():
                ends = tuple(self.tools.sentences(block.text)) or (len(block.text),)
                yield Item("copy", block.text, (number, index), 0.0, ends, PARAGRAPH_GAP_PT)

    def _note_items(self, note: Note, key: tuple[int, int]) -> Iterator[Item]:
        lines = [
            text for part in note.text.split("\n") for text in self._wrapped(part, self.sheet.copy_mm - 8, NOTE_PT)
        ]
        for at in range(0, len(lines), NOTE_LINES):
            some = lines[at : at + NOTE_LINES]
            yield Item("note", "\n".join(some), key, len(some) * NOTE_LINE_PT + 14, gap_pt=6.0)

    # -- measuring --------------------------------------------------------------------------------------------

    def _wrapped(self, text: str, width_mm: float, font_pt: float) -> list[str]:
        width_em = width_mm / MM_PER_PT / font_pt
        return [text[span.start : span.end].strip() for span in self.tools.breaker(text, width_em)] or [""]

    def _lane_lines(self, text: str) -> int:
        return len(self._wrapped(text, self.sheet.lane_mm - 5, LANE_PT))

    def _extra_pt(self, item: Item, line: Span) -> float:
        """Height above the leading: for a pronunciation above its word, and for what the margin needs beside it."""
        lane = sum(self._lane_lines(text["text"]) for text in self._lane(item, line)) * LANE_LINE_PT
        say = SAY_PT if any(run["say"] for run in self._runs(item, line, remember=False)) else 0.0
        return max(say, lane - self.sheet.line_pt, 0.0)

    # -- views ------------------------------------------------------------------------------------------------

    def _page(self, page: Page, following: Page | None) -> PageView:
        number = page.pieces[0].item.key[0]
        segment = self.one.timing.segments[number]
        return PageView(
            pieces=[self._piece(piece) for piece in page.pieces],
            segment=segment.title,
            segment_time=clock_text(segment.timing.mean_s),
            following=self._first_words(following) if following else "",
            goes_on=following is not None,
        )

    def _first_words(self, page: Page) -> str:
        for piece in page.pieces:
            if piece.item.kind == "copy" and piece.lines:
                words = piece.item.text[piece.lines[0].start : piece.lines[0].end].split()
                return " ".join(words[:6])
        return page.pieces[0].item.text[:40]

    def _piece(self, piece: Piece) -> PieceView:
        item = piece.item
        view = PieceView(item.kind, item.height_pt, item.text, item.gap_pt)
        if item.kind == "copy":
            for line in piece.lines:
                height = self.sheet.line_pt + self._extra_pt(item, line)
                view.lines.append(LineView(self._runs(item, line, remember=True), height, self._lane(item, line)))
        elif item.kind == "note":
            view.notes = item.text.split("\n")
        elif item.kind == "heading":
            segment = self.one.timing.segments[item.key[0]]
            view.lane = [{"kind": "time", "text": clock_text(segment.timing.mean_s)}]
        return view

    def _runs(self, item: Item, line: Span, *, remember: bool) -> list[dict[str, Any]]:
        """The runs of one line; a pronunciation stands above its word once a segment."""
        number, index = item.key
        paragraph = self.one.script.segments[number].blocks[index]
        assert isinstance(paragraph, Paragraph)
        runs, at = [], 0
        for run in paragraph.runs:
            low, high = max(line.start, at), min(line.end, at + len(run.text))
            if low < high:
                key = (number, run.text)
                new = run.say is not None and key not in self.said_before
                if new and remember:
                    self.said_before.add(key)
                text = item.text[low:high].replace("\n", " ")
                runs.append({"text": text, "stress": run.stress, "say": run.say if new else None})
            at += len(run.text)
        return runs

    def _lane(self, item: Item, line: Span) -> list[dict[str, str]]:
        """Times at a paragraph's first line, and the cues that fall into this line, in words."""
        number, index = item.key
        paragraph = self.one.script.segments[number].blocks[index]
        assert isinstance(paragraph, Paragraph)
        lane = []
        if line.start <= len(item.text) - len(item.text.lstrip()):
            lane.append({"kind": "time", "text": self._times(item.key)})
        for inline in paragraph.cues:
            last = line.end >= len(item.text)
            if line.start <= inline.offset < line.end or (last and inline.offset >= line.end):
                lane.append({"kind": "cue", "text": self._cue_text(inline.cue)})
        return lane

    def _times(self, key: tuple[int, int]) -> str:
        block = self.times.get(key)
        if block is None:
            return ""
        to_go = self.tools.words("{time} to go").replace("{time}", clock_text(self.total_s - block.start_s))
        return f"{clock_text(block.start_s)} · {to_go}"

    def _cue_text(self, cue: Cue) -> str:
        kind = self.tools.words(cue.kind) if cue.known else cue.kind
        time = f" {clock_text(cue.duration_s)}" if cue.duration_s is not None else ""
        return f"{kind}{time}: {cue.text}" if cue.text else f"{kind}{time}"
