"""Wraps small texts (margins, titles, notes) by measured widths. The copy itself is broken by sense elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from promptprep.rendering.direction import each_whole
from promptprep.units import MM_PER_PT

LEAST_CUT = 3  # letters that a cut word leaves for its last line


def has_case(letter: str) -> bool:
    """Whether a letter is of an alphabet with capitals: words of these are cut with a hyphen."""
    return letter.lower() != letter.upper()


@dataclass(frozen=True, slots=True)
class Measure:
    """What a page asks of the shaper and of Unicode's rules for one language.

    `widths_em(texts, bold)` gives advance widths; `line_ends` and `graphemes` give offsets.
    """

    widths_em: Callable[[Sequence[str], bool], Sequence[float]]
    line_ends: Callable[[str], Sequence[int]]
    graphemes: Callable[[str], Sequence[int]]

    def width_pt(self, text: str, font_pt: float, *, bold: bool = False) -> float:
        return self.widths_em([text], bold)[0] * font_pt if text else 0.0

    def wrapped(self, text: str, width_mm: float, font_pt: float, *, bold: bool = False) -> list[str]:
        """Lines no wider than `width_mm`; a word that is wider is cut between characters. At least one line."""
        width_em = width_mm / MM_PER_PT / font_pt
        lines, line, taken = [], "", 0.0
        for piece, wide in self._pieces(" ".join(text.split()), width_em, bold):
            if line and taken + wide > width_em:
                lines.append(line.rstrip())
                line, taken = "", 0.0
            line, taken = line + piece, taken + wide
            if piece.endswith(" "):
                taken += self._space_em()
        return each_whole([*lines, line.rstrip()] if line.strip() or not lines else lines)

    def shortened(self, text: str, width_mm: float, font_pt: float, *, bold: bool = False) -> str:
        """The text in one line, with an ellipsis where it is too long."""
        lines = self.wrapped(text, width_mm, font_pt, bold=bold)
        if len(lines) == 1:
            return lines[0]
        room = width_mm - self.width_pt(" …", font_pt, bold=bold) * MM_PER_PT
        return self.wrapped(text, max(room, 1.0), font_pt, bold=bold)[0] + " …"

    def _pieces(self, text: str, width_em: float, bold: bool) -> list[tuple[str, float]]:
        """Stretches that keep together, with their widths without trailing spaces."""
        ends = self.line_ends(text)
        pieces = [text[a:b] for a, b in pairwise([0, *ends])]
        widths = self.widths_em([piece.rstrip() for piece in pieces], bold)
        found: list[tuple[str, float]] = []
        for piece, wide in zip(pieces, widths, strict=True):
            found += [(piece, wide)] if wide <= width_em else self._cut(piece, width_em, bold)
        return found

    def _cut(self, piece: str, width_em: float, bold: bool) -> list[tuple[str, float]]:
        """A word that is wider than a line, cut between characters; with a hyphen in alphabets that use one."""
        letters = [piece[a:b] for a, b in pairwise([0, *self.graphemes(piece)])]
        *widths, hyphen = self.widths_em([*letters, "-"], bold)
        found, part, taken = [], "", 0.0
        for at, (letter, wide) in enumerate(zip(letters, widths, strict=True)):
            joint = "-" if part and has_case(part[-1]) and has_case(letter) else ""
            full = taken + wide + (hyphen if joint and at < len(letters) - 1 else 0.0) > width_em
            if part and (full or (joint and at == len(letters) - LEAST_CUT and taken + sum(widths[at:]) > width_em)):
                found.append((part + joint, taken + (hyphen if joint else 0.0)))
                part, taken = "", 0.0
            part, taken = part + letter, taken + wide
        return [*found, (part, taken)]

    def _space_em(self) -> float:
        return float(self.widths_em([" "], False)[0])
