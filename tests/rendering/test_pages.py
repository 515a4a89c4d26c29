"""Pages of generated scripts: where they end, and that nothing on them overlaps or leaves the sheet."""

from __future__ import annotations

import os
from itertools import groupby, pairwise, takewhile

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings

from promptprep.errors import BadCall
from promptprep.model.rig import Paper
from promptprep.rendering.page_items import Entry, Item, Row, groups_of
from promptprep.rendering.pages import Cursor, Filler, Page
from promptprep.rendering.paper import fill_pages
from promptprep.rendering.paper_items import Items, lane_drop_pt
from promptprep.rendering.sheets import sheet_for
from promptprep.spans import Span
from tests.rendering.paper_factory import papers, prepared, printing, script_texts

LINE_PT = 10.0
EXAMPLES = int(os.environ.get("PROMPTPREP_EXAMPLES", "20"))  # 300 and more by hand
SLOW = settings(
    max_examples=EXAMPLES,
    deadline=None,
    suppress_health_check=list(HealthCheck),
    derandomize=True,
    phases=(Phase.explicit, Phase.generate),  # shrinking takes minutes
)


def filled(made: tuple[str, str], paper: Paper) -> tuple[Items, list[Page]]:
    language, text = made
    items = Items(prepared(text, language), sheet_for(paper, cards=paper.cards), printing(language), "paper", None)
    return items, fill_pages(items)


@SLOW
@given(made=script_texts(), paper=papers)
def test_pages_of_generated_scripts(made: tuple[str, str], paper: Paper) -> None:
    try:
        items, pages = filled(made, paper)
    except BadCall as fault:
        assume(fault.code != "type-too-large")
        raise
    no_text_is_lost(items, pages)
    pages_end_at_sentences(items, pages)
    no_title_is_left_behind(pages)
    no_page_begins_with_the_end_of_a_segment(pages)
    all_stays_on_the_sheet(items, pages)
    lines_are_no_wider_than_the_copy(items, pages)


def no_text_is_lost(items: Items, pages: list[Page]) -> None:
    pieces = [piece for page in pages for piece in page.pieces if piece.item.kind == "copy"]
    for key, parts in groupby(pieces, key=lambda piece: piece.item.key):
        told = list(parts)
        assert [p.start for p in told] == [0, *(p.end for p in told[:-1])]
        assert told[-1].end == len(told[-1].item.text), key
        for piece in told:
            text = piece.item.text[piece.start : piece.end]
            shown = "".join(piece.item.text[row.row.span.start : row.row.span.end] for row in piece.rows)
            assert "".join(shown.split()) == "".join(text.split())
    assert {piece.item.key for piece in pieces} == set(items.copies)


def pages_end_at_sentences(items: Items, pages: list[Page]) -> None:
    for page in pages:
        last = page.pieces[-1]
        if last.item.kind != "copy" or last.end in last.item.sentences:
            continue
        begins = max([0, *(end for end in last.item.sentences if end <= last.end)])
        ends = next(end for end in last.item.sentences if end > last.end)
        rows = items.copies[last.item.key].rows(begins, ends)
        assert not fits_one_page(items, page, rows), "a page ends inside a sentence that fits on one page"


def fits_one_page(items: Items, page: Page, rows: list[Row]) -> bool:
    """Alone, or below the title that has to stand with it and what stands between them."""
    sheet, last = items.sheet, page.pieces[-1]
    filler = Filler(sheet.body_pt, sheet.line_pt, sheet.copy_em, lambda *_: rows, lane_drop_pt(sheet))
    above = list(takewhile(lambda piece: piece.item.kind != "copy", reversed(page.pieces[:-1])))[::-1]
    titled = last.start == 0 and any(piece.item.kind == "heading" for piece in above)
    at: Cursor | None = Cursor()
    for piece in above if titled else []:
        gap = piece.item.gap_pt if at != Cursor() else 0.0
        at = None if at is None else filler._after([piece.item.row], at, gap)
    return at is not None and filler._after(rows, at, last.item.gap_pt if titled else 0.0) is not None


