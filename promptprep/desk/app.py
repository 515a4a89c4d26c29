"""The desk's page and what it asks for. It only calls the library; the page and its answers never leave this machine.

Scripts are named by their file names, and only those of the desk's folder can be named. What changes something is
asked for by POST and must carry the token that stands in the page, so that no other page in the browser can ask.
"""

from __future__ import annotations

import json
import threading
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.middleware import Middleware
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, JSONResponse, Response
from starlette.routing import Route

from promptprep.desk.answers import listed_object, prepared_object
from promptprep.engines.fonts import font_data
from promptprep.engines.wellformed import whole
from promptprep.errors import BadCall, PromptprepError
from promptprep.faces import drafts, scripts
from promptprep.rendering.draft_view import draft_view
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.environment import environment
from promptprep.rendering.faults import fault_objects
from promptprep.rendering.json_form import FORMAT
from promptprep.rendering.studio_view import studio_view
from promptprep.store.studio import FILE as STUDIO_FILE
from promptprep.store.templates import shipped

HOSTS = ["127.0.0.1", "localhost"]
TOKEN = "x-promptprep-token"
PARTS = {"desk.css": "text/css", "desk.js": "text/javascript", "editor.js": "text/javascript",
         "panels.js": "text/javascript", "ask.js": "text/javascript"}  # fmt: skip
FONTS = {
    "latin": "noto-sans",
    "arabic": "noto-sans-arabic",
    "devanagari": "noto-sans-devanagari",
    "cjk": "noto-sans-cjk-jp",
}
POLICY = "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; frame-ancestors 'none'"
MOST_BYTES = 8_000_000  # of one question; twice the largest script

Values = Mapping[str, Any]
Answer = Callable[["Desk", Values], dict[str, Any]]


@dataclass(frozen=True)
class Desk:
    """What one desk works on. One question is answered at a time: the engines beneath are not made for more."""

    folder: Path
    out: Path
    studio: Path | None
    token: str
    env: Environment = field(default_factory=lambda: environment([shipped("templates")]))
    busy: threading.Lock = field(default_factory=threading.Lock)
    written: dict[Path, str] = field(default_factory=dict)  # digests of what this desk saved
    listed: dict[Path, dict[str, Any]] = field(default_factory=dict)

    def path(self, values: Values) -> Path:
        """The script, or the studio file, that a question names."""
        name = _text(values, "name")
        own = self.studio_file()
        if own is not None and name == own.name:
            return own
        (path,) = drafts.named_files(self.folder, [name])
        return path

    def studio_file(self) -> Path | None:
        """The studio file that was named, else the one in the folder."""
        file = self.studio or self.folder / STUDIO_FILE
        return file if file.is_file() else None


# -- questions ----------------------------------------------------------------------------------------------


def _list(desk: Desk, values: Values) -> dict[str, Any]:
    """Scripts whose files and studio are as before are not read again."""
    file = desk.studio_file()
    found: dict[str, Any] = {"studio": {"name": file.name, "state": drafts.file_digest(file)} if file else None}
    try:
        studio = drafts.studio_digest(desk.folder, desk.studio)
    except PromptprepError as fault:
        return found | {"scripts": [], "error_in_studio": fault_objects(fault)[0]}
    return found | {"scripts": [_listed(desk, path, studio) for path in drafts.script_files(desk.folder)]}


def _listed(desk: Desk, path: Path, studio: str) -> dict[str, Any]:
    state = studio + drafts.file_digest(path)
    known = desk.listed.get(path)
    if known is None or known["state"] != state:
        known = desk.listed[path] = listed_object(drafts.timed_draft(path, desk.studio)) | {"state": state}
    return known


def _open(desk: Desk, values: Values) -> dict[str, Any]:
    draft = drafts.open_draft(desk.path(values))
    return {"text": draft.text, "digest": draft.digest, "writable": draft.writable, "losses": draft.losses}


def _look(desk: Desk, values: Values) -> dict[str, Any]:
    path, text = desk.path(values), _text(values, "text")
    if path == desk.studio_file():
        studio, sights = drafts.look_at_studio(text, path)
        return studio_view(studio, sights, partial(rig_drawings, env=desk.env))
    return draft_view(drafts.look_at(text, path, desk.studio).scripts[0])


