"""Measure the code itself: size, long and complex functions, imports past a room's face, what has no docstring.

    python benchmarks/measures.py            # this checkout
    python benchmarks/measures.py A B        # two checkouts, before and after, side by side

Complexity is McCabe's, counted by ruff. A room is a folder of the package; its face is its `__init__`.
"""

import argparse
import ast
import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[1]
LONGEST_FUNCTION, LONGEST_MODULE, MOST_COMPLEX = 60, 400, 12
_FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)


def measures(root: Path) -> dict[str, int]:
    """What is counted of one checkout, by name."""
    package = root / "src" / "firstcourse"
    texts = {file: file.read_text(encoding="utf-8") for file in sorted(package.rglob("*.py"))}
    trees = {file: ast.parse(text) for file, text in texts.items()}
    lines = {file: text.count("\n") for file, text in texts.items()}
    tests = sum(file.read_text(encoding="utf-8").count("\n") for file in (root / "tests").rglob("*.py"))
    words = sum(file.read_text(encoding="utf-8").count("\n") for file in package.rglob("*.ftl"))
    functions = [node for tree in trees.values() for node in ast.walk(tree) if isinstance(node, _FUNCTIONS)]
    long = [f for f in functions if (f.end_lineno or f.lineno) - f.lineno >= LONGEST_FUNCTION]
    imports = [past for file, tree in trees.items() for past in _crossings(file.relative_to(package), tree)]
    return {
        "lines": sum(lines.values()),
        "lines of message files": words,
        "lines of tests": tests,
        "modules": len(trees),
        f"modules over {LONGEST_MODULE} lines": sum(count > LONGEST_MODULE for count in lines.values()),
        "functions": len(functions),
        f"functions over {LONGEST_FUNCTION} lines": len(long),
        f"functions over complexity {MOST_COMPLEX}": _complex(package),
        "imports from another room": len(imports),
        "of these past its face": sum(imports),
        "public names without docstring": sum(1 for tree in trees.values() for _ in _undocumented(tree)),
    }


def _complex(package: Path) -> int:
    command = [
        sys.executable, "-m", "ruff", "check", "--isolated", "--select", "C901", "--output-format", "json",
        "--config", f"lint.mccabe.max-complexity={MOST_COMPLEX}", str(package),
    ]  # fmt: skip
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    return len(json.loads(done.stdout))


def _crossings(file: Path, tree: ast.Module) -> Iterator[bool]:
    """For each import of another room: whether it goes past the room's face."""
    home = file.parts[0]
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("firstcourse."):
            steps = (node.module or "").split(".")
            if steps[1] != home and (ROOT / "src" / "firstcourse" / steps[1]).is_dir():
                yield len(steps) > 2


def _undocumented(tree: ast.Module) -> Iterator[str]:
    for node in tree.body:
        named = isinstance(node, (*_FUNCTIONS, ast.ClassDef)) and not node.name.startswith("_")
        if named and ast.get_docstring(node) is None:
            yield node.name


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("root", type=Path, nargs="*", default=[ROOT])
    found = [measures(root.resolve()) for root in parser.parse_args().root]
    for name in found[0]:
        print(f"{name:38}" + "".join(f"{one[name]:>10,}" for one in found))


if __name__ == "__main__":
    main()
