"""A name or a rare word that nobody has said how to say."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Token
from promptprep.model.finding import Level
from promptprep.spans import Span

_RARE = Parameter(2.0, "Zipf value below which a name is rare", "1 word in 10 million; wordfreq 3 (Speer 2022)")
_LONGEST = 40  # letters of a word that is looked at for its parts
_NEARLY = 0.5  # of the Zipf scale above the limit: noted
_NUMERALS = "一二三四五六七八九十百千万何数毎各同全"
_WHOLE_WORDS = ("en", "es", "fr", "pt")  # lists that hold nearly every form of a word
_CAPITALS = ("de", "en", "es", "fr", "pt", "ru", "sw")
_DOTTED = {
    "zh": re.compile(
        r"(?:(?![的是在和了有为与这那个一位叫请由向对])[\u4e00-\u9fff]){1,6}(?:[·•・](?:(?![的是在和了有为与博教先女])[\u4e00-\u9fff]){1,6})+"
    ),
    "ja": re.compile(r"[\u30a1-\u30fa\u30fc]{2,}(?:[・＝][\u30a1-\u30fa\u30fc]{2,})+"),
}
_KANJI = re.compile(r"[\u4e00-\u9fff々]{2,}")
_UNSWAHILI = re.compile(
    r"[qx]|c(?!h)|[bcdfghjklmnpqrstvwxyz]$|[^aeioumnywhgbdkjtsz'][bcdfgjklpqrstvxz]|([^aeiou])\1", re.IGNORECASE
)


def find(context: Context) -> Iterator[Hit]:
    rare = context.limit("unsaid-name.rare", _RARE.value)
    seen: set[str] = set()
    for passage in context.passages:
        for span, level in _strangers(context, passage, rare):
            name = span.of(passage.text)
            if name.lower() in seen or passage.has_say(span):
                continue
            seen.add(name.lower())
            message = f"nobody has said how {name!r} is said"
            hint = f'give it here, [{name}]{{say="..."}}, or in lexicon.toml: "{name}" = "..."'
            yield Hit(passage.source(span), message, hint, level=level)


def _strangers(context: Context, passage: Passage, rare: float) -> Iterator[tuple[Span, Level]]:
    if context.base in _DOTTED:
        yield from ((Span(*m.span()), "look") for m in _DOTTED[context.base].finditer(passage.text))
    if context.base == "ja":
        kanji = (w for w in passage.words if _KANJI.fullmatch(w.text) and w.text[0] not in _NUMERALS)
        yield from ((w.span, "note") for w in kanji if context.zipf(w.key) == 0)
    if context.base in _CAPITALS:
        alphabet = frozenset(context.language.maybe("faults", "alphabet", "")) | {"q", "x", "c"}
        for word in passage.words:
            if not alphabet.issuperset(c for c in word.key if c.isalpha()):
                continue  # foreign-word has it
            if _is_name(passage, word):
                zipf = _known(context, word)
                if zipf < rare + _NEARLY:
                    yield word.span, "look" if zipf < rare else "note"
            elif context.base in _WHOLE_WORDS and _is_strange(context, passage, word):
                yield word.span, "note"


def _is_name(passage: Passage, word: Token) -> bool:
    return (
        len(word.text) > 2
        and word.text[0].isupper()
        and any(c.islower() for c in word.text)
        and word.text.replace("'", "").replace("’", "").isalpha()
        and passage.reading_at(word.span.start) is None
    )


def _is_strange(context: Context, passage: Passage, word: Token) -> bool:
    """Whether a small word is in no list, nor are its stem and its two halves."""
    if len(word.key) < 7 or not word.key.isalpha() or passage.reading_at(word.span.start) is not None:
        return False
    stems = {
        word.key,
        *(word.key[:-cut] for cut in (1, 2, 3)),
        *(word.key.removeprefix(p) for p in ("un", "re", "non")),
    }
    return not any(context.zipf(stem) for stem in stems) and not _compound(context, word.key)


def _known(context: Context, word: Token) -> float:
    """How common a name is, by the best known of the forms it may stand in; 9 for one that spelling settles."""
    stem = re.sub(r"['’]s?$", "", word.key) if context.base == "en" else word.key
    zipf = context.zipf(stem)
    if zipf is None:
        return 0.0 if _UNSWAHILI.search(stem) else 9.0
    if context.base == "de":
        return 9.0 if len(stem) > 12 or _compound(context, stem) else max(zipf, context.zipf(stem[:-1]) or 0.0) + 0.7
    cuts = {"ru": (1, 2), "en": (1,) if stem.endswith("s") else ()}.get(context.base, (1,))
    return max(zipf, *(context.zipf(stem[:-cut]) or 0.0 for cut in cuts if len(stem) > cut + 2), 0.0)


def _compound(context: Context, word: str) -> bool:
    """Whether a word falls into two known ones."""
    if len(word) > _LONGEST:
        return False
    known = (word[:i] for i in range(4, len(word) - 3) if (context.zipf(word[:i]) or 0) > 3)
    return any((context.zipf(word[len(head) :]) or 0) > 3 for head in known)


RULE = Rule(
    name="unsaid-name",
    level="look",
    find=find,
    languages=("de", "en", "es", "fr", "ja", "pt", "ru", "sw", "zh"),
    sees="A rare name (`look`), a nearly rare one or a word that no list has (`note`), without a pronunciation.",
    trips="The reader meets it for the first time at the lens, and guesses.",
    sources=("Speer 2022, wordfreq 3: word frequencies by language",),
    parameters={"rare": _RARE},
    fires="Here is Wrzesniewska of the northern station.",
    silent="Here is Anna of the northern station.",
)
