"""Every text of the screen page and of the session's sheets is in every catalogue, whole and printable."""

from __future__ import annotations

import ast
import re
from functools import cache

import pytest

from promptprep import faces
from promptprep.model.language import FIRST_CLASS
from promptprep.model.script import CUE_KINDS
from promptprep.model.sightline import quantity_name
from promptprep.rendering import call_sheet, crew_positions, lists
from promptprep.rendering.screen_words import ENGLISH, READER, screen_words
from promptprep.session import repair, spare
from promptprep.store.catalogues import FOLDER
from promptprep.store.limits import default_limits
from promptprep.store.templates import shipped

OTHERS = [tag for tag in FIRST_CLASS if tag != "en"]
_ASKED = re.compile(r'(?:_|say)\(\s*"([^"]+)"|"((?:ends|must end|from) [^"]*\{time\}[^"]*)"')


def session_texts() -> set[str]:
    folder = shipped("templates") / "session"
    modules = ("session_rows", "session_sheets", "call_sheet", "lists")
    files = [*folder.iterdir(), *(FOLDER.parent.parent / "rendering" / f"{name}.py" for name in modules)]
    texts = {a or b for file in files for a, b in _ASKED.findall(file.read_text("utf-8"))}
    heads = (call_sheet.HEAD, lists.SHOT_HEAD, lists.GRAPHIC_HEAD, lists.CLIP_HEAD, lists.SOUND_HEAD)
    texts |= {re.sub("_s$", " (s)", name).replace("_", " ") for head in heads for name in head}
    texts |= {v for name, v in vars(repair).items() if name.isupper()} | {spare.RULE, *call_sheet.CAUTIONS}
    return texts | {*lists.NAMELESS, *CUE_KINDS, *crew_positions.POSITIONS, crew_positions.ALL, "setup", "break"}


@cache
def catalogue(language: str) -> dict[str, str]:
    from babel.messages.pofile import read_po

    with (FOLDER / language / "LC_MESSAGES" / "promptprep.po").open("rb") as stream:
        return {str(m.id): str(m.string) for m in read_po(stream, locale=language) if m.id}


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("texts", [set(ENGLISH.values()), session_texts()], ids=["screen", "session"])
def test_each_text_is_there_with_its_fields(language: str, texts: set[str]) -> None:
    assert len(texts) > 80
    known = catalogue(language)
    assert texts <= set(known), texts - set(known)
    for text in texts:
        assert known[text].strip() == known[text] != "", text
        assert sorted(re.findall(r"\{\w+\}", known[text])) == sorted(re.findall(r"\{\w+\}", text)), text
        assert not faces.tools().engines.shaper.missing(known[text], language), known[text]


@pytest.mark.parametrize("language", OTHERS)
def test_catalogues_are_sorted_with_each_text_once(language: str) -> None:
    file = FOLDER / language / "LC_MESSAGES" / "promptprep.po"
    texts = re.findall(r'^msgid "(.+)"$', file.read_text("utf-8"), re.MULTILINE)
    assert texts == sorted(set(texts))


def test_no_text_is_kept_that_nothing_asks_for() -> None:
    package = FOLDER.parent.parent
    trees = (ast.parse(file.read_text("utf-8")) for file in package.rglob("*.py"))
    known = {node.value for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Constant)}
    for file in (file for kind in ("html", "svg") for file in shipped("templates").rglob(f"*.{kind}")):
        known |= set(re.findall(r'\w\("([^"]+)"', file.read_text("utf-8")))
    known |= session_texts() | {quantity_name(limit.quantity) for limit in default_limits()}
    known |= {quantity_name("modulation_at_eye")}
    assert set(catalogue("fr")) <= known, set(catalogue("fr")) - known


def test_the_reader_and_the_operator_may_read_different_languages() -> None:
    words = screen_words(faces.tools().words, "ja", "fr")
    assert words.language == "fr"
    assert words.texts["guest"] == "ゲスト"
    assert words.texts["segments"] == "Segments"
    assert words.texts["do_take"] == "commencer une prise, la terminer"
    assert set(READER) < set(ENGLISH)
