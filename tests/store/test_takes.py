"""Timed readings: take files, typed times, and the studio file that keeps what was learned."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from promptprep import faces
from promptprep.errors import BadCall, PromptprepError, UnreadableInput
from promptprep.spans import Span
from promptprep.store.learned import with_pace
from promptprep.store.studio import read_studio
from promptprep.store.take_times import read_take_times
from promptprep.store.takes import read_take, read_typed
from promptprep.store.templates import shipped

SEGMENT = {
    "id": "look", "planned_s": 30.0, "started_s": 2.0, "ended_s": 45.0, "from_s": 0.0, "to_s": 30.0,
    "held_s": 5.0, "fixed_s": 2.0, "whole": True, "text": "Look south as soon as it gets dark. " * 8,
}  # fmt: skip


def take_file(folder: Path, **changed: Any) -> Path:
    file = folder / "take.json"
    take = {"promptprep": 1, "take": 3, "language": "en", "reader": "ines", "segments": [{**SEGMENT, **changed}]}
    file.write_text(json.dumps(take), "utf-8")
    return file


@pytest.fixture
def studio(tmp_path: Path) -> Path:
    shutil.copytree(shipped("scripts_demo"), tmp_path / "demo")
    return tmp_path / "demo" / "studio.toml"


def test_holds_and_fixed_parts_are_no_reading_time(tmp_path: Path) -> None:
    (timed,) = read_take(take_file(tmp_path))
    assert timed.seconds == pytest.approx(45 - 2 - 5 - 2)
    assert (timed.language, timed.reader) == ("en", "ines")


@pytest.mark.parametrize("changed", [{"whole": False}, {"text": "  "}, {"ended_s": 9.0}])
def test_what_says_nothing_about_the_pace_is_passed_over(tmp_path: Path, changed: dict[str, Any]) -> None:
    assert read_take(take_file(tmp_path, **changed)) == []


@pytest.mark.parametrize(
    "text",
    ["", "[]", "{}", '{"promptprep": 2, "segments": []}', '{"promptprep": 1, "segments": [{}]}', "[" * 100_000,
     json.dumps({"promptprep": 1, "language": "en", "segments": [{**SEGMENT, "ended_s": 10**400}]})],
    ids=lambda text: text[:36],
)  # fmt: skip
def test_what_is_no_take_file(tmp_path: Path, text: str) -> None:
    file = tmp_path / "take.json"
    file.write_text(text, "utf-8")
    with pytest.raises(UnreadableInput):
        read_take(file)


def test_a_reader_that_is_no_name_is_none(tmp_path: Path) -> None:
    file = take_file(tmp_path)
    file.write_text(file.read_text("utf-8").replace('"ines"', '["ines"]'), "utf-8")
    (timed,) = read_take(file)
    assert timed.reader is None


@pytest.mark.parametrize(
    "lines", ["[1]", '[{"planned_s": 0, "at_s": %s}]' % ("9" * 400), "[]", "5"], ids=lambda x: x[:20]
)
def test_what_is_no_take_with_times(tmp_path: Path, lines: str) -> None:
    file = tmp_path / "take.json"
    file.write_text(f'{{"promptprep": 1, "lines": {lines}}}', "utf-8")
    with pytest.raises(UnreadableInput):
        read_take_times(file)


def test_a_typed_time_leaves_the_fixed_parts_out(studio: Path) -> None:
    script = faces.read_script(studio.parent / "sky.en.md")
    timed = read_typed(f"{studio.parent / 'sky.en.md'}=4:10")
    assert timed.seconds == pytest.approx(250 - script.fixed_s)
    look = read_typed(f"{studio.parent / 'sky.en.md'}#look=1:10")
    assert look.seconds == pytest.approx(69)
    assert "Saturn" in look.text
    assert "Betelgeuse" not in look.text


@pytest.mark.parametrize("wrong", ["=4:00", "{demo}=soon", "{demo}=0:05", "{demo}#nowhere=1:00"])
def test_what_is_no_typed_time(studio: Path, wrong: str) -> None:
    with pytest.raises(BadCall):
        read_typed(wrong.replace("{demo}", str(studio.parent / "sky.en.md")))


def test_a_learned_pace_is_kept_and_used_and_can_be_undone(studio: Path) -> None:
    before = studio.read_bytes()
    script = studio.parent / "sky.en.md"
    planned = faces.time_scripts([script])[0][1].timing.mean_s
    learned = faces.learn_reader([f"{script}=4:30", f"{script}#look=1:20"], studio)
    ((_, timing),) = faces.time_scripts([script])
    assert planned < timing.timing.mean_s < 275
    assert timing.timing.sd_s < faces.time_scripts([script], learned.kept)[0][1].timing.sd_s
    assert learned.kept is not None
    assert learned.kept.read_bytes() == before
    assert faces.learn_reader([f"{script}#look=1:20"], dry=True).file == studio


def test_learning_again_replaces_the_tables_and_nothing_else(studio: Path) -> None:
    script = studio.parent / "sky.en.md"
    for _ in range(2):
        learned = faces.learn_reader([f"{script}=4:30"], studio)
    text = studio.read_text("utf-8")
    assert text.count("[readers.ines.pace.en]") == 1
    original = (shipped("scripts_demo") / "studio.toml").read_text("utf-8")
    assert text.startswith(original.rstrip("\n"))
    assert read_studio(studio).readers["ines"].paces["en"].samples == 2
    assert with_pace(text, learned.paces[0], "ines") == text


def test_a_reader_whom_the_studio_does_not_have(studio: Path) -> None:
    before = studio.read_bytes()
    with pytest.raises(PromptprepError, match="no reader 'nobody'"):
        faces.learn_reader([f"{studio.parent / 'sky.en.md'}=4:30"], studio, "nobody")
    assert studio.read_bytes() == before


def test_a_take_that_is_given_twice_counts_once(studio: Path) -> None:
    """Under its own name, under a copy's, and with its keys in another order."""
    take = take_file(studio.parent)
    again = studio.parent / "take (copy).json"
    again.write_text(json.dumps(json.loads(take.read_text("utf-8")), sort_keys=True, indent=2), "utf-8")
    once = faces.learn_reader([str(take)], studio, dry=True)
    twice = faces.learn_reader([str(take), str(again), str(take)], studio, dry=True)
    assert twice.twice == (str(again), str(take))
    assert twice.paces == once.paces
    other = take_file(studio.parent, ended_s=46.5)
    assert faces.learn_reader([str(other), str(again)], studio, dry=True).paces[0].samples == 2


