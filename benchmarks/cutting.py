"""Fixed lists of pieces cut by us and by the open solver packingsolver; writes what an outside judge can check.

    .venv/bin/python benchmarks/cutting.py FILE --out DIR [--effort 0..3] [--oriented] [--leftovers] [--seconds S]

Both are run in the same go. The peer is given as long as our cutting took, and `--seconds` at the least. All
lengths are the file's own whole units.
"""

import argparse
import json
import sys
import time
from collections import Counter
from pathlib import Path
from statistics import median
from typing import Any

from checks import check_cutting
from joint_rooms import cutting_record
from peer import peer_record

from firstcourse.cutting import Blank, CuttingPlan, KeptSize, StockSize, cut
from firstcourse.cutting.kernels import warm
from firstcourse.cutting.packing import Manner, Room, pack


def copies(item: list[int]) -> int:
    """Copies of an item line; one where it names none."""
    return item[2] if len(item) > 2 else 1


def sheet_of(instance: dict[str, Any]) -> tuple[int, int]:
    """Size of the one sheet that can be bought in any number."""
    lines = instance.get("stock") or instance["bins"]
    bought = [line for line in lines if line.get("qty", line.get("copies")) is None]
    if len(bought) != 1:
        raise SystemExit(f"{name_of(instance)}: one size of sheet in any number is needed, not {len(bought)}")
    return bought[0]["w"], bought[0]["h"]


def name_of(instance: dict[str, Any]) -> str:
    """Its id, or its name where it has none."""
    return str(instance.get("id") or instance["name"])


def recorded(instance: dict[str, Any], *, oriented: bool, leftovers: bool) -> int | None:
    """Best known number of bought sheets as the file records it."""
    if leftovers and "ref_offcuts" in instance:
        return int(instance["ref_offcuts"]["new_sheets"])
    best = instance.get("ub_ori" if oriented else "ub_rot", instance.get("ref", {}).get("sheets"))
    return None if best is None else int(best)


def record(plan: CuttingPlan) -> dict[str, Any]:
    """The cutting as written; kept rectangles are named as what they are."""
    written = cutting_record(plan.sheets, plan.cost_bound.value)
    for line, sheet in zip(written["sheets"], plan.sheets, strict=True):
        if sheet.kept is not None:
            line["source"] = f"offcut:{sheet.kept}"
    written["claims"] |= {"sheets": plan.cost, "optimal": plan.proven}
    return written


def run(instance: dict[str, Any], given: argparse.Namespace) -> dict[str, Any]:
    """Cut one list by both, check both, write ours; returns its line of the summary."""
    name, (w, h) = name_of(instance), sheet_of(instance)
    blanks = [
        Blank(f"{number}.{copy}", item[0], item[1], ("sheet",), not given.oriented)
        for number, item in enumerate(instance["items"])
        for copy in range(copies(item))
    ]
    kept = [
        KeptSize(line["id"], "sheet", line["w"], line["h"])
        for line in instance.get("stock", ())
        if given.leftovers and line.get("qty") == 1
    ]
    began = time.perf_counter()
    plan = cut(blanks, [StockSize("sheet", w, h, 1)], kept, effort=given.effort)
    seconds = time.perf_counter() - began
    written = record(plan)
    peer = None
    if not kept:
        peer = peer_record(w, h, instance["items"], turn=not given.oriented, seconds=max(seconds, given.seconds))
    checked = [("ours", written)] + ([("the peer's", peer[0])] if peer else [])
    wanted = Counter((blank.w, blank.h) for blank in blanks)
    for whose, cutting in checked:
        faults = check_cutting(cutting, {"w": w, "h": h})
        got: Counter[tuple[int, int]] = Counter()
        for line in cutting["demand"]:
            got[(line["w"], line["h"])] += line["qty"]
        if got != wanted:
            faults.append("other pieces than the list asks for")
        if given.oriented and any(piece["rotated"] for piece in cutting["pieces"]):
            faults.append("a piece is turned")
        if faults:
            raise SystemExit(f"{name}, {whose}: " + "; ".join(faults))
    (given.out / f"{name}.cutting.json").write_text(json.dumps(written))
    practice = pack(blanks, [Room("sheet", None, w, h, 1, True)], (), Manner("area", "area", "short"))
    return {
        "id": name, "pieces": len(blanks), "sheets": plan.cost, "cuts": written["claims"]["cuts"],
        "lower_bound": plan.cost_bound.value, "proven": plan.proven, "practice_sheets": len(practice),
        "seconds": round(seconds, 4), "peer_sheets": peer[0]["claims"]["sheets"] if peer else None,
        "peer_cuts": peer[0]["claims"]["cuts"] if peer else None, "peer_seconds": peer[1] if peer else None,
        "best_known": recorded(instance, oriented=given.oriented, leftovers=bool(kept)),
    }  # fmt: skip


def totals(instances: list[dict[str, Any]]) -> dict[str, Any]:
    """Sums over all lists, and how the two compare list by list."""
    both = [line for line in instances if line["peer_sheets"] is not None]
    return {
        "lists": len(instances),
        **{key: sum(line[key] for line in instances)
           for key in ("sheets", "cuts", "lower_bound", "proven", "practice_sheets")},
        "best_known": sum(line["best_known"] or 0 for line in instances),
        "above_best_known": sum(line["sheets"] > (line["best_known"] or 0) for line in instances),
        "below_best_known": sum(line["sheets"] < (line["best_known"] or 0) for line in instances),
        "peer_lists": len(both),
        "peer_sheets": sum(line["peer_sheets"] for line in both),
        "our_sheets_there": sum(line["sheets"] for line in both),
        "peer_cuts": sum(line["peer_cuts"] for line in both),
        "more_than_peer": sum(line["sheets"] > line["peer_sheets"] for line in both),
        "fewer_than_peer": sum(line["sheets"] < line["peer_sheets"] for line in both),
        "median_seconds": median(line["seconds"] for line in instances),
        "most_seconds": max(line["seconds"] for line in instances),
    }  # fmt: skip


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--out", type=Path, required=True)
    parser.add_argument("--effort", type=int, default=1, choices=range(4))
    parser.add_argument("--oriented", action="store_true", help="no piece may be turned")
    parser.add_argument(
        "--leftovers", action="store_true", help="use the leftovers in stock; the peer is left out"
    )
    parser.add_argument("--seconds", type=float, default=1.0, help="least time for the peer")
    given = parser.parse_args()
    lists = json.loads(given.file.read_text())["instances"]
    given.out.mkdir(parents=True, exist_ok=True)
    warm()
    instances = [run(instance, given) for instance in lists]
    summed = totals(instances)
    (given.out / "summary.json").write_text(json.dumps({"totals": summed, "instances": instances}, indent=1))
    json.dump(summed, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main()
