"""What to do first about a show's versions: one line a kind of fault, the heaviest first."""

from __future__ import annotations

from collections.abc import Sequence

from promptprep.model.versions import Unread, Version, VersionFinding, Versions
from promptprep.spans import LineIndex
from promptprep.versions.fit import probably_over

MOST = 8
MOST_LANGUAGES = 5
# What is wrong on air comes before what is wrong on paper; kinds that are not named here come last.
WEIGHT = (
    "version-over", "segment-untranslated", "passage-untranslated", "version-unfinished", "segment-missing",
    "value-differs", "unit-differs", "value-missing", "value-added", "name-missing", "segment-stale", "cue-missing",
    "cue-differs", "segment-added",
)  # fmt: skip
STALE = "segment-stale"
SHARED = {
    "value-differs": "the source says {}, these versions do not.",
    "unit-differs": "the source says {}, these versions in another unit.",
    "value-missing": "the source's {} is not said in these versions.",
    "name-missing": "the source's name {} is not in these versions, or is written otherwise.",
    "cue-missing": "the source's cue {} is not in these versions.",
    "segment-missing": "the source's segment {} has no partner in these versions.",
}
Placed = tuple[Version, VersionFinding]


def first_lines(versions: Versions) -> list[str]:
    """At most `MOST` lines, the last of which counts what is left out. Empty where nothing is to fix."""
    weighed = [(0.0, _unread(u)) for u in versions.unread]
    shared, own = _grouped(versions)
    weighed += [(_weight(same[0][1]), _line(same)) for same in own]
    weighed += [(max(_weight(same[0][1]), _weight_of(STALE) + 0.5), _shared_line(same)) for same in shared]
    if close := [v for v in versions.all if any(_is_close(v, f) for f in v.findings)]:
        by = ", ".join(f"{v.language} by {v.change.seconds:.0f} s" for v in close if v.change)
        weighed.append((len(WEIGHT), f"{by}: may run over the slot, on average by this much."))
    lines = [line for _, line in sorted(weighed, key=lambda one: one[0])]
    more = len(lines) - MOST
    return lines if more <= 0 else [*lines[: MOST - 1], f"… and {more + 1} more, below."]


def _grouped(versions: Versions) -> tuple[list[list[Placed]], list[list[Placed]]]:
    """What several versions have in common about the same thing of the source, and one kind in one version."""
    common: dict[tuple[str, str, str], list[Placed]] = {}
    kinds: dict[tuple[str, ...], list[Placed]] = {}
    for version in versions.all:
        for f in version.findings:
            if f.level == "fix" and f.about and f.name in SHARED:
                common.setdefault((f.name, f.segment, f.about), []).append((version, f))
            elif f.name == STALE:
                kinds.setdefault((f.name, f.segment, f.message), []).append((version, f))
            elif f.level == "fix" or _is_probable(version, f):
                kinds.setdefault((version.language, f.name), []).append((version, f))
    shared = [same for same in common.values() if len(_languages_of(same)) > 1]
    for same in common.values():
        if len(_languages_of(same)) == 1:
            kinds.setdefault((same[0][0].language, same[0][1].name), []).extend(same)
    return shared, list(kinds.values())


def _is_probable(version: Version, finding: VersionFinding) -> bool:
    """Whether the finding is that a version will probably run over."""
    return finding.name == "version-over" and probably_over(version.timing.timing, version.slot_s)


def _is_close(version: Version, finding: VersionFinding) -> bool:
    return finding.name == "version-over" and finding.level == "look" and not _is_probable(version, finding)


def _weight(finding: VersionFinding) -> float:
    return _weight_of(finding.name)


def _weight_of(name: str) -> float:
    return float(WEIGHT.index(name) if name in WEIGHT else len(WEIGHT))


def _line(same: Sequence[Placed]) -> str:
    version, finding = same[0]
    languages = _languages_of(same)
    line, _ = LineIndex(version.script.source).place(finding.start)
    place = f", line {line}" if finding.start and len(languages) == 1 and finding.name != "segment-missing" else ""
    segment = f", {finding.segment}" if finding.segment and len(languages) > 1 else ""
    more = f" (and {len(same) - 1} more of the kind)" if len(same) > len(languages) else ""
    end = "" if finding.message.endswith(("”", ".", "…")) else "."
    hint = f" {_sentence(finding.hint)}" if finding.hint else ""
    return f"{_named(languages)}{place}{segment}: {finding.message}{more}{end}{hint}"


def _shared_line(same: Sequence[Placed]) -> str:
    finding = same[0][1]
    return f"{_named(_languages_of(same))}, {finding.segment}: {SHARED[finding.name].format(repr(finding.about))}"


def _languages_of(same: Sequence[Placed]) -> list[str]:
    return list(dict.fromkeys(version.language for version, _ in same))


def _unread(unread: Unread) -> str:
    return f"{unread.file} cannot be read: {unread.message.rstrip('.')}. {_sentence(unread.hint)}".rstrip()


def _named(names: Sequence[str]) -> str:
    if len(names) <= MOST_LANGUAGES:
        return ", ".join(names)
    return f"{', '.join(names[:MOST_LANGUAGES])} and {len(names) - MOST_LANGUAGES} more"


def _sentence(text: str) -> str:
    text = text.rstrip(".")
    return f"{text[:1].upper()}{text[1:]}." if text else ""
