"""The crew sheet: every cue on it once, numbered as on the paper copy, safe in a spreadsheet."""

from __future__ import annotations

import csv
import io

import pdfplumber

from promptprep.model.rig import Studio
from promptprep.rendering.crew import crew_csv, crew_pdf, crew_rows
from promptprep.rendering.paper import paper_html
from tests.rendering.paper_factory import demo, prepared, printing

STUDIO = Studio(title="Quillhorn Observatory")


def test_every_cue_is_on_the_sheet_once() -> None:
    for language in ("en", "ar", "ja"):
        one = demo(language)
        told = [cue for row in crew_rows(one) for cue in row.actions]
        assert told == [cue for segment in one.script.segments for cue in segment.cues]


def test_cues_at_one_point_are_one_number_on_both_sheets() -> None:
    one = prepared("[vision: camera 1]\n[lights: dome, dim red]\n\nGood evening. [pause 1] And on.", "en")
    rows = crew_rows(one)
    assert [row.number for row in rows] == ["1", "2"]
    assert [len(row.actions) for row in rows] == [2, 1]
    assert rows[1].after_words == "Good evening."
    html = paper_html(one, STUDIO, printing("en"))
    assert html.count("<b>1</b>") == 1
    assert html.count("<b>2</b>") == 1


def test_an_unknown_cue_is_told_as_it_was_written() -> None:
    one = prepared("Copy.\n\n[zoom: in on the ring]\n\nMore.", "en")
    with pdfplumber.open(io.BytesIO(crew_pdf(one, STUDIO, printing("en")))) as pdf:
        text = pdf.pages[0].extract_text()
    assert "unknown" in text
    assert "zoom: in on" in text


def test_a_spreadsheet_runs_no_cell() -> None:
    one = prepared('Copy.\n\n[graphic: =HYPERLINK("http://x.example")]\n\nMore.', "en")
    rows = list(csv.DictReader(io.StringIO(crew_csv(one))))
    assert rows[0]["action"].startswith("'=")
    assert rows[0]["position"] == "graphic"


def test_rows_of_a_segment_stand_with_its_title() -> None:
    source = "\n\n".join(f"# Part {n}\n\nCopy here.\n\n[vision: camera {n}]" for n in range(40))
    with pdfplumber.open(io.BytesIO(crew_pdf(prepared(source, "en"), STUDIO, printing("en")))) as pdf:
        assert len(pdf.pages) > 1
        for page in pdf.pages:
            lines = [line for line in page.extract_text().splitlines() if line.strip()]
            assert not lines[-2].startswith("Part "), "a segment's title stands alone at the foot"


def test_a_script_without_cues_has_an_empty_sheet() -> None:
    assert crew_rows(prepared("Good evening.", "en")) == []


def test_numbers_kept_in_remarks_are_the_sheets() -> None:
    one = prepared("<!-- cue 12.5 -->\n[vision: camera 1]\n\nGood evening.\n\n[sound: up]\n\nBye.", "en")
    assert [row.number for row in crew_rows(one)] == ["12.5", "13"]
