"""Change every kind of field of plans, and list the changes that `verify` lets pass.

    python benchmarks/tampering.py PLAN.json [PLAN.json …] [--each 1] [--only '/starts/']

Fields are grouped by their path, with list indices and names left out; of each group so many, evenly spread, are
changed in every way that goes with their type. Prints what share of the kinds is noticed in each way tried, and
those that survive with one example each; the exit code is 1 where less than 99 of 100 kinds are noticed. What is
left out, with the reason, stands in `LEFT_OUT`. Each survivor is told as soon as it is found, on standard error.
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

from firstcourse.app.store import MOST_KEPT, Memory
from firstcourse.reuse import Steps
from firstcourse.verify import verify

Place = tuple[Any, ...]
_TICK = 1 / 640
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
LEFT_OUT = {
    "job/digest": "it stands for a job document that is not at hand; what was given has a seal of its own",
    "job/effort": "how long was searched; any plan that is proved may have been found in less",
    "surfaces/[]/tiled/[]/starts: drop": "one start fewer to choose from; those that are told are each laid again",
    "bounds: swap": "their order says nothing; each names what it bounds",
    "findings: swap": "their order is that of the work; each names what it is about",
    "pieces: swap": "their order says nothing; each is named",
    "quantities: swap": "their order says nothing; each names its item",
    "sheets: swap": "their order says nothing; each is named",
    "sheets/[]/parts: swap": "their order says nothing; each is named and placed",
    "structures: swap": "their order says nothing; each names its surface",
}
"""Kinds of fields that prove nothing, or a way of changing one that says nothing else, with the reason."""
ENOUGH = 0.99


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
    """Path of a leaf without indices; a working goes by its formula, what it names by itself."""
    parts: list[str] = []
    for index, key in enumerate(place):
        if isinstance(key, int):
            parts.append("[]")
        elif index and place[index - 1] in ("workings", "counts"):
            parts.append(str(key).partition("@")[0] if place[index - 1] == "workings" else "*")
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


def survivors(
    document: dict[str, Any], each: int, only: re.Pattern[str]
) -> tuple[Counter[str], dict[str, list[str]]]:
    """How many changes were tried by group, and those that nothing objects to."""
    do = Steps(Memory(MOST_KEPT)).do
    groups: dict[str, list[tuple[Place, Any]]] = defaultdict(list)
    for place, value in leaves(document):
        if place[0] != "given" and group(place) not in LEFT_OUT and only.search(group(place)):
            groups[group(place)].append((place, value))
    tried: Counter[str] = Counter()
    passed: dict[str, list[str]] = defaultdict(list)
    for name in sorted(groups):
        found = groups[name]
        for place, value in found[:: max(1, -(-len(found) // each))]:
            for how, changed in changes(value):
                if changed == value or f"{name}: {how}" in LEFT_OUT:
                    continue
                spoiled = copy.deepcopy(document)
                at: Any = spoiled
                for key in place[:-1]:
                    at = at[key]
                at[place[-1]] = changed
                tried[name] += 1
                if verify(spoiled, do=do).verified:
                    passed[name].append(f"{how} at {'/'.join(map(str, place))}: {str(value)[:60]}")
                    print(f"  {name}: {passed[name][-1]}", file=sys.stderr, flush=True)
    return tried, passed


def main() -> None:
    """Sweep the plans that are named."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("plans", nargs="+", type=Path)
    parser.add_argument("--each", type=int, default=2, help="leaves changed of each group")
    parser.add_argument("--only", type=re.compile, default=re.compile(""), help="kinds of field, by a pattern")
    options = parser.parse_args()
    enough = True
    for path in options.plans:
        begun = time.perf_counter()
        document = json.loads(path.read_text(encoding="utf-8"))
        if not verify(document).verified:
            sys.exit(f"{path}: does not verify as it stands")
        tried, passed = survivors(document, options.each, options.only)
        count = sum(map(len, passed.values()))
        noticed = 1 - len(passed) / len(tried)
        enough &= noticed >= ENOUGH
        print(
            f"{path}: {tried.total()} changes of {len(tried)} kinds of field, {count} pass; noticed in every "
            f"way tried: {noticed:.1%} of the kinds; {time.perf_counter() - begun:.0f} s"
        )
        for name, rows in sorted(passed.items()):
            print(f"  {name}: {len(rows)} of {tried[name]} pass; {rows[0]}")
    for name, reason in LEFT_OUT.items():
        print(f"left out: {name}: {reason}")
    sys.exit(0 if enough else 1)


if __name__ == "__main__":
    main()
