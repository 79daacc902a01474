"""Tiles out of place or not cut as told, falls, heights and lines to snap."""

from tamperings.tools import INCH, Plan, answered_by, box, first, shift, tick


@answered_by("VER-702")
def overlap_two_tiles(plan: Plan) -> None:
    tiles = first(s["tiles"] for s in plan["surfaces"] if len(s.get("tiles", ())) > 1)
    tiles[1]["outline"] = tiles[0]["outline"]


@answered_by("VER-701")
def push_a_tile_off_its_surface(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if s.get("tiles"))
    shift(surface["tiles"][0]["outline"], box(surface["outline"])[2], 0)


@answered_by("VER-703")
def cut_too_much_from_a_tile(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if any(not t["whole"] for t in s.get("tiles", ())))
    source = first(t["from"] for t in surface["tiles"] if not t["whole"])
    for tile in surface["tiles"]:
        tile.update({"from": source})
    first(t for t in surface["tiles"] if t["whole"])["whole"] = False


@answered_by("VER-704")
def close_a_tile_joint(plan: Plan) -> None:
    tiles = first(s["tiles"] for s in plan["surfaces"] if len(s.get("tiles", ())) > 1)
    for ring in (tiles[0]["outline"], tiles[0].get("laid", [])):
        shift(ring, 0.5, 0.5)


@answered_by("VER-705")
def leave_a_tile_out(plan: Plan) -> None:
    first(s["tiles"] for s in plan["surfaces"] if s.get("tiles")).pop(0)


@answered_by("VER-705")
def tile_less_of_a_surface(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if s.get("tiled"))
    surface["tiles"], surface["tiled"][0]["area"] = (
        [],
        [{"outline": [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]], "holes": []}],
    )


@answered_by("VER-706")
def call_a_cut_tile_whole(plan: Plan) -> None:
    cut = first(t for s in plan["surfaces"] for t in s.get("tiles", ()) if not t["whole"])
    cut.update({"whole": True, "from": ""})


@answered_by("VER-706")
def shrink_the_tile_that_was_bought(plan: Plan) -> None:
    stock = first(iter(plan.get("tile_stock", ())))
    stock["size"] = [tick(side * 0.9) for side in stock["size"]]


@answered_by("VER-703")
def mirror_a_cut_tile(plan: Plan) -> None:
    """Cut from the back, a tile with no mirror axis does not fit."""
    cut = first(t for s in plan["surfaces"] for t in s.get("tiles", ()) if t.get("cut"))
    left, lower, right, upper = box(cut["cut"])
    cut["cut"] = [[left, lower], [right, lower], [right, tick(lower + (upper - lower) / 3)], [left, upper]]


@answered_by("VER-703")
def cut_two_pieces_from_one_place(plan: Plan) -> None:
    pairs = [t for s in plan["surfaces"] for t in s.get("tiles", ()) if t.get("cut")]
    one = first(iter(pairs))
    other = first(t for t in pairs[1:] if t["stock"] == one["stock"])
    other["from"] = one["from"]
    by_u, by_v = box(one["cut"])[0] - box(other["cut"])[0], box(one["cut"])[1] - box(other["cut"])[1]
    shift(other["cut"], by_u, by_v)


@answered_by("VER-708")
def grout_the_soft_joints(plan: Plan) -> None:
    tiled = [s for s in plan["surfaces"] if s.get("tiles")]
    footed = [s for s in tiled if any(side["kind"] == "foot" for side in s["sides"])]
    first(iter(footed or tiled))["soft_joints"] = []


@answered_by("VER-762", everywhere=False)
def allow_a_larger_tile(plan: Plan) -> None:
    fall = first(s["fall"] for s in plan["surfaces"] if s.get("fall") and s["fall"].get("largest_tile"))
    fall["largest_tile"] = tick(fall["largest_tile"] * 1.05)


@answered_by("VER-711", everywhere=False)
def snap_a_line_elsewhere(plan: Plan) -> None:
    mark = first(m for s in plan["surfaces"] for m in s.get("marks", ()) if m["kind"] != "pole")
    shift(mark["line"], 0.0625 * INCH, 0.0625 * INCH)


@answered_by("VER-720", everywhere=False)
def mark_a_pole_elsewhere(plan: Plan) -> None:
    mark = first(m for s in plan["surfaces"] for m in s.get("marks", ()) if m["kind"] == "pole")
    mark["distance"] = tick(mark["distance"] + 0.0625 * INCH)


@answered_by("VER-720", everywhere=False)
def leave_out_a_mark_of_a_pole(plan: Plan) -> None:
    marks = first(s["marks"] for s in plan["surfaces"] if any(m["kind"] == "pole" for m in s.get("marks", ())))
    marks.remove(first(m for m in marks if m["kind"] == "pole"))


@answered_by("VER-771", everywhere=False)
def read_a_height_wrong(plan: Plan) -> None:
    heights = first(s["heights"] for s in plan["surfaces"] if len(s.get("heights", ())) > 2)
    heights[0]["off"] = tick(heights[0]["off"] + 2)


@answered_by("VER-771", everywhere=False)
def fill_what_is_left(plan: Plan) -> None:
    heights = first(s["heights"] for s in plan["surfaces"] if any(h["do"] == "fill" for h in s.get("heights", ())))
    first(h for h in heights if h["do"] == "fill")["do"] = "leave"
