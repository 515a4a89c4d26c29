"""A sightline's figures in words, for tables that people read."""

from __future__ import annotations

from promptprep.model.sightline import Sightline


def figure_rows(sight: Sightline) -> list[tuple[str, str]]:
    """(name, value with its unit) of every figure; what is not known says so."""
    return [
        ("eye to text, by the glass", f"{sight.optical_path_mm / 1000:.2f} m"),
        ("capitals", _height(sight.cap_height_arcmin, sight.cap_height_mm)),
        ("x-height", _height(sight.x_height_arcmin, sight.x_height_mm)),
        ("line height", _height(sight.line_height_arcmin, sight.line_height_mm)),
        ("travel to the left of the lens", _degrees(sight.travel_left_deg)),
        ("travel to the right of the lens", _degrees(sight.travel_right_deg)),
        ("first line", _side(sight.first_line_deg)),
        ("line that is read", _side(sight.reading_line_deg)),
        ("last line", _side(sight.last_line_deg)),
        ("characters a line", f"{sight.characters_per_line:.1f}"),
        ("words a line", "no words between spaces" if sight.words_per_line is None else f"{sight.words_per_line:.1f}"),
        ("in view", f"{sight.lines_visible} lines, {sight.seconds_visible:.1f} s of speech"),
        ("contrast of the two colours", f"{sight.contrast_ratio:.1f} : 1"),
        ("contrast at the eye", _contrast(sight.contrast_at_eye)),
        ("light lost to the lens", _stops(sight)),
        ("ghost from the glass's second face", "not known" if sight.ghost_mm is None else f"{sight.ghost_mm:.1f} mm"),
    ]


def _height(arcmin: float, mm: float) -> str:
    return f"{arcmin:.1f} arcminutes, {mm:.1f} mm"


def _degrees(angle: float) -> str:
    return f"{angle:.2f}°".replace("-", "−")


def _side(angle: float) -> str:
    if abs(angle) < 0.005:
        return "at the lens"
    return f"{abs(angle):.2f}° {'above' if angle > 0 else 'below'} the lens"


def _contrast(ratio: float | None) -> str:
    if ratio is None:
        return "not known: give the glass's split"
    return f"{ratio:.1f} : 1" if ratio < 1e6 else "no light in the black at all"


def _stops(sight: Sightline) -> str:
    if not sight.rig.has_glass:
        return "none, there is no glass"
    return (
        "not known: give the glass's split" if sight.lens_loss_stops is None else f"{sight.lens_loss_stops:.2f} stops"
    )
