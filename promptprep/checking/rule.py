"""What a rule is: what it sees, why that trips a reader, on what grounds, and how it finds it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from promptprep.checking.context import Context
from promptprep.model.finding import Finding, Level
from promptprep.model.language import FIRST_CLASS, base_of
from promptprep.spans import Span

EVERY = ("*",)  # a rule on format or geometry: it reads no language


@dataclass(frozen=True, slots=True)
class Parameter:
    """A figure of a rule. A studio may set its own: `limits."rule-name.parameter"`."""

    value: float
    unit: str
    source: str


@dataclass(frozen=True, slots=True)
class Hit:
    """What a rule found at a place of the source. `level` is None for the rule's own."""

    span: Span
    message: str
    hint: str
    instead: str | None = None
    level: Level | None = None


@dataclass(frozen=True, slots=True)
class Rule:
    """One kind of fault.

    `languages` names what it claims to read (`EVERY`: it reads none). `sees` and `trips` are one sentence
    each. `fires` and `silent` are a line of copy each that shows it at work, in `shown_in`.
    """

    name: str
    level: Level
    find: Callable[[Context], Iterator[Hit]]
    sees: str
    trips: str
    sources: tuple[str, ...]
    languages: tuple[str, ...] = FIRST_CLASS
    parameters: Mapping[str, Parameter] = field(default_factory=dict)
    fires: str = ""
    silent: str = ""
    shown_in: str = "en"

    def reads(self, language: str) -> bool:
        return self.languages == EVERY or base_of(language) in self.languages

    def finding(self, hit: Hit) -> Finding:
        return Finding(
            self.name, hit.level or self.level, hit.span.start, hit.span.end, hit.message, hit.hint, hit.instead
        )
