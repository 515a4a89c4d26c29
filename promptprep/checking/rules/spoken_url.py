"""An address to be read out."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.spans import Span

_ADDRESS = re.compile(
    r"(?:https?://|www\.)[^\s<>\"'）)】。，、]+|(?<![\w.@])[\w.+-]+@[A-Za-z0-9-]+(?:\.[A-Za-z0-9-]+)+"
    r"|(?<![\w.@/])(?:[A-Za-z0-9-]+\.)+(?:com|org|net|edu|gov|info|tv|example|test|eu|int|museum|[a-z]{2})(?:/[^\s<>\"'）)]*)?(?![\w@])"
    r"|(?<!\w)[#@][^\W\d]\w{2,}"
)
_NO_HOST = re.compile(r"(?:[a-z]\.){1,3}[a-z]", re.IGNORECASE)  # "a.m", "e.g", "p.m"


def find(context: Context) -> Iterator[Hit]:
    for passage in context.passages:
        for found in _ADDRESS.finditer(passage.text):
            span = Span(found.start(), found.start() + len(found[0].rstrip(".,;:!?")))
            if _NO_HOST.fullmatch(found[0]) or passage.has_say(span):
                continue
            message = f"{span.of(passage.text)!r} would be read out sign by sign"
            hint = "show it in a graphic, and say what to look for; or say only the name"
            yield Hit(passage.source(span), message, hint)


RULE = Rule(
    name="spoken-url",
    level="look",
    find=find,
    languages=EVERY,
    sees="A web or mail address, a hashtag or an account name in copy that is spoken.",
    trips="Said in full it takes many seconds that nobody remembers; each reader says the signs otherwise.",
    sources=("common practice, no source",),
    fires="Go to www.quillhorn.example/open-night for the times.",
    silent="The times are on our site, under open night.",
)
