"""Imports run down the work order only; the verifier knows no planner."""

import ast
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "src" / "firstcourse"
LAYERS = [
    layer.strip("()").removeprefix("firstcourse.")
    for layer in reversed(
        tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"]["contracts"][0]["layers"]
    )
]
COMMANDS_MAY_KNOW = {"app", "words", "findings", "errors", "units", "tongues", "cli"}
PLANNERS = ("showers", "details", "tiles", "grounds", "frames", "layers", "steps", "sheets")
PAGES_MAY_KNOW = {"app", "store", "words", "errors", "units", "tongues", "files", "values", "web"}
STORE_MAY_KNOW = {"errors", "store"}
HTTP = {"starlette", "uvicorn", "jinja2", "http"}
VERIFIER_MAY_KNOW = {"units", "errors", "findings", "geometry", "rules", "verify"}


OUTSIDE = {"os", "pathlib", "tempfile", "shutil", "multiprocessing", "subprocess", "threading", "signal"}


def _modules(file: Path) -> set[str]:
    nodes = list(ast.walk(ast.parse(file.read_text(encoding="utf-8"))))
    names = [node.module or "" for node in nodes if isinstance(node, ast.ImportFrom)]
    names += [alias.name for node in nodes if isinstance(node, ast.Import) for alias in node.names]
    return {name.split(".")[0] for name in names}


def imports() -> Iterator[tuple[str, str, str]]:
    for file in sorted(PACKAGE.rglob("*.py")):
        relative = file.relative_to(PACKAGE)
        room = relative.parts[0].removesuffix(".py")
        if room == "__init__":
            continue
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            names = []
            if isinstance(node, ast.ImportFrom) and node.module:
                names = [node.module]
            elif isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            for name in names:
                parts = name.split(".")
                if parts[0] == "firstcourse" and len(parts) > 1:
                    yield room, parts[1], f"{relative}:{node.lineno}"


IMPORTS = list(imports())


def test_every_room_stands_in_the_order() -> None:
    rooms = {path.name.removesuffix(".py") for path in PACKAGE.iterdir() if path.suffix == ".py" or path.is_dir()}
    assert rooms - {"__init__", "__pycache__", "typed"} - {"py.typed"} <= set(LAYERS)


@pytest.mark.parametrize(("importer", "imported", "place"), IMPORTS)
def test_imports_point_down(importer: str, imported: str, place: str) -> None:
    assert LAYERS.index(imported) <= LAYERS.index(importer), f"{place}: {importer} imports {imported}"


def test_the_verifier_knows_no_planner() -> None:
    known = {imported for importer, imported, _place in IMPORTS if importer == "verify"}
    assert known <= VERIFIER_MAY_KNOW


def test_commands_know_one_way_in() -> None:
    known = {imported for importer, imported, _place in IMPORTS if importer == "cli"}
    assert "app" in known and known - {"web"} <= COMMANDS_MAY_KNOW
    from_web = {
        place.split(":")[0] for importer, imported, place in IMPORTS if (importer, imported) == ("cli", "web")
    }
    assert from_web == {"cli/serve.py"}


def test_pages_know_no_planner() -> None:
    known = {imported for importer, imported, _place in IMPORTS if importer == "web"}
    assert "app" in known and known <= PAGES_MAY_KNOW


def test_the_store_knows_no_pages_and_no_jobs() -> None:
    known = {imported for importer, imported, _place in IMPORTS if importer == "store"}
    assert known <= STORE_MAY_KNOW
    for file in (PACKAGE / "store").rglob("*.py"):
        assert not HTTP & _modules(file), f"{file.name} imports {HTTP & _modules(file)}"


def test_planners_know_nothing_of_files_and_processes() -> None:
    """Reading, writing and sharing out are the application's; a step takes values and gives one."""
    for room in PLANNERS:
        for file in (PACKAGE / room).rglob("*.py"):
            assert not OUTSIDE & _modules(file), f"{room}/{file.name} imports {OUTSIDE & _modules(file)}"


def test_the_optimiser_knows_no_rooms() -> None:
    known = {imported for importer, imported, _place in IMPORTS if importer == "cutting"}
    assert known <= {"cutting", "units", "errors", "workings"}
