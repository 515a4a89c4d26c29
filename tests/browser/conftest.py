"""One Chromium for all browser tests; where it is absent they are skipped and say why."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--force-color-profile=srgb", "--disable-popup-blocking"]


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    sync_api = pytest.importorskip("playwright.sync_api", reason="the browser tests need Playwright")
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    with sync_api.sync_playwright() as playwright:
        try:
            chromium = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
        except sync_api.Error as fault:
            pytest.skip(f"no Chromium: {str(fault).splitlines()[0]}")
        yield chromium
        chromium.close()


@pytest.fixture
def context(browser: Any) -> Iterator[Any]:
    """A fresh profile: stores are empty. Errors on a page fail the test."""
    made = browser.new_context(viewport={"width": 1920, "height": 1080}, accept_downloads=True)
    made.set_default_timeout(10_000)
    faults: list[str] = []
    made.on("page", lambda page: page.on("pageerror", lambda fault: faults.append(str(fault))))
    yield made
    made.close()
    assert not faults, faults


@pytest.fixture
def write_page(tmp_path: Path) -> Callable[[str, str], str]:
    """Writes a page to disk and gives its file address."""

    def write(name: str, html: str) -> str:
        file = tmp_path / name
        file.write_text(html, "utf-8")
        return file.as_uri()

    return write
