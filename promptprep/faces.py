"""The public faces: values in, values out, with this machine's engines and the shipped data behind them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import TypeVar

from promptprep.engines.fonts import BundledFonts
from promptprep.engines.load import engines
from promptprep.errors import BadCall, UnreadableInput
from promptprep.model.finding import Finding
from promptprep.model.language import LanguageData
from promptprep.model.ports import Tools
from promptprep.model.prepared import Prepared
from promptprep.model.rig import PAPER_VARIANTS, Reader, Studio
from promptprep.model.script import Script
from promptprep.model.sightline import Limit, Sightline
from promptprep.model.timing import Pace, ScriptTiming, Timing
from promptprep.pipeline import speaker
from promptprep.store.catalogues import words
from promptprep.store.languages import language_data
from promptprep.store.takes import Timed
from promptprep.store.templates import shipped

Named = TypeVar("Named")


@dataclass(frozen=True, slots=True)
class Report:
    """What `prepare` did: everything it knows, and the files it wrote (safe copies of the user's own come last)."""

    prepared: Prepared
    files: tuple[Path, ...]

    @property
    def fixes(self) -> int:
        """How many findings say `fix`."""
        return sum(f.level == "fix" for one in self.prepared.scripts for f in one.findings)


@dataclass(frozen=True, slots=True)
class Learned:
    """A reader's new paces, and where the studio file as it was before is kept."""

    reader: str
    paces: tuple[Pace, ...]
    kept: Path | None


@lru_cache(maxsize=1)
def tools() -> Tools:
    """The engines and data of this process. Cheap: what is native loads at first use."""
    return Tools(engines(), BundledFonts(), known_language, _limits, words)


@lru_cache(maxsize=64)
def known_language(tag: str) -> LanguageData:
    """The data of a language. Raises `UnknownLanguage` where there are neither data nor a voice to time it by."""
    data = language_data(tag)
    if not data.tables:
        engines().phonemes.counts(["a"], tag)
    return data


def _limits(studio: Studio) -> tuple[Limit, ...]:
    from promptprep.store.limits import limits_of

    return limits_of(studio)


def spoken_form(text: str, language: str) -> str:
    """What is said: "$3.5m" -> "three point five million dollars".

    `language` is a BCP 47 tag. What is not understood passes through. Raises `UnknownLanguage`.
    """
    return speaker(language, tools())(text, ()).text


def time_text(text: str, language: str, pace: Pace | None = None) -> Timing:
    """Predicted seconds to read `text` aloud: `.mean_s`, and `.low_s` to `.high_s` holding 80 % of readings.

    Without `pace` a reader whom nobody has timed. An empty text takes 0 s. Raises `UnknownLanguage`.
    """
    from promptprep.timing.pace import default_pace
    from promptprep.timing.time import time_text as timed

    data = known_language(language)
    return timed(text, data, pace or default_pace(data), engines(), speaker(language, tools()))


def learn_pace(samples: Iterable[tuple[str, float]], language: str) -> Pace:
    """A reader's pace from timed readings: pairs of (text as read, seconds from first to last word).

    Few samples move the default only a little. Raises `BadCall` for a length that nobody reads in.
    """
    from promptprep.timing.pace import learn

    return learn(samples, known_language(language), engines(), speaker(language, tools()))


def break_text(text: str, language: str, width_em: float) -> list[str]:
    """Lines no wider than `width_em` (ems of the bundled font), broken at sense groups.

    Joined without white space they are the text. An empty line parts paragraphs; a single line feed is a blank.
    A word wider than the column is cut. Raises `BadGeometry` unless the width is positive and finite.
    """
    from promptprep.breaking.text import break_plain_text

    return break_plain_text(text, width_em, known_language(language), engines())


def check_text(text: str, language: str) -> list[Finding]:
    """Findings in a script's text; `start` and `end` are offsets in `text`. Raises `UnknownLanguage`."""
    from promptprep.parsing.parse import parse_script
    from promptprep.pipeline import check_copy

    return check_copy(parse_script(text, language=language), tools())


def difficulty(text: str, language: str) -> float:
    """How hard a passage is to read aloud, 0 easy to 100 hard. An empty text is 0. Raises `UnknownLanguage`."""
    from promptprep.pipeline import difficulty_of

    return difficulty_of(text, language, tools())


def read_script(path: str | Path) -> Script:
    """The script in a file (.md .txt .docx .odt .rtf). Raises `UnreadableInput` with place and hint."""
    from promptprep.store.scripts import read_script_file

    return read_script_file(Path(path))


def studio_for(paths: Sequence[Path], studio_file: Path | None = None) -> Studio:
    """The studio file named, else the `studio.toml` nearest above the first path, with the pronunciations beside it."""
    from promptprep.store.lexicon import read_lexicons
    from promptprep.store.studio import find_studio, read_studio

    folder = paths[0] if paths and paths[0].is_dir() else paths[0].parent if paths else Path.cwd()
    file = studio_file or (find_studio(folder) if folder.is_dir() else None)
    studio = read_studio(file) if file else Studio()
    lexicon = {tag: dict(said) for tag, said in studio.lexicon.items()}
    for tag, said in read_lexicons(file.parent if file else folder).items():
        lexicon.setdefault(tag, {}).update(said)
    return replace(studio, lexicon=lexicon)


def load_scripts(paths: Sequence[Path], studio: Studio, *, strict: bool = True) -> list[Script]:
    """Scripts at the paths, pronunciations put in. With `strict` their readers and rigs must be the studio's."""
    from promptprep.parsing.lexicon import with_lexicon
    from promptprep.store.scripts import check_names, read_scripts

    if not paths:
        raise BadCall("no-input", "no script is named", "name a script or a folder of scripts")
    scripts = read_scripts(paths)
    for script in scripts if strict else ():
        check_names(script, studio)
    return [with_lexicon(s, studio.lexicon.get(s.language.split("-")[0], {})) for s in scripts]


def time_scripts(paths: Sequence[Path], studio_file: Path | None = None) -> list[tuple[Script, ScriptTiming]]:
    """Each script at the paths with its running time."""
    from promptprep.pipeline import time_one

    studio = studio_for(paths, studio_file)
    return [(script, time_one(script, studio, tools())) for script in load_scripts(paths, studio)]


def check_scripts(paths: Sequence[Path], studio_file: Path | None = None) -> list[tuple[Script, list[Finding]]]:
    """Each script at the paths with its findings, in the order of its text."""
    from promptprep.pipeline import check_one

    studio = studio_for(paths, studio_file)
    scripts = load_scripts(paths, studio, strict=False)
    return [(script, list(check_one(script, studio, tools()))) for script in scripts]


def suggestions(checked: Sequence[tuple[Script, Sequence[Finding]]]) -> str:
    """The safe rewordings of findings, as one patch in unified form."""
    from promptprep.checking.suggest import patch

    return "".join(patch(script, findings) for script, findings in checked)


def prepare(
    paths: Iterable[str | Path],
    out: str | Path,
    studio_file: str | Path | None = None,
    *,
    stills: bool = False,
    paper: Sequence[str] = (),
) -> Report:
    """Writes screen copy, paper copy, crew sheet and captions of every script, and the report, to `out`.

    `paper` names further printed copies beside those that the studio wants: "rehearsal", "cards", "low-ink".
    All files are written or none. The same input gives the same bytes. Raises `UnreadableInput`, `OutputFault`.
    """
    from promptprep.outputs import render_all
    from promptprep.pipeline import prepare_all
    from promptprep.store.files import write_outputs
    from promptprep.store.logo import logo_url

    where = [Path(p) for p in paths]
    studio = _printing(studio_for(where, Path(studio_file) if studio_file else None), paper)
    logo = logo_url(studio)
    prepared = prepare_all(load_scripts(where, studio), studio, tools())
    files = render_all(prepared, tools(), template_folders(studio), stills=stills, logo=logo)
    return Report(prepared, tuple(write_outputs(Path(out), files)))


def _printing(studio: Studio, wanted: Sequence[str]) -> Studio:
    """The studio with further printed copies. Raises `BadCall` for one that does not exist."""
    for name in wanted:
        if name not in PAPER_VARIANTS:
            raise BadCall("unknown-copy", f"there is no printed copy {name!r}", "use " + ", ".join(PAPER_VARIANTS))
    variants = tuple(name for name in PAPER_VARIANTS if name in wanted or name in studio.paper.variants)
    return replace(studio, paper=replace(studio.paper, variants=variants))


def template_folders(studio: Studio) -> list[Path]:
    """The studio's own templates, where it has any, before the shipped ones. Raises `UnreadableInput` for a folder
    that does not exist."""
    if not (studio.file and studio.template_folder):
        return [shipped("templates")]
    own = Path(studio.file).parent / studio.template_folder
    if not own.is_dir():
        hint = 'check templates = "..." in studio.toml'
        raise UnreadableInput("no-template-folder", "there is no such folder of templates", hint, str(own))
    return [own, shipped("templates")]


def sightlines(
    path: Path,
    studio_file: Path | None = None,
    *,
    rig: str | None = None,
    reader: str | None = None,
    language: str = "en",
    changes: Sequence[str] = (),
) -> list[tuple[dict[str, str], Sightline]]:
    """Each rig's sightline with the setting it was tried at (empty without ranges). Raises `BadCall`, `BadGeometry`."""
    from promptprep.pipeline import sightline_alone
    from promptprep.sightline.whatif import changed, is_range, swept

    studio = studio_for([path], studio_file or (path if path.suffix == ".toml" else None))
    who = _named(studio.readers, reader, "reader") if reader else None
    rigs = [_named(studio.rigs, rig, "rig")] if rig else list(studio.rigs.values())
    if not rigs:
        raise BadCall("no-rig", "no studio file describes a rig here", "promptprep start makes one", str(path))
    fixed = [c for c in changes if not is_range(c)]
    ranges = [c for c in changes if is_range(c)]
    tried = [pair for one in rigs for pair in swept(changed(one, fixed) if fixed else one, ranges)]
    return [(setting, sightline_alone(one, who, language, studio, tools())) for setting, one in tried]


def _named(known: Mapping[str, Named], name: str, kind: str) -> Named:
    if name not in known:
        raise BadCall(f"unknown-{kind}", f"the studio has no {kind} {name!r}", "it has: " + ", ".join(known))
    return known[name]


def write_drawings(sights: Sequence[Sightline], folder: Path, studio: Studio | None = None) -> list[Path]:
    """Writes three drawings of each rig as SVG files, and its sheet to print."""
    from promptprep.outputs import paper_tools
    from promptprep.rendering.drawings import rig_drawings
    from promptprep.rendering.environment import environment
    from promptprep.rendering.rig_sheet import rig_sheet_pdf
    from promptprep.store.files import write_outputs

    studio = studio or Studio()
    env = environment(template_folders(studio))
    printed = paper_tools("en", tools(), env)
    files = {
        f"{sight.rig.id}.{name}.svg": svg.encode("utf-8")
        for sight in sights
        for name, svg in zip(("side", "reader", "region"), rig_drawings(sight, env), strict=True)
    }
    files |= {f"{sight.rig.id}.sheet.pdf": rig_sheet_pdf(sight, studio, printed) for sight in sights}
    return write_outputs(folder, files)


def learn_reader(
    readings: Sequence[str], studio_file: Path, reader: str | None = None, *, dry: bool = False
) -> Learned:
    """Learns a reader's pace in each language of the readings: take files, and times such as "sky.en.md=3:12".

    It goes into the studio file unless `dry`. Raises `BadCall` where the reader is not known or readings are absurd.
    """
    from promptprep.store.studio import read_studio
    from promptprep.store.takes import read_take, read_typed

    timed = [one for r in readings for one in (read_take(Path(r)) if "=" not in r else [read_typed(r)])]
    if not timed:
        raise BadCall("no-samples", "no whole segment was read in these takes", "read at least one segment through")
    studio = read_studio(studio_file)
    name = reader or next((one.reader for one in timed if one.reader), None)
    if name is None:
        raise BadCall("no-reader", "nothing says who was reading", "name them with --reader")
    who = _named(studio.readers, name, "reader")
    paces = tuple(_learned(who, language, timed) for language in sorted({one.language for one in timed}))
    return Learned(name, paces, None if dry else _keep(studio_file, paces, name))


def _learned(who: Reader, language: str, timed: Sequence[Timed]) -> Pace:
    from promptprep.timing.pace import learn

    samples = [(one.text, one.seconds) for one in timed if one.language == language]
    prior, today = who.paces.get(language), datetime.now().astimezone().date().isoformat()
    return learn(samples, known_language(language), engines(), speaker(language, tools()), prior, who.id, today)


def _keep(file: Path, paces: Sequence[Pace], reader: str) -> Path | None:
    from promptprep.store.learned import keep_paces

    return keep_paces(file, paces, reader)
