"""Faults in what the user gave us, with a place and a hint. Bugs are not wrapped in these."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(eq=False)
class PromptprepError(Exception):
    """One fault in the input. Only the edges print it (exit status 2).

    `code` is kebab-case and stable; `message` says what is wrong and with which value;
    `hint` says what to do; `file`, `line` and `column` (both from 1) say where, when known.
    """

    code: str
    message: str
    hint: str = ""
    file: str | None = None
    line: int | None = None
    column: int | None = None

    def __post_init__(self) -> None:
        super().__init__(self.message)

    def __str__(self) -> str:
        place = ":".join(str(p) for p in (self.file, self.line, self.column) if p is not None)
        head = f"{place}: " if place else ""
        tail = f"\n  hint: {self.hint}" if self.hint else ""
        return f"{head}{self.message} [{self.code}]{tail}"


class UnreadableInput(PromptprepError):
    """A file or a value cannot be read as what it should be."""


class BadCall(PromptprepError):
    """The command or the function was called wrongly."""


class BadGeometry(PromptprepError):
    """A distance, size or angle that no room has."""


class UnknownLanguage(PromptprepError):
    """A language tag for which there is neither data nor an engine."""


class MissingLanguageData(PromptprepError):
    """A language has no figure of its own for a key; nothing is borrowed in silence."""

    def __init__(self, language: str, key: str) -> None:
        super().__init__(
            "missing-language-data",
            f"language {language!r} has no value for {key!r}",
            f"add it to promptprep/data/languages/{language}/",
        )


class OutputFault(PromptprepError):
    """A file cannot be written. Nothing half-written is left behind."""


class ManyFaults(PromptprepError):
    """Several faults of one call, all of which the edge shows."""

    def __init__(self, faults: list[PromptprepError]) -> None:
        first = faults[0]
        super().__init__(first.code, first.message, first.hint, first.file, first.line, first.column)
        self.faults = faults

    def __str__(self) -> str:
        return "\n".join(str(fault) for fault in self.faults)
