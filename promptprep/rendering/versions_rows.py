"""The table of a show's versions."""

from __future__ import annotations

from promptprep.model.versions import Change, Expected, Version
from promptprep.units import clock_text

HEAD = ("version", ">runs", ">80 % range", "verdict", "to fit (+ % pace)", "who fits")
EXPECTED_HEAD = ("language", ">may run", ">range", "verdict")


def expected_row(expected: Expected) -> tuple[str, ...]:
    slot = expected.slot_s
    over = slot is not None and expected.mean_s > slot
    tight = slot is not None and expected.high_s > slot
    return (
        expected.language,
        clock_text(expected.mean_s),
        f"{clock_text(expected.low_s)} to {clock_text(expected.high_s)}",
        "no slot" if slot is None else "write the source shorter" if over else "tight" if tight else "should fit",
    )


def version_row(version: Version) -> tuple[str, ...]:
    whole = version.timing.timing
    return (
        version.language,
        clock_text(whole.mean_s),
        f"{clock_text(whole.low_s)} to {clock_text(whole.high_s)}",
        whole.verdict(version.slot_s),
        change_text(version.change),
        readers_text(version),
    )


def readers_text(version: Version) -> str:
    """Who fits the slot in nine of ten takes, and who on average only; "none" where nobody of the studio does."""
    slot = version.slot_s
    found = [
        r.reader if r.fits else f"{r.reader} (likely)" for r in version.readers if slot is None or r.mean_s <= slot
    ]
    return ", ".join(found) or ("none" if version.readers else "")


def change_text(change: Change | None) -> str:
    """Over: what to cut. Under: the room that is left."""
    if change is None:
        return ""
    if change.seconds <= 0:
        return f"room for {-change.words} words, {-change.seconds:.0f} s"
    faster = "" if change.faster_percent is None else f" or +{change.faster_percent:.0f} %"
    return f"cut {change.words} words, {change.seconds:.0f} s{faster}"
