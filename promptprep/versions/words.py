"""Which words of a sentence were changed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher

from promptprep.model.versions import WordChange

CONTEXT = 4  # words shown on each side of a change
ALIKE = 0.4  # share of the words that must have stayed; below it, the sentence was written anew
MOST = 2000  # tokens that are compared word by word; a longer sentence is shown as a whole
_EAST = "\u3040-\u30ff\u3400-\u9fff\uf900-\ufaff"
_TOKEN = re.compile(rf"[{_EAST}]|(?:(?![{_EAST}])\w)+(?:[.,:’'\u202f-](?:(?![{_EAST}])\w)+)*|\s+|[^\w\s]")


def word_changes(before: str, after: str) -> list[WordChange]:
    """What of `before` has become what in `after`, in order; the whole where hardly a word has stayed."""
    a, b = _TOKEN.findall(before), _TOKEN.findall(after)
    whole = [WordChange("", before, after, "")] if before != after else []
    if len(a) > MOST or len(b) > MOST:
        return whole
    matcher = SequenceMatcher(None, a, b, autojunk=False)
    if matcher.ratio() < ALIKE:
        return whole
    return [_change(a, b, *span) for span in _joined(matcher.get_opcodes(), a)]


def _joined(opcodes: Sequence[tuple[str, int, int, int, int]], a: Sequence[str]) -> Iterator[tuple[int, int, int, int]]:
    """The places that differ; two with nothing but a blank or a sign between them are one."""
    last: tuple[int, int, int, int] | None = None
    for tag, i, j, k, stop in opcodes:
        if tag == "equal":
            continue
        if last is not None and not any(t[0].isalnum() for t in a[last[1] : i]):
            last = (last[0], j, last[2], stop)
            continue
        if last is not None:
            yield last
        last = (i, j, k, stop)
    if last is not None:
        yield last


def _change(a: Sequence[str], b: Sequence[str], i: int, j: int, k: int, stop: int) -> WordChange:
    gone, new = "".join(a[i:j]), "".join(b[k:stop])
    core = new or gone
    lead, tail = core[: len(core) - len(core.lstrip())], core[len(core.rstrip()) :]
    return WordChange(_before(b[:k]) + lead, gone.strip(), new.strip(), tail + _after(b[stop:]))


def _before(tokens: Sequence[str]) -> str:
    """The last words of a text, with an ellipsis where more stands before them."""
    kept = _first_words(tokens[::-1])
    text = "".join(kept[::-1])
    return text if len(kept) == len(tokens) else "…" + text.lstrip()


def _after(tokens: Sequence[str]) -> str:
    kept = _first_words(tokens)
    text = "".join(kept)
    return text if len(kept) == len(tokens) else text.rstrip() + "…"


def _first_words(tokens: Sequence[str]) -> Sequence[str]:
    words = 0
    for at, token in enumerate(tokens):
        words += token[0].isalnum()
        if words == CONTEXT:
            return tokens[: at + 1]
    return tokens


def shown(change: WordChange, most: int = 90) -> str:
    """A change as text: “…sets at [21:40 → 22:10], so the rest…”, [+new], [−gone]."""
    gone, new = _short(change.gone, most), _short(change.new, most)
    if not change.before and not change.after:
        return f"“{gone}” → “{new}”" if gone and new else f"“{new}”" if new else f"gone: “{gone}”"
    middle = f"{gone} → {new}" if gone and new else f"+{new}" if new else f"−{gone}"
    return f"“{change.before}[{middle}]{change.after}”"


def _short(text: str, most: int) -> str:
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"
