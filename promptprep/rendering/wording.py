"""Sentences, figures and lengths of a page in its own language."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from promptprep.rendering.direction import direction_of, in_order
from promptprep.units import MM_PER_UNIT

FOOT_MM, INCH_MM = MM_PER_UNIT["ft"], MM_PER_UNIT["in"]


@dataclass(frozen=True, slots=True)
class Wording:
    """Says texts of the interface: `say("at most {n}", n="3")`. `words` gives a text in the page's language."""

    words: Callable[[str], str] = str

    def __call__(self, text: str, **values: str) -> str:
        return self.words(text).format(**values)

    def figure(self, value: float, digits: int = 2, *, sign: bool = False) -> str:
        """A number with the language's decimal sign, and a minus that is one."""
        return self.decimal(f"{value:{'+' if sign else ''}.{digits}f}".replace("-", "−"))

    def angle(self, degrees: float, digits: int = 1) -> str:
        """Degrees with their sign, which keeps its side on pages that run from right to left."""
        return self.whole(self.figure(degrees, digits, sign=True) + "°")

    def whole(self, text: str) -> str:
        """A ratio or signed figure, whose parts would change places in a text that runs from right to left."""
        return in_order(text, direction_of(self.words("length")) or "ltr")

    def decimal(self, number: str) -> str:
        """A number written with a point, with the language's own sign: catalogues hold it as in 1.5."""
        return number.replace(".", self.words("1.5")[1])

    def metric(self, mm: float) -> str:
        """For a tape: metres from one on, else millimetres, short ones to a tenth."""
        if mm >= 1000:
            return self("{n} m", n=self.figure(mm / 1000))
        return self("{n} mm", n=self.figure(mm, 0 if mm >= 100 else 1))

    def imperial(self, mm: float) -> str:
        """Feet and inches to the nearest quarter of an inch; short lengths in inches to a hundredth."""
        if mm < FOOT_MM:
            return self("{n} in", n=self.figure(mm / INCH_MM))
        feet, inches = divmod(round(mm / INCH_MM * 4) / 4, 12)
        return self("{feet} ft {inches} in", feet=f"{feet:.0f}", inches=self.decimal(f"{inches:g}"))

    def distance(self, mm: float) -> str:
        """For a drawing: metres from one on, else centimetres."""
        if mm >= 1000:
            return self("{n} m", n=self.figure(mm / 1000))
        return self("{n} cm", n=self.figure(mm / 10, 0))


ENGLISH = Wording()
