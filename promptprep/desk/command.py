"""`promptprep desk`: the folder on a page, times and findings while you write."""

from __future__ import annotations

import contextlib
import secrets
import socket
import webbrowser
from pathlib import Path
from typing import Annotated

import typer

from promptprep.errors import BadCall, OutputFault

NAME = "desk"
EXAMPLE = "promptprep desk my-studio"


def command(
    folder: Annotated[Path, typer.Argument(help="The folder with your scripts.")] = Path(),
    out: Annotated[
        Path | None, typer.Option(help="The folder to write to; else out in the folder.", show_default=False)
    ] = None,
    studio: Annotated[
        Path | None, typer.Option("--studio", help="The studio file; else studio.toml beside the scripts.")
    ] = None,
    port: Annotated[int, typer.Option(min=0, max=65535, help="The port on this machine; 0 takes a free one.")] = 0,
    browser: Annotated[bool, typer.Option(help="Open the page in your browser.")] = True,
) -> None:
    """Open a folder of scripts on a page of this machine: write, see times, findings and lines, prepare."""
    import uvicorn

    from promptprep.desk.app import desk_app

    if not folder.is_dir():
        hint = "name the folder with your scripts; promptprep start makes one"
        raise BadCall("no-folder", f"there is no folder {str(folder)!r}", hint)
    listening = _listening(port)
    address = f"http://127.0.0.1:{listening.getsockname()[1]}/"
    typer.echo(f"The desk is at {address} for this machine only. Ctrl+C closes it; what you saved stays.")
    app = desk_app(folder, out or folder / "out", studio, secrets.token_urlsafe(24))
    if browser:
        webbrowser.open(address)
    with contextlib.suppress(KeyboardInterrupt):  # Ctrl+C is how the desk is closed
        uvicorn.Server(uvicorn.Config(app, log_level="warning", access_log=False)).run(sockets=[listening])


def _listening(port: int) -> socket.socket:
    """A socket of this machine alone. Raises `OutputFault` where the port is taken."""
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind(("127.0.0.1", port))
        listening.listen()  # a browser that is quicker than the server waits
    except OSError:
        listening.close()
        hint = "another program has it: name another, or leave --port out"
        raise OutputFault("port-taken", f"port {port} cannot be had", hint) from None
    return listening
