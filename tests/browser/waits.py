"""Waits for what the page has done, never for a number of milliseconds: a busy machine is only slower."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

POLLING_MS = 20  # by the test's own timer: the page runs no code from outside, and a test may hold its frames
READY = "document.documentElement.classList.contains('ready')"
KEPT_S = """async () => {
  const open = indexedDB.open("promptprep-takes", 1);
  await new Promise((done, fail) => { open.onsuccess = done; open.onerror = fail; });
  const asked = open.result.transaction("parts").objectStore("parts").getAll();
  await new Promise((done, fail) => { asked.onsuccess = done; asked.onerror = fail; });
  open.result.close();
  return Math.max(0, ...asked.result.map((part) => part.until_s ?? 0));
}"""


def ready(page: Any) -> None:
    """The reader's page has read its store: from here on a key finds a take that was cut off."""
    until(page, lambda: page.evaluate(READY))


def kept(page: Any, seconds: float) -> None:
    """The browser's database has the take up to `seconds` from its start."""
    until(page, lambda: page.evaluate(KEPT_S) >= seconds)


def reloaded(page: Any, kept_s: float = 0.0) -> None:
    """Loads the page again, once `kept_s` seconds of a take are kept, and until it has found them."""
    if kept_s:
        kept(page, kept_s)
    page.reload()
    ready(page)


def drawn(page: Any, frames: int = 2) -> None:
    """The page has drawn that many frames more."""
    for _ in range(frames):
        page.evaluate("new Promise((done) => requestAnimationFrame(() => done()))")


def at_rest(page: Any, expression: str) -> None:
    """What an expression gives stays the same for 20 frames."""

    def stays() -> bool:
        before = page.evaluate(expression)
        drawn(page, frames=20)
        return bool(page.evaluate(expression) == before)

    until(page, stays)


def until(page: Any, true: Callable[[], bool], longest_s: float = 15.0) -> None:
    """Until `true()` is so; fails when it still is not after `longest_s`."""
    end_s = time.monotonic() + longest_s
    while not true():
        assert time.monotonic() < end_s, "it never came true"
        page.wait_for_timeout(POLLING_MS)


def sent_to(page: Any, fragment: str) -> None:
    """The page has read its address's new fragment."""
    page.evaluate(
        """(fragment) => new Promise((done) => {
          addEventListener("hashchange", () => done(), { once: true }); location.hash = fragment; })""",
        fragment,
    )
