"""Make the map of the house from the code: `.venv/bin/python docs/house.py` writes house.md."""

import ast
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "src" / "firstcourse"
PAGE = ROOT / "docs" / "house.md"


def _purpose(file: Path) -> str:
    """First line of a module's docstring."""
    return (ast.get_docstring(ast.parse(file.read_text(encoding="utf-8"))) or "").splitlines()[0]


def order() -> list[str]:
    """The rooms from the ground up: each may import only what stands before it."""
    tool = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["importlinter"]
    layers = next(contract["layers"] for contract in tool["contracts"] if contract["type"] == "layers")
    return [layer.strip("()").removeprefix("firstcourse.") for layer in reversed(layers)]


def page() -> str:
    """The page: rooms in the order of imports, each with its modules."""
    parts = [
        "# Map of the house\n",
        "Made from the code by `.venv/bin/python docs/house.py`. Rooms stand from the ground up: each may import",
        "only what stands above it here (`pyproject.toml`, and a test). A room's face is its `__init__`.\n",
    ]
    for name in order():
        folder, file = PACKAGE / name, PACKAGE / f"{name}.py"
        if file.exists():
            parts.append(f"**{name}**: {_purpose(file)}\n")
        elif folder.is_dir():
            parts.append(f"## {name}\n\n{_purpose(folder / '__init__.py')}\n")
            parts += [
                f"- `{module.relative_to(folder).with_suffix('')}`: {_purpose(module)}"
                for module in sorted(folder.rglob("*.py"))
                if module.name != "__init__.py"
            ]
            parts.append("")
    return "\n".join(parts)


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