def no_title_is_left_behind(pages: list[Page]) -> None:
    for page, following in pairwise(pages):
        last, first = page.pieces[-1].item, following.pieces[0].item
        assert not (last.kind == "heading" and first.key[0] == last.key[0]), "a title stands alone at the foot"


def no_page_begins_with_the_end_of_a_segment(pages: list[Page]) -> None:
    """A last cue stands with words, unless its whole sentence is cut or its cues fill pages."""
    for page, following in pairwise(pages):
        first, last = following.pieces[0], page.pieces[-1]
        if first.item.kind != "cues" or last.item.kind != "copy" or len(page.pieces) == 1:
            continue
        pieces = list(takewhile(lambda piece: piece.item.kind == "cues", following.pieces))
        closing = len(pieces) == len(following.pieces) or following.pieces[len(pieces)].item.kind == "heading"
        titled = any(piece.item.kind == "heading" for piece in page.pieces) and last.start == 0
        height = sum(entry.height_pt for piece in pieces for row in piece.rows for entry in row.row.entries)
        assert not closing or titled or height > 40, "a segment's last cue stands alone"


def all_stays_on_the_sheet(items: Items, pages: list[Page]) -> None:
    sheet, measure = items.sheet, items.tools.measure
    for page in pages:
        lane, copy = 0.0, 0.0
        for piece in page.pieces:
            for placed in piece.rows:
                assert placed.top_pt >= copy - 0.01
                copy = placed.top_pt + placed.row.height_pt
                for entry, top in zip(placed.row.entries, placed.entry_tops_pt, strict=True):
                    assert top >= lane - 0.01
                    lane = top + entry.height_pt
                    wide = max(measure.width_pt(line, sheet.small_pt) for line in entry.lines)
                    assert wide <= (sheet.lane_mm - 5) * 72 / 25.4
        assert max(lane, copy) <= sheet.body_pt + 0.01


def lines_are_no_wider_than_the_copy(items: Items, pages: list[Page]) -> None:
    for piece in (piece for page in pages for piece in page.pieces if piece.item.kind == "copy"):
        copy = items.copies[piece.item.key]
        for placed in piece.rows:
            span = placed.row.span
            assert copy.x_pt(span, span.end) <= items.sheet.copy_em * items.sheet.font_pt * 1.002 + 0.5


# -- the filler alone, on lines of one letter -------------------------------------------------------------------


def rows_of(item: Item, start: int, end: int) -> list[Row]:
    """Ten characters a line."""
    return [Row(LINE_PT, span=Span(at, min(at + 10, end))) for at in range(start, end, 10)]


def fill(items: list[Item], lines: int) -> list[Page]:
    return Filler(lines * LINE_PT, LINE_PT, 10, rows_of).fill(items)


def copy(*lengths: int, key: tuple[int, int] = (0, 0), gap: float = 0.0) -> Item:
    ends, at = [], 0
    for length in lengths:
        at += length
        ends.append(at)
    return Item("copy", "x" * at, key, sentences=tuple(ends), gap_pt=gap)


def shape(pages: list[Page]) -> list[list[tuple[str, int, int]]]:
    return [[(p.item.kind, p.start, p.end) for p in page.pieces] for page in pages]


def test_a_page_ends_with_a_sentence() -> None:
    assert shape(fill([copy(30, 40, 30)], 8)) == [[("copy", 0, 70)], [("copy", 70, 100)]]


def test_a_sentence_over_a_page_is_cut_between_lines() -> None:
    assert shape(fill([copy(250)], 10)) == [[("copy", 0, 100)], [("copy", 100, 200)], [("copy", 200, 250)]]


def test_a_title_goes_over_with_its_first_sentence() -> None:
    title = Item("heading", "T", (1, -1), Row(LINE_PT))
    assert shape(fill([copy(60), title, copy(40, key=(1, 0))], 10)) == [
        [("copy", 0, 60)],
        [("heading", 0, 1), ("copy", 0, 40)],
    ]


def test_a_title_keeps_a_part_of_a_sentence_that_fits_nowhere() -> None:
    title = Item("heading", "T", (0, -1), Row(LINE_PT))
    assert shape(fill([title, copy(150)], 10)) == [[("heading", 0, 1), ("copy", 0, 90)], [("copy", 90, 150)]]


