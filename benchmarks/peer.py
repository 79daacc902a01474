"""The open guillotine solver packingsolver by itself, in a child process that may hang or crash without harm.

Read on its standard input: one JSON line {w, h, turn, items: [[w, h, copies], ...], seconds}. It writes one JSON
line for each plan it comes to, the best last: a list of sheets, each a tree {box, piece, parts}.
"""

import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

GRACE_S = 2.0
"""A child still running so long after its time is killed; what it wrote counts."""


def peer_record(
    w: int, h: int, items: list[list[int]], *, turn: bool, seconds: float
) -> tuple[dict[str, Any], float] | None:
    """The peer's best plan as a cutting record, and the seconds it was given; None where it found none."""
    asked = json.dumps({"w": w, "h": h, "turn": turn, "items": items, "seconds": seconds})
    command = [sys.executable, str(Path(__file__)), "child"]
    with subprocess.Popen(
        command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
    ) as child:
        try:
            written, _ = child.communicate(asked, timeout=seconds + GRACE_S)
        except subprocess.TimeoutExpired:
            child.kill()
            written, _ = child.communicate()
    plans = [json.loads(line) for line in written.splitlines() if line.endswith("]")]
    if not plans:
        return None
    return _record(min(plans, key=len), w, h, items), seconds


def _record(sheets: list[dict[str, Any]], w: int, h: int, items: list[list[int]]) -> dict[str, Any]:
    pieces: list[dict[str, Any]] = []
    cuts: list[dict[str, Any]] = []
    for number, root in enumerate(sheets, start=1):
        for kind, value in _walk(root):
            if kind == "cut":
                cuts.append({"sheet": f"S{number}", **value})
            else:
                place = dict(zip("xywh", value["box"], strict=True))
                turned = value["box"][2:] != items[value["piece"]][:2]
                pieces.append({"id": str(len(pieces)), "sheet": f"S{number}", **place, "rotated": turned})
    return {
        "sheets": [{"id": f"S{n}", "w": w, "h": h, "source": "new"} for n in range(1, len(sheets) + 1)],
        "pieces": pieces,
        "demand": [{"w": i[0], "h": i[1], "qty": i[2] if len(i) > 2 else 1} for i in items],
        "cuts": cuts,
        "claims": {"sheets": len(sheets), "cuts": len(cuts), "lower_bound": 0, "optimal": False},
    }


def _walk(node: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    """Cuts in working order and pieces of a panel, which its parts divide along one axis."""
    left, low, wide, high = node["box"]
    parts = sorted(node["parts"], key=lambda part: part["box"])
    if node["piece"] is not None:
        yield "piece", node
    along_x = all(part["box"][1] == low and part["box"][3] == high for part in parts)
    for part in parts[1:]:
        if along_x:
            yield "cut", {"axis": "x", "at": part["box"][0], "from": low, "to": low + high}
        else:
            yield "cut", {"axis": "y", "at": part["box"][1], "from": left, "to": left + wide}
    for part in parts:
        yield from _walk(part)


def _child() -> None:
    import packingsolver.rectangleguillotine as g

    asked = json.loads(sys.stdin.read())
    for stages in (3, None):
        builder = g.InstanceBuilder()
        builder.set_objective(g.Objective.BinPacking)
        if stages is None:
            builder.set_number_of_stages_unlimited()
        else:
            builder.set_number_of_stages(stages)
        builder.set_cut_type(g.CutType.NonExact)
        copies = sum((*item, 1)[2] for item in asked["items"])
        builder.add_bin_type(asked["w"], asked["h"], copies=copies)
        for item in asked["items"]:
            builder.add_item_type(item[0], item[1], copies=(*item, 1)[2], oriented=not asked["turn"])
        parameters = g.OptimizeParameters()
        parameters.time_limit = asked["seconds"] / 2
        parameters.verbosity_level = 0
        solution = g.optimize(builder.build(), parameters).solution
        if solution.full() and solution.feasible():
            print(json.dumps(_sheets(solution)), flush=True)


def _sheets(solution: Any) -> list[dict[str, Any]]:
    sheets = []
    for number in range(solution.number_of_different_bins()):
        made = solution.bin(number)
        nodes = made.nodes

        def tree(node: Any, nodes: Any = nodes) -> dict[str, Any]:
            return {
                "box": (node.l, node.b, node.r - node.l, node.t - node.b),
                "piece": node.item_type_id if node.item_type_id >= 0 and not node.children else None,
                "parts": [tree(nodes[child]) for child in node.children],
            }

        roots = [node for node in nodes if node.f < 0]
        sheets += [tree(roots[0])] * made.copies
    return sheets


if __name__ == "__main__":
    _child()
