"""Change every kind of field of plans, and list the changes that `verify` lets pass.

    python benchmarks/tampering.py PLAN.json … [--each 1] [--only '/starts/'] [--part 1/4] [--record FILE]

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
from collections import defaultdict
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from typing import Any

import firstcourse.verify
from firstcourse.app.store import MOST_KEPT, Memory
from firstcourse.reuse import Steps
from firstcourse.verify import objecting, verify
from firstcourse.verify.proof import READING

Place = tuple[Any, ...]
_TICK = 1 / 640
_SEEN = 2e-6
"""Least change of a computed number by proportion: these are written to nine figures and proved to a millionth."""
COMPUTED = frozenset(("workings", "facts", "values"))
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


def changes(value: Any, place: Place = ()) -> Iterator[tuple[str, Any]]:
    """Ways of changing one value, each with its name."""
    if isinstance(value, bool):
        yield "other", not value
    elif isinstance(value, int | float):
        step = max(_TICK, _SEEN * abs(value)) if COMPUTED.intersection(place) else _TICK
        yield "+1 step", value + 1 if isinstance(value, int) else value + step
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


class Record:
    """What was found of each kind of field, kept in a file as it is found: a sweep that ends early goes on.

    What was found holds for one plan and one state of the verifier: both are part of what it is kept under.
    """

    def __init__(self, path: Path | None, document: dict[str, Any], each: int) -> None:
        code = sorted(Path(firstcourse.verify.__file__).parent.rglob("*.py"))
        seen = sha256(json.dumps([document, each], sort_keys=True).encode())
        for source in code:
            seen.update(source.read_bytes())
        self._about = seen.hexdigest()
        self._path = path
        lines = path.read_text(encoding="utf-8").splitlines() if path is not None and path.exists() else []
        rows = map(json.loads, lines)
        self.found: dict[str, tuple[int, list[str]]] = {
            row["kind"]: (row["tried"], row["passed"]) for row in rows if row["about"] == self._about
        }

    def keep(self, kind: str, tried: int, passed: list[str]) -> None:
        """Keep what was found of one kind."""
        self.found[kind] = (tried, passed)
        if self._path is not None:
            with self._path.open("a", encoding="utf-8") as file:
                row = {"about": self._about, "kind": kind, "tried": tried, "passed": passed}
                file.write(json.dumps(row) + "\n")


def kinds(document: dict[str, Any], each: int, only: re.Pattern[str]) -> dict[str, list[tuple[Place, Any]]]:
    """Fields to be changed of each kind; those that prove nothing are left out."""
    groups: dict[str, list[tuple[Place, Any]]] = defaultdict(list)
    for place, value in leaves(document):
        if place[0] != "given" and group(place) not in LEFT_OUT and only.search(group(place)):
            groups[group(place)].append((place, value))
    return {name: found[:: max(1, -(-len(found) // each))] for name, found in sorted(groups.items())}


def changed_at(value: Any, place: Place, other: Any) -> Any:
    """A document with one value changed; what the change does not touch is shared with the document."""
    if not place:
        return other
    copied = copy.copy(value)
    copied[place[0]] = changed_at(value[place[0]], place[1:], other)
    return copied


def sweep(document: dict[str, Any], chosen: dict[str, list[tuple[Place, Any]]], record: Record) -> None:
    """Change the fields chosen, each in every way, and record what passes.

    The checks that objected to changes of like fields are made first, the latest before the others.
    """
    do = Steps(Memory(MOST_KEPT)).do
    near: list[str] = []
    for name, fields in chosen.items():
        if name in record.found:
            continue
        tried, passed = 0, []
        for place, value in fields:
            for how, other in changes(value, place):
                if other == value or f"{name}: {how}" in LEFT_OUT:
                    continue
                tried += 1
                check = objecting(changed_at(document, place, other), do=do, first=near)
                if check is None:
                    passed.append(f"{how} at {'/'.join(map(str, place))}: {str(value)[:60]}")
                    print(f"  {name}: {passed[-1]}", file=sys.stderr, flush=True)
                elif check != READING:
                    near = [check, *(one for one in near if one != check)]
        record.keep(name, tried, passed)


def _part(text: str) -> tuple[int, int]:
    found = re.fullmatch(r"([0-9]+)/([0-9]+)", text)
    if found is None or not 1 <= int(found[1]) <= int(found[2]):
        raise argparse.ArgumentTypeError(f"{text!r} is not K/N with K from 1 to N")
    return int(found[1]), int(found[2])


def main() -> None:
    """Sweep the plans that are named."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("plans", nargs="+", type=Path)
    parser.add_argument("--each", type=int, default=1, help="fields changed of each kind")
    parser.add_argument("--only", type=re.compile, default=re.compile(""), help="kinds of field, by a pattern")
    parser.add_argument("--part", type=_part, default=(1, 1), metavar="K/N", help="each N-th kind, from the K-th")
    parser.add_argument("--record", type=Path, help="file to keep what is found in, and to go on from")
    options = parser.parse_args()
    enough = True
    for path in options.plans:
        begun = time.process_time()
        document = json.loads(path.read_text(encoding="utf-8"))
        if not verify(document).verified:
            sys.exit(f"{path}: does not verify as it stands")
        every = kinds(document, options.each, options.only)
        chosen = {name: every[name] for name in [*every][options.part[0] - 1 :: options.part[1]]}
        record = Record(options.record, document, options.each)
        sweep(document, chosen, record)
        tried = {name: count for name in chosen if (count := record.found[name][0])}
        passed = {name: rows for name in tried if (rows := record.found[name][1])}
        noticed = 1 - len(passed) / max(1, len(tried))
        enough &= noticed >= ENOUGH
        print(
            f"{path}: {sum(tried.values())} changes of {len(tried)} kinds of field, "
            f"{sum(map(len, passed.values()))} of {len(passed)} kinds pass; noticed in every way tried: "
            f"{noticed:.1%} of the kinds; {time.process_time() - begun:.0f} s of processor"
        )
        for name, rows in passed.items():
            print(f"  {name}: {len(rows)} of {tried[name]} pass; {rows[0]}")
    for name, reason in LEFT_OUT.items():
        print(f"left out: {name}: {reason}")
    sys.exit(0 if enough else 1)


if __name__ == "__main__":
    main()
