"""The command line: it only calls the library, prints, and turns faults into exit statuses."""

from __future__ import annotations

import os
import sys
from typing import Any

import typer

from promptprep.cli import check, demo, explain, learn, prepare, session, sightline, start, time_, versions
from promptprep.cli.common import print_json
from promptprep.errors import BadCall, PromptprepError

app = typer.Typer(
    name="promptprep",
    help="Times, checks and prints host copy before anyone is in the room. Exit status: 0 nothing to fix, "
    "1 at least one thing to fix, 2 the input cannot be read or the call is wrong.",
    add_completion=False,
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def add(module: Any) -> None:
    """Adds a module's command: its `NAME`, `EXAMPLE`, `command` and the first line of its text."""
    purpose = (module.__doc__ or "").split(": ", 1)[-1].split("\n")[0]
    app.command(module.NAME, epilog=f"Example: {module.EXAMPLE}", short_help=purpose)(module.command)


for module in (prepare, time_, check, sightline, versions, session, learn, explain, start, demo):
    add(module)


def main() -> None:
    """Runs the command line and exits with its status."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    try:
        app()
    except PromptprepError as fault:
        print(fault, file=sys.stderr)
        _tell_program(fault)
        sys.exit(2)
    except SystemExit as end:
        if end.code == 2:  # typer has said on stderr what is wrong with the call
            _tell_program(BadCall("wrong-call", "the call is wrong", "see `promptprep COMMAND --help`"))
        raise
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(0)


def _tell_program(fault: PromptprepError) -> None:
    """The fault as JSON where JSON was asked for: whoever reads it gets an object in every case."""
    if "--json" in sys.argv[1:]:
        from promptprep.rendering.faults import fault_objects

        errors = fault_objects(fault)
        print_json(error=errors[0], errors=errors)
