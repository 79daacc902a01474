"""Change every kind of number, text and list element in plans, and list the changes that `verify` lets pass.

Leaves are grouped by their path, with list indices and names left out; of each group a few leaves, evenly spread,
are changed in every way that goes with their type. Prints the groups that survive, with one example of each.

Usage: python benchmarks/tampering.py PLAN.json [--each 2]
"""

import argparse
import copy
import json
import re
import sys
import time
from collections import Counter, defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from firstcourse.verify import verify

Place = tuple[Any, ...]
_TICK = 1 / 640
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_PROSE = frozenset({"title", "formula", "source", "locator", "argument", "message", "remedy", "words", "why"})
"""Fields that say in words what others prove."""


def leaves(value: Any, place: Place = ()) -> Iterator[tuple[Place, Any]]:
    """Every number, text, flag and list of a document, with the keys that lead to it."""
    if isinstance(value, dict):
        for key, item in value.items():
            yield from leaves(item, (*place, key))
        return
    if isinstance(value, list):
        if value:
            yield place, value
        for index, item in enumerate(value):
            yield from leaves(item, (*place, index))
        return
    if value is not None:
        yield place, value


def group(place: Place) -> str:
    """Path of a leaf without indices; a working goes by the first word of its name, else by its kind."""
    parts = []
    for index, key in enumerate(place):
        if isinstance(key, int):
            parts.append("[]")
        elif index and place[index - 1] == "workings":
            name = str(key)
            parts.append(
                re.sub(r"\d+", "#", name.rsplit(".", 1)[-1]) if "." in name else " ".join(name.split()[:2])
            )
        elif index and place[index - 1] == "counts":
            parts.append("*")
        else:
            parts.append(str(key))
    return "/".join(parts)


def changes(value: Any) -> Iterator[tuple[str, Any]]:
    """Ways of changing one value, each with its name."""
    if isinstance(value, bool):
        yield "other", not value
    elif isinstance(value, int | float):
        yield "+1 step", value + 1 if isinstance(value, int) else value + _TICK
        yield "+5 %", round(value * 1.05 * 640) / 640 if isinstance(value, float) else value + max(1, value // 20)
        if value:
            yield "sign", -value
    elif isinstance(value, str):
        found = _NUMBER.search(value)
        if found:
            more = f"{float(found[0]) * 1.05 + 1:.{len(found[0].partition('.')[2])}f}"
            yield "number +5 %", value[: found.start()] + more + value[found.end() :]
        yield "other text", value + "x"
    elif isinstance(value, list):
        yield "drop", value[:-1]
        yield "duplicate", [*value, value[-1]]
        if len(value) > 1 and value[0] != value[-1]:
            yield "swap", [value[-1], *value[1:-1], value[0]]


def survivors(document: dict[str, Any], each: int) -> tuple[Counter[str], dict[str, list[str]]]:
    """How many changes were tried by group, and those that nothing objects to."""
    groups: dict[str, list[tuple[Place, Any]]] = defaultdict(list)
    for place, value in leaves(document):
        if not _PROSE & set(place):
            groups[group(place)].append((place, value))
    tried: Counter[str] = Counter()
    passed: dict[str, list[str]] = defaultdict(list)
    for name in sorted(groups):
        found = groups[name]
        for place, value in found[:: max(1, -(-len(found) // each))]:
            for how, changed in changes(value):
                spoiled = copy.deepcopy(document)
                at: Any = spoiled
                for key in place[:-1]:
                    at = at[key]
                at[place[-1]] = changed
                tried[name] += 1
                if verify(spoiled).verified:
                    passed[name].append(f"{how} at {'/'.join(map(str, place))}: {str(value)[:60]}")
    return tried, passed


def main() -> None:
    """Sweep the plans that are named."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("plans", nargs="+", type=Path)
    parser.add_argument("--each", type=int, default=2, help="leaves changed of each group")
    options = parser.parse_args()
    for path in options.plans:
        begun = time.perf_counter()
        document = json.loads(path.read_text(encoding="utf-8"))
        if not verify(document).verified:
            sys.exit(f"{path}: does not verify as it stands")
        tried, passed = survivors(document, options.each)
        count = sum(map(len, passed.values()))
        print(
            f"{path}: {tried.total()} changes in {len(tried)} groups, {count} pass in {len(passed)} groups, "
            f"{time.perf_counter() - begun:.0f} s"
        )
        for name, rows in sorted(passed.items()):
            print(f"  {name}: {len(rows)} of {tried[name]} pass; {rows[0]}")


if __name__ == "__main__":
    main()
