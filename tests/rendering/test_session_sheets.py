"""Sheets of a session: everything on them stands on the page, every cue has its tick, odd titles do no harm."""

from __future__ import annotations

import io
import shutil

import pdfplumber
import pytest

from promptprep.faces import sessions
from promptprep.store.templates import shipped

TITLE = 'A "quoted" <b>title</b> & more'


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    folder = tmp_path_factory.mktemp("session")
    shutil.copytree(shipped("scripts_demo"), folder / "demo")
    file = folder / "demo" / "session.toml"
    items = "".join(f'[[items]]\nscript = "{name}.md"\n' for name in ("sky.ar", "sky.ja", "dome.en"))
    file.write_text(f'title = \'{TITLE}\'\nstart = "18:30"\nend = "18:37"\n{items}', "utf-8")
    session = sessions.plan_session(file)
    return {p.name: p.read_bytes() for p in sessions.write_session(session, file, folder / "out")}


def words_of(pdf: bytes) -> list[tuple[float, float, str]]:
    """(left and right edge as fractions of the page's width, text) of each word."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return [
            (float(w["x0"] / page.width), float(w["x1"] / page.width), w["text"])
            for page in document.pages
            for w in page.extract_words()
        ]


def test_nothing_runs_off_a_page(sheets: dict[str, bytes]) -> None:
    for name in [n for n in sheets if n.endswith(".pdf")]:
        words = words_of(sheets[name])
        assert len(words) > 20, name
        assert all(x0 > 0.02 and x1 < 0.98 for x0, x1, _ in words), name


def test_odd_titles_stand_as_they_were_written(sheets: dict[str, bytes]) -> None:
    html = sheets["crew.all.html"].decode("utf-8")
    assert "<b>title" not in html
    text = " ".join(word for _, _, word in words_of(sheets["crew.all.pdf"]))
    assert f"{TITLE} – crew sheet: all" in text


def test_each_cue_has_a_row_and_a_tick(sheets: dict[str, bytes]) -> None:
    rows = sheets["crew.all.csv"].decode("utf-8-sig").splitlines()[1:]
    codes = list(dict.fromkeys(row.split(",")[0] for row in rows))
    html = sheets["crew.all.html"].decode("utf-8")
    assert html.count('class="tick"') == len(codes)
    assert all(f'<td class="cue">{code}</td>' in html for code in codes)


def test_right_to_left_copy_is_marked_and_shown(sheets: dict[str, bytes]) -> None:
    html = sheets["crew.all.html"].decode("utf-8")
    assert 'lang="ar" dir="rtl"' in html
    assert 'lang="ja" dir="ltr"' in html
    assert "@font-face" in html
