"""`promptprep desk` as a process: it says where it is, answers, and ends when it is told to."""

from __future__ import annotations

import re
import signal
import socket
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from promptprep.__main__ import main

EMPTY = [sys.executable, "-m", "promptprep", "desk", "--no-browser"]


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[subprocess.Popen[str]]:
    with subprocess.Popen(
        [*EMPTY, str(tmp_path)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as running:
        yield running
        running.kill()


def test_it_opens_answers_and_closes(desk: subprocess.Popen[str], tmp_path: Path) -> None:
    assert desk.stdout is not None
    address = re.search(r"http://127\.0\.0\.1:\d+/", desk.stdout.readline())
    assert address
    direct = urllib.request.build_opener(urllib.request.ProxyHandler({}))
    with direct.open(address[0], timeout=20) as page:
        assert tmp_path.name in page.read().decode()
    desk.send_signal(signal.SIGINT)
    _, complaints = desk.communicate(timeout=20)
    assert desk.returncode == 0
    assert "Traceback" not in complaints


@pytest.mark.parametrize("place", ["nowhere", "a-file.md"])
def test_a_folder_that_is_none(
    place: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a-file.md").write_text("Good evening.", "utf-8")
    monkeypatch.setattr(sys, "argv", ["promptprep", "desk", str(tmp_path / place), "--no-browser"])
    with pytest.raises(SystemExit) as left:
        main()
    assert left.value.code == 2
    assert "hint" in capsys.readouterr().err


def test_a_port_that_is_taken(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        monkeypatch.setattr(sys, "argv", ["promptprep", "desk", str(tmp_path), "--no-browser", "--port", str(port)])
        with pytest.raises(SystemExit) as left:
            main()
    assert left.value.code == 2
    assert str(port) in capsys.readouterr().err
