"""The table of a show's versions."""

from __future__ import annotations

from promptprep.model.versions import Change, Version
from promptprep.units import clock_text
from promptprep.versions.fit import verdict

HEAD = ("language", ">runs", ">80 % range", ">slot", "verdict", ">words", "to fit", "readers who fit")


def version_row(version: Version) -> tuple[str, ...]:
    whole = version.timing.timing
    return (
        version.language,
        clock_text(whole.mean_s),
        f"{clock_text(whole.low_s)} to {clock_text(whole.high_s)}",
        "" if version.slot_s is None else clock_text(version.slot_s),
        verdict(whole, version.slot_s),
        str(whole.words),
        change_text(version.change),
        ", ".join(r.reader for r in version.readers if r.fits) or ("none" if version.readers else ""),
    )


def change_text(change: Change | None) -> str:
    """Over: what to cut. Under: the room that is left."""
    if change is None:
        return ""
    if change.seconds <= 0:
        return f"room for {-change.words} words ({-change.seconds:.0f} s)"
    faster = "" if change.faster_percent is None else f" or {change.faster_percent:.0f} % faster"
    return f"cut {change.words} words ({change.seconds:.0f} s){faster}"
