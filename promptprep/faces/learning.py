"""The face that learns a reader's pace and keeps it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from promptprep.engines.load import engines
from promptprep.errors import BadCall
from promptprep.faces.tools import known_language, named, tools
from promptprep.model.rig import Reader
from promptprep.model.timing import Pace
from promptprep.pipeline.scripts import speaker
from promptprep.store.takes import Timed


@dataclass(frozen=True, slots=True)
class Learned:
    """A reader's new paces, the studio file that keeps them, and where that file as it was before is kept.

    `twice` names readings that had been given before in the same call: they count once.
    """

    reader: str
    paces: tuple[Pace, ...]
    kept: Path | None
    file: Path = Path("studio.toml")
    twice: tuple[str, ...] = ()


def learn_reader(
    readings: Sequence[str], studio_file: Path | None = None, reader: str | None = None, *, dry: bool = False
) -> Learned:
    """Learns a reader's pace in each language of the readings: take files, and times such as "sky.en.md=3:12".

    It goes into the studio file unless `dry`: the one named, else the nearest above a reading. Raises `BadCall` where
    the reader is not known or readings are absurd.
    """
    from promptprep.store.studio import read_studio

    timed, twice = _each_once(readings)
    if not timed:
        raise BadCall("no-samples", "no whole segment was read in these takes", "read at least one segment through")
    studio_file = studio_file or _nearest(readings)
    studio = read_studio(studio_file)
    name = reader or next((one.reader for one in timed if one.reader), None)
    if name is None:
        raise BadCall("no-reader", "nothing says who was reading", "name them with --reader")
    who = named(studio.readers, name, "reader")
    paces = tuple(_learned(who, language, timed) for language in sorted({one.language for one in timed}))
    return Learned(name, paces, None if dry else _keep(studio_file, paces, name), studio_file, twice)


def _each_once(readings: Sequence[str]) -> tuple[list[Timed], tuple[str, ...]]:
    """What was timed, and the readings that say what another said before: the same take under another name too."""
    from promptprep.store.takes import read_take, read_typed

    timed: dict[tuple[tuple[str, float, str, str | None], ...], list[Timed]] = {}
    twice = []
    for reading in readings:
        found = [read_typed(reading)] if "=" in reading else read_take(Path(reading))
        said = tuple((one.text, one.seconds, one.language, one.reader) for one in found)
        if said and said in timed:
            twice.append(reading)
        timed.setdefault(said, found)
    return [one for found in timed.values() for one in found], tuple(twice)


def _nearest(readings: Sequence[str]) -> Path:
    """The studio file nearest above the first reading that has one, else the one of this folder."""
    from promptprep.store.studio import find_studio

    folders = dict.fromkeys(Path(reading.split("=")[0].split("#")[0]).parent for reading in readings)
    found = (find_studio(folder) for folder in folders if folder.is_dir())
    return next((file for file in found if file), Path("studio.toml"))


def _learned(who: Reader, language: str, timed: Sequence[Timed]) -> Pace:
    from promptprep.timing.pace import learn

    samples = [(one.text, one.seconds) for one in timed if one.language == language]
    prior, today = who.paces.get(language), datetime.now().astimezone().date().isoformat()
    return learn(samples, known_language(language), engines(), speaker(language, tools()), prior, who.id, today)


def _keep(file: Path, paces: Sequence[Pace], reader: str) -> Path | None:
    from promptprep.store.learned import keep_paces

    return keep_paces(file, paces, reader)
