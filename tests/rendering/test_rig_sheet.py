"""A rig's sheet: lengths in both systems, a chart at its real size, a bar that shows a printer's scaling."""

from __future__ import annotations

import io
from functools import lru_cache
from pathlib import Path

import pdfplumber
import pytest

from promptprep import faces
from promptprep.model.sightline import Sightline
from promptprep.rendering.rig_sheet import BAR_MM, TapeRow, chart_lines, rig_sheet_pdf, tape_rows
from promptprep.rendering.sheets import CAP_EM
from promptprep.store.templates import shipped
from promptprep.units import MM_PER_PT
from tests.rendering.paper_factory import printing

STUDIO_FILE = Path(shipped("scripts_demo")) / "studio.toml"


@lru_cache(maxsize=4)
def sight(rig: str) -> Sightline:
    return faces.sightlines(STUDIO_FILE, rig=rig)[0][1]


@lru_cache(maxsize=4)
def printed(rig: str) -> bytes:
    return rig_sheet_pdf(sight(rig), faces.studio_for([STUDIO_FILE.parent]), printing("en"))


def test_lengths_are_those_of_the_studio_file() -> None:
    lengths = {row.name: row.metric for row in tape_rows(sight("hall"))}
    assert lengths["Eye to the glass"] == "2.50 m"
    assert lengths["Glass to the picture"] == "280 mm"
    assert lengths["Eye to text, by the glass"] == "2.78 m"
    assert lengths["Eye to the lens"] == "2.75 m"
    assert "Glass to the picture" not in {row.name for row in tape_rows(sight("desk"))}


@pytest.mark.parametrize(
    ("mm", "text"), [(2500, "8 ft 2.5 in"), (1828.8, "6 ft 0 in"), (280, "11.02 in"), (304.8, "1 ft 0 in")]
)
def test_feet_and_inches(mm: float, text: str) -> None:
    """1 in is 25.4 mm and 1 ft is 12 in, exactly (the international yard of 1959; from memory)."""
    assert TapeRow("", mm).imperial == text


@pytest.mark.parametrize("rig", ["hall", "desk"])
def test_the_chart_has_its_angles_at_the_rig_s_distance(rig: str) -> None:
    """ISO 9241-3's angle by the small-angle rule of NUREG-0700 rev 2 section 1.3.1-4: H = 6.283 * D * MA / 21600."""
    lines = chart_lines(sight(rig), 180, printing("en").measure.width_pt)
    assert [line.arcmin for line in lines] == [31, 24, 22, 20, 16]
    for line in lines:
        assert line.cap_mm == pytest.approx(6.283 * sight(rig).optical_path_mm * line.arcmin / 21600, rel=2e-3)
        assert line.font_pt * CAP_EM * MM_PER_PT == pytest.approx(line.cap_mm)


def test_chart_and_bar_are_printed_at_their_size() -> None:
    with pdfplumber.open(io.BytesIO(printed("hall"))) as pdf:
        page = pdf.pages[-1]
        sizes = {char["size"] for char in page.chars}
        bars = [rect for rect in page.rects if abs(rect["width"] * MM_PER_PT - BAR_MM) < 0.3]
    wanted = chart_lines(sight("hall"), 180, printing("en").measure.width_pt)
    assert all(min(abs(size - line.font_pt) for size in sizes) < 0.02 for line in wanted)
    assert bars


def test_the_sheet_shows_cautions_and_settings() -> None:
    with pdfplumber.open(io.BytesIO(printed("hall"))) as pdf:
        text = " ".join((page.extract_text() or "").replace("\n", " ") for page in pdf.pages)
    assert "tempered or laminated" in text
    assert "Local codes" in text
    assert "flat below the glass" in text
    assert printed("hall") == rig_sheet_pdf(sight("hall"), faces.studio_for([STUDIO_FILE.parent]), printing("en"))
