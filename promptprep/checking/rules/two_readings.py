"""One spelling, two words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Token
from promptprep.model.finding import Level
from promptprep.model.language import UNSPACED

_COMMON = Parameter(
    5.0, "Zipf value from which it is a note only", "readers know a common word: our reasoning, no source"
)
_NEAR = 9  # words
_PLAIN, _PLAIN_BY_CLASS = 5.9, 5.25  # Zipf values from which it is not worth a word


def find(context: Context) -> Iterator[Hit]:
    ways: Mapping[str, str] = context.language.maybe("faults", "two_ways", {})
    classes: Mapping[str, str] = context.language.maybe("faults", "by_class", {})
    clear: Mapping[str, list[str]] = context.language.maybe("faults", "clear_after", {})
    common = context.limit("two-readings.common", _COMMON.value)
    seen: set[tuple[int, str]] = set()
    for passage in context.passages:
        for word in passage.words:
            said = ways.get(word.key) or classes.get(word.key)
            if said is None or (passage.segment, word.key) in seen or passage.has_say(word.span):
                continue
            level: Level | None = "look"
            if not _again(passage, word):
                level = _level(context, word, word.key in classes, common)
                if level is None or _is_clear(context, passage, word, clear, word.key in classes):
                    continue
            seen.add((passage.segment, word.key))
            hint = f'write it so that one reading is left, or give it: [{word.text}]{{say="..."}}'
            yield Hit(passage.source(word.span), f"{word.text!r} can be read two ways: {said}", hint, level=level)


def _again(passage: Passage, word: Token) -> bool:
    """Whether the spelling comes again within a few words: then the reader must say both ways in one breath."""
    near = passage.words[word.place + 1 : word.place + _NEAR]
    return len(word.key) > 2 and any(other.key == word.key for other in near)


def _level(context: Context, word: Token, by_class: bool, common: float) -> Level | None:
    zipf = context.zipf(word.key) or 0.0
    if zipf >= (_PLAIN_BY_CLASS if by_class else _PLAIN):
        return None
    return "note" if by_class or zipf >= common or context.base in UNSPACED else "look"


def _is_clear(context: Context, passage: Passage, word: Token, clear: Mapping[str, list[str]], by_class: bool) -> bool:
    """Whether the word before leaves one reading; a name (a capital inside a sentence) is not the word at all."""
    before = passage.words[word.place - 1].key if word.place else ""
    if before in clear.get(word.key, ()) or (by_class and before in context.word_set("settles_class")):
        return True
    inside = word.place > 0 and not passage.text[: word.span.start].rstrip().endswith((".", "!", "?", ":"))
    return context.base not in ("de", *UNSPACED) and word.text[:1].isupper() and inside


RULE = Rule(
    name="two-readings",
    level="look",
    find=find,
    languages=("ar", "de", "en", "fr", "ja", "ko", "pt", "ru", "sw", "zh"),
    sees="A spelling that stands for two words said differently, where the word before does not settle which.",
    trips="The reader picks one at sight, hears a few words later that it was the other, and starts again.",
    sources=("lists of each language: from memory, in its faults table",),
    parameters={"common": _COMMON},
    fires="The wind up there is strong, and the bow of the boat is wet.",
    silent="The strong wind is cold.",
)
