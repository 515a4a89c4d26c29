"""The face that learns a reader's pace and keeps it."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from promptprep.engines.load import engines
from promptprep.errors import BadCall
from promptprep.faces.scripts import in_studio, studio_for
from promptprep.faces.tools import known_language, named, tools
from promptprep.model.rig import Reader
from promptprep.model.script import Script
from promptprep.model.timing import Pace
from promptprep.pipeline.scripts import speaker
from promptprep.store.takes import Timed


@dataclass(frozen=True, slots=True)
class Learned:
    """A reader's new paces, the studio file that keeps them, and where that file as it was before is kept.

    `twice` names readings that had been given before, in the same call or (takes) in an earlier one: they count once.
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

    once, twice = _each_once(readings, studio_file)
    if not any(once.values()):
        raise BadCall("no-samples", "no whole segment was read in these takes", "read at least one segment through")
    studio_file = studio_file or _nearest(readings)
    studio = read_studio(studio_file)
    name = reader or next((one.reader for timed in once.values() for one in timed if one.reader), None)
    if name is None:
        raise BadCall("no-reader", "nothing says who was reading", "name them with --reader")
    who = named(studio.readers, name, "reader")
    new, before = _unlearned(once, who)
    languages = sorted({one.language for timed in new.values() for one in timed})
    paces = tuple(_learned(who, language, new) for language in languages)
    kept = None if dry else _keep(studio_file, paces, name)
    return Learned(name, paces, kept, studio_file, (*twice, *before))


def _each_once(
    readings: Sequence[str], studio_file: Path | None
) -> tuple[dict[tuple[str, str], list[Timed]], tuple[str, ...]]:
    """What was timed by (reading, its digest if it is a take), and the readings that say what another said before:
    the same take under another name too."""
    from promptprep.store.takes import read_take, read_typed

    def completed(script: Script) -> Script:
        return in_studio(script, studio_for([Path(script.file or ".")], studio_file), strict=False)

    timed: dict[tuple[str, str], list[Timed]] = {}
    seen: set[str] = set()
    twice = []
    for reading in readings:
        typed = "=" in reading
        found = [read_typed(reading, completed)] if typed else read_take(Path(reading))
        digest = _digest(found)
        if found and digest in seen:
            twice.append(reading)
            continue
        seen.add(digest)
        timed[reading, "" if typed else digest] = found
    return timed, tuple(twice)


def _digest(found: Sequence[Timed]) -> str:
    """Ten hex digits that stand for what was timed, whatever file it stands in."""
    said = [(one.text, one.seconds, one.language, one.reader) for one in found]
    return hashlib.sha256(repr(said).encode("utf-8", "surrogatepass")).hexdigest()[:10]


def _unlearned(
    once: Mapping[tuple[str, str], list[Timed]], who: Reader
) -> tuple[dict[tuple[str, str], list[Timed]], list[str]]:
    """The readings that this reader's paces do not hold yet, and the takes that they do. Raises `BadCall` for none."""
    known = {take for pace in who.paces.values() for take in pace.takes}
    before = [reading for reading, digest in once if digest in known]
    if len(before) == len(once):
        hint = "give a new take; to begin afresh, take the pace's tables out of the studio file"
        raise BadCall("learned-before", f"{who.id}'s pace holds {', '.join(before)} already", hint)
    return {key: timed for key, timed in once.items() if key[1] not in known}, before


def _nearest(readings: Sequence[str]) -> Path:
    """The studio file nearest above the first reading that has one, else the one of this folder."""
    from promptprep.store.studio import find_studio

    folders = dict.fromkeys(Path(reading.split("=")[0].split("#")[0]).parent for reading in readings)
    found = (find_studio(folder) for folder in folders if folder.is_dir())
    return next((file for file in found if file), Path("studio.toml"))


def _learned(who: Reader, language: str, new: Mapping[tuple[str, str], list[Timed]]) -> Pace:
    from promptprep.timing.pace import learn

    mine = {key: [one for one in timed if one.language == language] for key, timed in new.items()}
    samples = [(one.text, one.seconds, one.said) for timed in mine.values() for one in timed]
    prior, today = who.paces.get(language), datetime.now().astimezone().date().isoformat()
    pace = learn(samples, known_language(language), engines(), speaker(language, tools()), prior, who.id, today)
    takes = [digest for (_, digest), timed in mine.items() if digest and timed]
    return replace(pace, takes=(*(prior.takes if prior else ()), *takes))


def _keep(file: Path, paces: Sequence[Pace], reader: str) -> Path | None:
    from promptprep.store.learned import keep_paces

    return keep_paces(file, paces, reader)
