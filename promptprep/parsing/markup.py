"""CommonMark by markdown-it-py, with the three things a script adds: cues, pronunciations and remarks.

Plain pasted text must come through whole, so what would swallow copy is switched off: indented and fenced
code, link definitions, HTML (shown as text). Tokens carry their end in `meta["end"]` where markup alone does not
tell it.
"""

from __future__ import annotations

import re
from functools import lru_cache

from markdown_it import MarkdownIt
from markdown_it.rules_block import StateBlock
from markdown_it.rules_inline import StateInline
from markdown_it.rules_inline.link import link

from promptprep.parsing.cues import BRACKET

QUOTES = '"“”„‟«»″＂'  # word processors turn the straight one into the others
SAY = re.compile(rf"\[([^\[\]\n]+)\]\{{\s*say\s*=\s*[{QUOTES}]([^{QUOTES}\n]*)[{QUOTES}]\s*\}}")
REMARK = re.compile(r"<!--(.*?)-->", re.DOTALL)


@lru_cache(maxsize=1)
def markdown() -> MarkdownIt:
    """The one configured parser. Its rules keep no state between calls."""
    md = MarkdownIt("commonmark", {"html": False, "maxNesting": 40})
    md.disable(["code", "fence", "html_block", "reference", "table"], ignoreInvalid=True)
    md.disable(["html_inline", "autolink", "image", "backticks"], ignoreInvalid=True)
    md.core.ruler.disable(["text_join"], ignoreInvalid=True)
    md.inline.ruler2.disable(["fragments_join"], ignoreInvalid=True)
    md.block.ruler.before("paragraph", "remark", _remark_block, {"alt": ["paragraph", "blockquote", "list"]})
    md.inline.ruler.before("link", "say", _say)
    md.inline.ruler.before("link", "cue", _cue)
    md.inline.ruler.before("link", "remark", _remark)
    md.inline.ruler.at("link", _link)
    return md


def _say(state: StateInline, silent: bool) -> bool:
    return _matched(state, silent, SAY, "say")


def _cue(state: StateInline, silent: bool) -> bool:
    return _matched(state, silent, BRACKET, "cue")


def _remark(state: StateInline, silent: bool) -> bool:
    """A remark inside a line. Where none closes any more, the rest of the text is not searched again and again."""
    if not state.src.startswith("<!--", state.pos):
        return False
    if (last := state.env.get("last_close")) is None or last[0] is not state.src:
        last = state.env["last_close"] = (state.src, state.src.rfind("-->"))
    return last[1] >= state.pos and _matched(state, silent, REMARK, "remark")


def _matched(state: StateInline, silent: bool, pattern: re.Pattern[str], name: str) -> bool:
    if state.src[state.pos] not in "[<":
        return False
    found = pattern.match(state.src, state.pos)
    if not found:
        return False
    if not silent:
        token = state.push(name, "", 0)
        token.content = found[0]
        token.meta = {"groups": found.groups(), "start": state.pos, "end": found.end()}
    state.pos = found.end()
    return True


def _link(state: StateInline, silent: bool) -> bool:
    known = link(state, silent)
    if known and not silent:
        state.tokens[-1].meta = {"end": state.pos}
    return known


def _remark_block(state: StateBlock, start: int, end: int, silent: bool) -> bool:
    """A remark that begins a line, over blank lines if need be, up to the line that closes it."""
    begin = state.bMarks[start] + state.tShift[start]
    if not state.src.startswith("<!--", begin):
        return False
    close = state.src.find("-->", begin, state.eMarks[end - 1] if end else None)
    if close < 0:
        return False
    last = start
    while last < end - 1 and state.eMarks[last] < close:
        last += 1
    if state.src[close + 3 : state.eMarks[last]].strip():
        return False  # copy follows on the same line: the inline rule takes the remark
    if not silent:
        token = state.push("remark_block", "", 0)
        token.content = state.src[begin + 4 : close]
        token.map = [start, last + 1]
    state.line = last + 1
    return True
