"""Imports run downhill only, function bodies included; the steps meet only in the model."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import promptprep

ROOT = Path(promptprep.__file__).parent
LEVELS = {
    "units": 0, "spans": 0, "errors": 0,
    "model": 1,
    "parsing": 2, "speaking": 2, "timing": 2, "checking": 2, "sightline": 2, "breaking": 2, "versions": 2, "session": 2,
    "rendering": 3,
    "pipeline": 4,
    "engines": 5, "store": 5,
    "faces": 6,
    "cli": 7, "desk": 7,
}  # fmt: skip
BELOW = {("errors", "spans"), ("units", "errors")}
MODULES = sorted(p for p in ROOT.rglob("*.py") if p.name != "__main__.py" and p != ROOT / "__init__.py")


def unit(path: Path) -> str:
    return path.relative_to(ROOT).parts[0].removesuffix(".py")


def imported(tree: ast.AST) -> list[tuple[int, str]]:
    found: list[tuple[int, str]] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "promptprep":
            parts = node.module.split(".")
            names = [parts[1]] if len(parts) > 1 else [alias.name for alias in node.names]
            found.extend((node.lineno, name) for name in names)
        elif isinstance(node, ast.Import):
            found.extend((node.lineno, a.name.split(".")[1]) for a in node.names if a.name.startswith("promptprep."))
    return found


def faults_of(own: str, names: list[tuple[int, str]]) -> list[str]:
    """What of a unit's imports goes up, or sideways into another unit of its level."""
    bad = []
    for line, name in names:
        if name == own or (own, name) in BELOW or ((name, own) in BELOW and LEVELS[name] == 0):
            continue
        sideways = LEVELS[name] == LEVELS[own] and not {name, own} <= {"engines", "store"}
        if LEVELS[name] > LEVELS[own] or sideways:
            bad.append(f"line {line} imports {name}")
    return bad


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(ROOT)))
def test_imports_run_downhill(path: Path) -> None:
    own = unit(path)
    assert own in LEVELS, f"{own} has no level"
    assert not faults_of(own, imported(ast.parse(path.read_text("utf-8"))))


def test_the_test_sees_an_import_inside_a_function() -> None:
    tree = ast.parse("def f():\n    from promptprep.cli import app\n")
    assert faults_of("timing", imported(tree)) == ["line 2 imports cli"]
    assert faults_of("timing", imported(ast.parse("import promptprep.speaking.speak"))) == ["line 1 imports speaking"]


def test_the_core_takes_no_path_clock_or_print() -> None:
    """Below the edges nothing prints, logs, asks the clock or opens a file."""
    bad = []
    for path in MODULES:
        if LEVELS[unit(path)] > 4:
            continue
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            called = node.func if isinstance(node, ast.Call) else None
            if isinstance(called, ast.Name) and called.id in ("print", "open", "input"):
                bad.append(f"{path.name}:{node.lineno} calls {called.id}")
            if isinstance(node, ast.Import | ast.ImportFrom):
                names = [a.name for a in node.names] if isinstance(node, ast.Import) else [node.module or ""]
                bad += [f"{path.name}:{node.lineno} imports {n}" for n in names if n in ("time", "logging", "requests")]
    assert not bad
