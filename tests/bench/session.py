"""How long a session of 40 scripts and ten hours takes: `python -m tests.bench.session` (warm: scripts met before)."""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from promptprep.faces import sessions
from promptprep.store.templates import shipped
from promptprep.units import clock_text

SCRIPTS = 40
HOURS = 10


def folder(where: Path) -> Path:
    """A session of many scripts, each with the demo's copy over and over until it fills its share of the day."""
    copy = (shipped("scripts_demo") / "sky.en.md").read_text("utf-8").split("+++")[2]
    words = [line for line in copy.splitlines() if line and line[0] not in "#[>"]
    items = []
    for n in range(SCRIPTS):
        body = [f"# Part {part}\n\n[vision: camera {part % 3 + 1}]\n\n" + "\n\n".join(words) for part in range(8)]
        (where / f"s{n}.en.md").write_text(f"Script number {n}.\n\n" + "\n\n".join(body), "utf-8")
        items.append(f'[[items]]\nscript = "s{n}.en.md"\n')
    head = 'start = "06:00"\nend = "16:00"\nchangeover = "0:30"\n\n'
    file = where / "session.toml"
    file.write_text(head + "\n".join(items), "utf-8")
    return file


def main() -> None:
    with tempfile.TemporaryDirectory() as where:
        file = folder(Path(where))
        for name in ("cold", "warm", "warm", "warm"):
            begun = time.perf_counter()
            session = sessions.plan_session(file)
            took = time.perf_counter() - begun
            words = sum(row.timed.timing.words for row in session.items)
            runs = clock_text(session.end_ms / 1000)
            print(f"{name}: {took:.2f} s for {len(session.items)} scripts, {words} words, {runs}")


if __name__ == "__main__":
    main()