def test_a_take_that_an_earlier_call_learned_counts_once(studio: Path) -> None:
    take, other = take_file(studio.parent), studio.parent / "other.json"
    faces.learn_reader([str(take)], studio)
    before = studio.read_bytes()
    with pytest.raises(BadCall, match="already"):
        faces.learn_reader([str(take)], studio)
    assert studio.read_bytes() == before
    other.write_text(take_file(studio.parent, ended_s=46.5).read_text("utf-8"), "utf-8")
    take_file(studio.parent)
    again = faces.learn_reader([str(take), str(other)], studio)
    assert again.twice == (str(take),)
    assert again.paces[0].samples == 2
    assert len(read_studio(studio).readers["ines"].paces["en"].takes) == 2


def test_a_reading_is_learned_with_the_pronunciations_of_its_copy(studio: Path) -> None:
    """A word said at length takes its time from the copy, not from the reader's pace; the lexicon's words too."""
    copy = "We open at seven. {word} is the bright star over the ridge tonight, and it is red."
    file = studio.parent / "star.en.md"
    scales = []
    for word in ("Vega", '[Vega]{say="the great and shining old Vega of all the summer nights"}'):
        file.write_text(f'+++\nreader = "ines"\n+++\n\n{copy.format(word=word)}\n', "utf-8")
        scales.append(faces.learn_reader([f"{file}=0:07"], studio, dry=True).paces[0].scale)
    assert scales[1] < scales[0] * 0.98
    file.write_text(f'+++\nreader = "ines"\n+++\n\n{copy.format(word="Vega")}\n', "utf-8")
    lexicon = studio.parent / "lexicon.toml"
    lexicon.write_text('[en]\n"Vega" = "the great and shining old Vega of all the summer nights"\n', "utf-8")
    assert faces.learn_reader([f"{file}=0:07"], studio, dry=True).paces[0].scale == pytest.approx(scales[1])


def test_a_take_brings_its_pronunciations_along(tmp_path: Path) -> None:
    file = take_file(tmp_path)
    take = json.loads(file.read_text("utf-8"))
    whole = [s for s in take["segments"] if s["whole"]]
    whole[0]["said"] = [[0, 4, "GOOD"], [3, 99999, "far"], ["x"], [2, 1, "back"]]
    file.write_text(json.dumps(take), "utf-8")
    assert read_take(file)[0].said == ((Span(0, 4), "GOOD"),)