def _save(desk: Desk, values: Values) -> dict[str, Any]:
    path, seen = desk.path(values), _text(values, "digest")
    own = desk.written.get(path) == seen
    draft, copy = drafts.save_draft(path, _text(values, "text"), seen, keep=not own)
    desk.written[path] = draft.digest
    return {"digest": draft.digest, "kept": copy.name if copy else None}


def _new(desk: Desk, values: Values) -> dict[str, Any]:
    text = _text(values, "text") if values.get("text") is not None else None
    return {"name": drafts.new_draft(desk.folder, _text(values, "title"), _text(values, "language"), text).name}


def _prepare(desk: Desk, values: Values) -> dict[str, Any]:
    names = values.get("names") or []
    if not (isinstance(names, list) and all(isinstance(name, str) for name in names)):
        raise _bad_question("its names are no list of texts")
    paths = drafts.named_files(desk.folder, names) if names else [desk.folder]
    return prepared_object(scripts.prepare(paths, desk.out, desk.studio))


def _new_studio(desk: Desk, values: Values) -> dict[str, Any]:
    return {"name": drafts.new_studio(desk.folder).name}


QUESTIONS: dict[str, Answer] = {
    "list": _list, "open": _open, "look": _look, "save": _save, "new": _new, "new-studio": _new_studio,
    "prepare": _prepare,
}  # fmt: skip


def _text(values: Values, key: str) -> str:
    """A text of a question. Half a surrogate pair, which no file can hold, becomes U+FFFD."""
    value = values.get(key)
    if not isinstance(value, str):
        raise _bad_question(f"it has no text {key!r}")
    return whole(value)


def _bad_question(why: str) -> BadCall:
    return BadCall("bad-question", f"the desk cannot answer this: {why}", "load the page again")


# -- the page -----------------------------------------------------------------------------------------------


def desk_app(folder: Path, out: Path, studio: Path | None, token: str) -> Starlette:
    """The desk of a folder. `token` is what a question must carry; keep it to the page."""
    desk = Desk(folder, out, studio, token)

    def page(request: Request) -> Response:
        html = desk.env.get_template("desk/page.html").render(token=token, folder=desk.folder.resolve().name)
        return HTMLResponse(html, headers={"content-security-policy": POLICY, "cache-control": "no-store"})

    def part(request: Request) -> Response:
        name = request.path_params["name"]
        if name not in PARTS:
            return Response(status_code=404)
        return FileResponse(shipped("templates") / "desk" / name, media_type=PARTS[name])

    def made(request: Request) -> Response:
        there = desk.out.iterdir() if desk.out.is_dir() else ()
        files = {file.name: file for file in there if file.is_file() and not file.name.startswith(".")}
        file = files.get(request.path_params["name"])
        return FileResponse(file) if file else Response("there is no such file", 404)

    def font(request: Request) -> Response:
        name = FONTS.get(request.path_params["name"])
        if name is None:
            return Response(status_code=404)
        return Response(font_data(name), media_type="font/otf", headers={"cache-control": "max-age=86400"})

    return Starlette(
        routes=[
            Route("/", page),
            Route("/desk/{name}", part),
            Route("/font/{name}", font),
            Route("/out/{name}", made),
            Route("/ask/{question}", _asked(desk), methods=["POST"]),
        ],
        middleware=[Middleware(TrustedHostMiddleware, allowed_hosts=HOSTS)],
    )


def _asked(desk: Desk) -> Callable[[Request], Awaitable[Response]]:
    async def asked(request: Request) -> Response:
        answer = QUESTIONS.get(request.path_params["question"])
        if request.headers.get(TOKEN) != desk.token or answer is None:
            return JSONResponse({"error": {"message": "this page may not ask that"}}, 403)
        body = await request.body()
        if len(body) > MOST_BYTES:
            return JSONResponse({"error": {"message": "that is too much for one script"}}, 413)
        try:
            values = json.loads(body)
        except (ValueError, RecursionError):
            return JSONResponse({"error": {"message": "the question is no JSON"}}, 400)
        if not isinstance(values, dict):
            return JSONResponse({"error": {"message": "the question is no object"}}, 400)
        return await run_in_threadpool(_answered, desk, answer, values)

    return asked


def _answered(desk: Desk, answer: Answer, values: Values) -> Response:
    try:
        with desk.busy:
            return JSONResponse({"promptprep": FORMAT, **answer(desk, values)})
    except PromptprepError as fault:
        return JSONResponse({"promptprep": FORMAT, "error": fault_objects(fault)[0]}, 422)