def test_a_short_rest_of_a_page_is_left_to_end_with_a_paragraph() -> None:
    assert shape(fill([copy(180), copy(10, 30, key=(0, 1))], 20)) == [[("copy", 0, 180)], [("copy", 0, 40)]]


def test_a_third_of_a_page_is_not_left_empty() -> None:
    pages = fill([copy(130), copy(20, 70, key=(0, 1))], 20)
    assert shape(pages)[0] == [("copy", 0, 130), ("copy", 0, 20)]


def closing(height: float, *, key: tuple[int, int] = (0, 9)) -> Item:
    return Item("cues", "", key, Row(0.0, (Entry("cue", ("stop",), height),)))


def test_a_segment_s_last_cue_stands_with_its_last_sentence() -> None:
    pages = fill([copy(30, 40, 30), closing(15.0)], 10)
    assert shape(pages) == [[("copy", 0, 70)], [("copy", 70, 100), ("cues", 0, 0)]]


def test_a_paragraph_of_one_sentence_goes_over_with_its_last_cue() -> None:
    pages = fill([copy(60), copy(40, key=(0, 1)), closing(15.0)], 10)
    assert shape(pages) == [[("copy", 0, 60)], [("copy", 0, 40), ("cues", 0, 0)]]


def test_a_version_beside_stands_with_the_last_sentence_before_it() -> None:
    beside = Item("beside", "y", (0, 0), Row(2 * LINE_PT))
    pages = fill([copy(30, 40, 30), beside, copy(20, key=(0, 1))], 10)
    assert shape(pages) == [[("copy", 0, 70)], [("copy", 70, 100), ("beside", 0, 1), ("copy", 0, 20)]]


def test_cues_before_a_note_are_no_end_of_a_segment() -> None:
    note = Item("note", "n", (0, 2), Row(2 * LINE_PT))
    assert [len(group.tail) for group in groups_of([copy(30), closing(15.0), note])] == [0, 0]
    assert [len(group.tail) for group in groups_of([copy(30), closing(15.0)])] == [1]


def test_a_page_that_is_all_cue_does_not_hang() -> None:
    items = [copy(30), closing(95.0), Item("heading", "T", (1, -1), Row(LINE_PT)), copy(30, key=(1, 0)), closing(99.0)]
    kinds = [piece.item.kind for page in fill(items, 10) for piece in page.pieces]
    assert kinds == ["copy", "cues", "heading", "copy", "cues"]


def test_copy_waits_only_for_a_lane_a_line_behind() -> None:
    cue = Entry("cue", ("cue",), 15.0)
    first, second = (Item("cues", "", (0, n), Row(LINE_PT, (cue,))) for n in (0, 1))
    pages = fill([first, second], 20)
    tops = [placed.top_pt for piece in pages[0].pieces for placed in piece.rows]
    lanes = [top for piece in pages[0].pieces for placed in piece.rows for top in placed.entry_tops_pt]
    assert tops == [0.0, 10.0]  # the lane is 5 behind: less than a line, so the copy does not wait
    assert lanes == [0.0, 15.0]


def test_a_clear_row_starts_below_the_lane() -> None:
    cues = Item("cues", "", (0, 0), Row(0.0, (Entry("cue", ("a",), 35.0),)))
    title = Item("heading", "T", (0, 1), Row(LINE_PT, clear=True))
    placed = fill([cues, title], 20)[0].pieces[1].rows[0]
    assert placed.top_pt == 35.0


@pytest.mark.parametrize("sentences", [1, 2000])
def test_a_long_paragraph_is_broken_a_page_at_a_time(sentences: int) -> None:
    asked: list[int] = []

    def rows(item: Item, start: int, end: int) -> list[Row]:
        asked.append(end - start)
        return rows_of(item, start, end)

    item = copy(*[100_000 // sentences] * sentences)
    pages = Filler(40 * LINE_PT, LINE_PT, 10, rows).fill([item])
    assert pages[-1].pieces[-1].end == 100_000
    assert sum(asked) < 40 * 100_000  # a bounded look ahead for each page, whatever the paragraph's length
