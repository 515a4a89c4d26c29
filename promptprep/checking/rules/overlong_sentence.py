"""A sentence that is too long for the ear."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Parameter, Rule

_WHOLE = Parameter(
    18.0, "s", "about 48 English words at a broadcast pace of 160 words a minute; common practice, no source"
)

_NOTED = 0.75  # share of the limit from which a sentence is noted


def find(context: Context) -> Iterator[Hit]:
    limit_s = context.limit("overlong-sentence.whole_s", _WHOLE.value)
    for passage, sentence in context.each_sentence():
        seconds = passage.seconds(sentence.span)
        if seconds is not None and seconds > _NOTED * limit_s:
            message = f"one sentence of {seconds:.0f} seconds"
            hint = "make two or three sentences of it, one thought each"
            yield Hit(passage.source(sentence.span), message, hint, level="look" if seconds > limit_s else "note")


RULE = Rule(
    name="overlong-sentence",
    level="look",
    find=find,
    sees="A sentence that takes this reader longer than a listener keeps its beginning in mind.",
    trips="The reader loses the tune of the sentence half way, and the listener its subject; neither can go back.",
    sources=(
        "Rodero 2015 on recall and rate; length limits for the ear: common practice, no source",
        "Flesch 1948 and every readability formula since: sentence length is the strongest single sign of difficulty",
    ),
    parameters={"whole_s": _WHOLE},
    fires="When the old dome was closed, which happened in the winter after the great storm, the observers moved their"
    " instruments into the barn behind the house, where they kept on measuring, night after night, until the council,"
    " which had promised a new roof many times, found the money at last.",
    silent="The old dome was closed after the great storm. The observers moved into the barn, and kept on measuring.",
)
