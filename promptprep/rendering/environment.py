"""The one Jinja environment of all pages: autoescape on, a missing name is an error."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from types import TracebackType
from typing import Any

import jinja2
from markupsafe import Markup

from promptprep.errors import UnreadableInput

_OBJECT = re.compile(r"'[\w.]+ object' has no attribute")
_UNSAFE_IN_CSS = re.compile(r"""["'\\<>&\x00-\x1f\x7f]""")


def environment(folders: Sequence[Path]) -> jinja2.Environment:
    """An environment over template `folders`; a file in an earlier folder wins over a later one's."""
    made = jinja2.Environment(
        loader=jinja2.FileSystemLoader([str(folder) for folder in folders]),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.filters["css"] = css_string
    return made


def css_string(text: str) -> Markup:
    """A text as a CSS string, quotes included, safe inside a style element or an attribute in single quotes."""
    return Markup('"' + _UNSAFE_IN_CSS.sub(lambda found: f"\\{ord(found[0]):x} ", str(text)) + '"')


def render(env: jinja2.Environment, name: str, /, **values: Any) -> str:
    """A template's text. Raises `UnreadableInput` with file and line where a template is at fault."""
    try:
        return env.get_template(name).render(**values)
    except jinja2.TemplateSyntaxError as fault:
        raise _fault(str(fault.message), fault.filename or fault.name, fault.lineno) from None
    except jinja2.TemplateNotFound as fault:
        raise _fault(f"there is no template {fault.name!r}", name, None) from None
    except jinja2.TemplateError as fault:
        file, line, _ = _place(fault.__traceback__)
        raise _fault(_OBJECT.sub("there is nothing called", str(fault.message)), file or name, line) from None
    except UnicodeDecodeError:
        raise _fault("it is not UTF-8", name, None) from None
    except (ArithmeticError, LookupError, TypeError, ValueError) as fault:
        file, line, itself = _place(fault.__traceback__)
        if not itself:
            raise  # a fault of ours, not of what the template says
        raise _fault(str(fault), file, line) from None


def source(env: jinja2.Environment, name: str) -> str:
    """A file of the template folders as it stands, without anything filled in. Raises `UnreadableInput`."""
    assert env.loader is not None
    try:
        return env.loader.get_source(env, name)[0]
    except UnicodeDecodeError:
        raise _fault("it is not UTF-8", name, None) from None


def _fault(message: str, file: str | None, line: int | None) -> UnreadableInput:
    hint = "mend the template, or take it out of your template folder to have the shipped one back"
    return UnreadableInput("broken-template", f"the template is at fault: {message}", hint, file, line)


def _place(trace: TracebackType | None) -> tuple[str | None, int | None, bool]:
    """The innermost file and line of a template, and whether it failed right there.

    Jinja puts templates' own files and lines into the trace.
    """
    found: tuple[str | None, int | None, bool] = (None, None, False)
    for frame in _frames(trace):
        file = frame.tb_frame.f_code.co_filename
        if file.endswith(".py") or file.startswith("<"):
            found = (found[0], found[1], False)
        else:
            found = (file, frame.tb_lineno, True)
    return found


def _frames(trace: TracebackType | None) -> Iterator[TracebackType]:
    while trace is not None:
        yield trace
        trace = trace.tb_next
