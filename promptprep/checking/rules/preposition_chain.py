"""A chain of prepositions, or of the small words that do their work."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Sentence, Token
from promptprep.model.language import UNSPACED
from promptprep.spans import Span

_OF = Parameter(4, "links of one kind (of ... of)", "common practice, no source")
_ANY = Parameter(7, "links of any kind", "common practice, no source")
_APART = 3  # words from one link to the next


def find(context: Context) -> Iterator[Hit]:
    of_words, any_words = context.word_set("of_words"), context.word_set("prepositions")
    kinds: list[tuple[Callable[[Token], bool], int]] = [
        (lambda w: w.key in of_words, int(context.limit("preposition-chain.of", _OF.value))),
        (lambda w: w.key in any_words, int(context.limit("preposition-chain.any", _ANY.value))),
    ]
    if context.base == "ko":
        kinds = [(lambda w: len(w.key) > 1 and w.key.endswith("의"), int(_OF.value) - 1)]
    for passage, sentence in context.each_sentence():
        if context.base in UNSPACED:
            yield from (_hit(passage, span) for span in _letters(sentence, of_words, kinds[0][1]))
            continue
        chain = next((c for is_link, most in kinds for c in _chains(passage, sentence, is_link, most)), None)
        if chain is not None:
            yield _hit(passage, chain)


def _hit(passage: Passage, chain: Span) -> Hit:
    message = "one link hangs on another, all the way down"
    return Hit(passage.source(chain), message, "break the chain: use a verb, or say the last part first")


def _letters(sentence: Sentence, links: frozenset[str], most: int) -> Iterator[Span]:
    """The same where words have no spaces: single letters that link, at most six others between."""
    link = "".join(sorted(links))
    for found in re.finditer(rf"[{link}](?:[^{link}，。、！？；：,.]{{1,6}}[{link}]){{{most - 1},}}", sentence.text):
        yield Span(*found.span()).shifted(sentence.span.start)


def _chains(passage: Passage, sentence: Sentence, is_link: Callable[[Token], bool], most: int) -> Iterator[Span]:
    """Runs of `most` links or more, each at most three words from the next and no mark between."""
    row: list[Token] = []
    for word in sentence.words:
        if not is_link(word):
            continue
        if row and (word.place - row[-1].place > _APART or _marked(passage, row[-1], word)):
            yield from _whole(row, most)
            row = []
        row.append(word)
    yield from _whole(row, most)


def _marked(passage: Passage, one: Token, two: Token) -> bool:
    return any(c in ",;:.()—–،؛、，；：" for c in passage.between(one, two))


def _whole(row: Sequence[Token], most: int) -> Iterator[Span]:
    if len(row) >= most:
        yield Span(row[0].span.start, row[-1].span.end)


RULE = Rule(
    name="preposition-chain",
    level="look",
    find=find,
    sees="Four phrases that hang on one another by the same small word, or seven by any.",
    trips="There is no place to rest or to stress, and by the end nobody knows what hung on what.",
    sources=("common practice, no source",),
    parameters={"of": _OF, "any": _ANY},
    fires="This is a photograph of the edge of the disc of the brightest of the stars.",
    silent="This photograph shows the edge of the star's disc.",
)
