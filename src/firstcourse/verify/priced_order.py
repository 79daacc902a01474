"""An order held against plan and price book: what is needed, that packs hold it, and that none cost less."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from itertools import combinations
from typing import Any

from firstcourse.verify.priced_fields import decimal, measures, total
from firstcourse.verify.verdict import Objection

_DUST = 1 - Fraction(1, 10**9)
_MOST_EXACT = 14
_JOINED = "edge_trim"
"""What may be longer than a stock length, and is then pieced together."""
Row = Mapping[str, Any]
Sizes = list[tuple[Fraction, list[tuple[int, Fraction]]]]


def check_order(plan: Row, price: Row) -> Iterator[Objection]:
    """Every line of an order, and that none is missing or too many."""
    wanted = [one for one in plan["quantities"] if one["exact"] > 0]
    if [one["item"] for one in wanted] != [line["item"] for line in price["order"]]:
        yield Objection("VER-951", "order", "does not list just what the plan buys")
        return
    for quantity, line in zip(wanted, price["order"], strict=True):
        working = plan["workings"][quantity["working"]]
        yield from _need(quantity, working, line)
        rows = [one for one in price["book"]["materials"] if one["item"] == line["item"]]
        pieces = [
            *measures(working, "edge"),
            *(one for one in measures(working, "each") if quantity["unit"] == "mm"),
        ]
        if pieces and line["item"] != _JOINED:
            rows = [row for row in rows if decimal(row["holds"]) >= Decimal(repr(float(max(pieces))))]
        yield from _from_book(rows, line)
        if pieces:
            yield from _cuts(pieces, rows, line)
        else:
            yield from _packs(rows, line)
        if decimal(line["cost"]) != total(decimal(one["cost"]) for one in line["bought"]):
            yield Objection("VER-952", line["item"], "costs otherwise than its packs")
        yield from _mass(plan, rows, line)


def _need(quantity: Row, working: Row, line: Row) -> Iterator[Objection]:
    inputs = working["inputs"]
    spare = Decimal(repr(inputs["spare"]["value"])) if "spare" in inputs else Decimal(0)
    if quantity["unit"] in ("tile", "chip"):
        spare = Decimal(math.ceil(spare - Decimal("0.000000001")))
    kept = Decimal(repr(inputs["kept"]["value"])) if "kept" in inputs else Decimal(0)
    exact = Decimal(repr(float(quantity["exact"])))
    figures = (exact, spare, kept, exact + spare + kept)
    if tuple(decimal(line[name]) for name in ("exact", "breakage", "spares", "need")) != figures:
        yield Objection("VER-951", line["item"], "needs otherwise than the plan's working has it")
    thumb = [inputs[f"by_thumb_{way}"] for way in ("straight", "diagonal") if f"by_thumb_{way}" in inputs]
    one_lot = line["item"].startswith("tile_stock/") or line["item"].startswith("grout")
    if line["unit"] != quantity["unit"] or (line["thumb"] or []) != thumb or line["one_lot"] != one_lot:
        yield Objection("VER-951", line["item"], "has another unit, rule of thumb or lot than the plan asks")


def _from_book(rows: Sequence[Row], line: Row) -> Iterator[Objection]:
    """Each price is that of the book for so many packs."""
    if bool(rows) != bool(line["bought"]):
        yield Objection("VER-952", line["item"], "is priced without the book, or the book has a price for it")
    seen = [(one["supplier"], decimal(one["holds"])) for one in line["bought"]]
    if len(set(seen)) < len(seen):
        yield Objection("VER-952", line["item"], "lists the same packs twice")
    for one in line["bought"]:
        number, each = one["packs"], decimal(one["each"])
        own = [row for row in rows if (row["supplier"], decimal(row["holds"])) == _key(one)]
        tiers = [row for row in own if row["from_packs"] <= number and row["unit"] == line["unit"]]
        reached = max(tiers, key=lambda row: row["from_packs"], default=None)
        if reached is None or decimal(reached["price"]) != each or decimal(one["cost"]) != each * number:
            yield Objection("VER-952", line["item"], f"is not {number} packs at the book's price")


def _key(one: Row) -> tuple[str, Decimal]:
    return one["supplier"], decimal(one["holds"])


def _offers(rows: Sequence[Row]) -> dict[tuple[str, Decimal], list[tuple[int, Fraction]]]:
    found: dict[tuple[str, Decimal], list[tuple[int, Fraction]]] = {}
    for row in rows:
        found.setdefault(_key(row), []).append((row["from_packs"], Fraction(decimal(row["price"]))))
    return {key: sorted(tiers) for key, tiers in found.items()}


def _packs(rows: Sequence[Row], line: Row) -> Iterator[Objection]:
    if line["cuts"] or line["least"] is not None:
        yield Objection("VER-954", line["item"], "has a cut list though nothing of it is cut from lengths")
    if not line["bought"]:
        return
    need = Fraction(decimal(line["need"])) * _DUST
    held = sum(Fraction(decimal(one["holds"])) * one["packs"] for one in line["bought"])
    if held < need:
        yield Objection("VER-952", line["item"], "packs do not hold what is needed")
        return
    suppliers = {one["supplier"] for one in line["bought"]}
    if line["one_lot"] and len(suppliers) > 1:
        yield Objection("VER-952", line["item"], "is bought of several suppliers, though it must be one lot")
    offers = _offers(rows)
    cost, packs = Fraction(decimal(line["cost"])), sum(one["packs"] for one in line["bought"])
    groups = [{key[0]} for key in offers] if line["one_lot"] else [{key[0] for key in offers}]
    for group in groups:
        sizes = [(Fraction(key[1]), tiers) for key, tiers in offers.items() if key[0] in group]
        if _less(need, sizes, cost, packs):
            yield Objection(
                "VER-953", line["item"], "other packs of the book hold it for less, or fewer for as much"
            )
            return


def _less(need: Fraction, sizes: Sizes, cost: Fraction, packs: int) -> bool:
    """Whether packs hold the need for less than a cost, or as cheaply in fewer packs; all that can are tried."""
    if cost < 0 or (cost == 0 and packs <= 0):
        return False
    if need <= 0:
        return cost > 0 or packs > 0
    if not sizes:
        return False
    (holds, tiers), *rest = sizes
    most = math.ceil(need / holds)
    starts = [start for start, _ in tiers if start > most]
    tried = [most, *starts] if not rest else [*range(most + 1), *starts]
    for number in tried:
        price = max((tier for tier in tiers if tier[0] <= number), default=(0, Fraction(0)))[1] * number
        if _less(need - number * holds, rest, cost - price, packs - number):
            return True
    return False


def _cuts(pieces: Sequence[float], rows: Sequence[Row], line: Row) -> Iterator[Objection]:
    """Each piece is cut once, from lengths that hold it; none costs less by the bound of each length on offer."""
    if not line["bought"]:
        if line["cuts"] or line["least"] is not None:
            yield Objection("VER-954", line["item"], "is cut from lengths that nobody sells")
        return
    if len(line["bought"]) != 1:
        yield Objection("VER-954", line["item"], "is cut from more than one kind of length")
        return
    (bought,) = line["bought"]
    stock = decimal(bought["holds"])
    placed = Counter(decimal(one) for cut in line["cuts"] for one in cut["pieces"])
    parts = Counter[Decimal]()
    for piece in pieces:
        exact = Decimal(repr(float(piece)))
        parts[exact] += int(exact // stock) + bool(exact % stock)
    fits = all(
        sum(_share(decimal(one), stock, len(cut["pieces"])) for one in cut["pieces"]) <= stock
        for cut in line["cuts"]
    )
    if placed != parts or not fits or len(line["cuts"]) != bought["packs"]:
        yield Objection(
            "VER-954", line["item"], "the cut list does not give each piece once from lengths that hold it"
        )
    fewest = _fewest_whole(pieces, stock)
    if not isinstance(line["least"], int) or line["least"] > min(fewest, bought["packs"]):
        yield Objection("VER-954", line["item"], "fewer lengths may do than its bound says")
    elif len(pieces) <= _MOST_EXACT and line["least"] != bought["packs"]:
        yield Objection("VER-954", line["item"], "fewer lengths would do")
    for (_, holds), tiers in _offers(rows).items() if len(pieces) <= _MOST_EXACT else ():
        number = _fewest_whole(pieces, holds)
        price = max(tier for tier in tiers if tier[0] <= number)[1] * number
        if (price, number) < (Fraction(decimal(line["cost"])), bought["packs"]):
            yield Objection(
                "VER-953", line["item"], "other lengths of the book cost less, or are fewer for as much"
            )


def _fewest_whole(pieces: Sequence[float], stock: Decimal) -> int:
    """The fewest lengths for pieces, whole ones for what is longer; a bound where pieces are many."""
    exact = [Decimal(repr(float(piece))) for piece in pieces]
    full = sum(int(piece // stock) for piece in exact)
    return full + _fewest([rest for piece in exact if (rest := piece % stock)], stock)


def _share(piece: Decimal, stock: Decimal, together: int) -> Decimal:
    """What a piece takes of a length: the rest of a piece longer than that, or a whole length it has alone."""
    return min(piece, stock) if together == 1 else piece % stock


def _fewest(rests: Sequence[Decimal], stock: Decimal) -> int:
    """The fewest lengths where they are few, by all subsets; else what their sum and the long ones ask."""
    by_sum = math.ceil(total(rests) / stock)
    if len(rests) > _MOST_EXACT:
        pairs = combinations(sorted(rests), 2)
        long = sum(2 * one > stock for one in rests)
        return max(by_sum, long, len(rests) if all(a + b > stock for a, b in pairs) else 0, _level(rests, stock))
    # For each set of pieces: the fewest lengths, and the least that is begun of the last one.
    best: list[tuple[int, Decimal]] = [(0, stock)]
    for chosen in range(1, 1 << len(rests)):
        options = []
        for index, piece in enumerate(rests):
            if chosen >> index & 1:
                bins, begun = best[chosen & ~(1 << index)]
                options.append((bins, begun + piece) if begun + piece <= stock else (bins + 1, piece))
        best.append(min(options))
    return best[-1][0]


def _level(rests: Sequence[Decimal], stock: Decimal) -> int:
    """The bound by large, middle and small pieces, for every border between them."""
    best = 0
    for small in {piece for piece in rests if 2 * piece <= stock}:
        large = sum(piece > stock - small for piece in rests)
        middle = [piece for piece in rests if stock - small >= piece and 2 * piece > stock]
        rest = total(piece for piece in rests if 2 * piece <= stock and piece >= small)
        beside = len(middle) * stock - total(middle)
        best = max(best, large + len(middle) + max(0, math.ceil((rest - beside) / stock)))
    return best


def _mass(plan: Row, rows: Sequence[Row], line: Row) -> Iterator[Objection]:
    masses: list[Decimal] = []
    for one in line["bought"]:
        own = [row for row in rows if _key(row) == _key(one)]
        sheet = plan["workings"].get(f"quantities-sheet_mass@{line['item']}")
        given = [decimal(row["kg"]) for row in own if row["kg"] is not None]
        if given and all(row["kg"] is not None for row in own):
            masses.append(given[-1] * one["packs"])
        elif line["unit"] == "kg":
            masses.append(decimal(one["holds"]) * one["packs"])
        elif sheet is not None:
            masses.append(Decimal(repr(sheet["result"]["value"])) * decimal(one["holds"]) * one["packs"])
    kg = total(masses) if masses and len(masses) == len(line["bought"]) else None
    if (None if line["kg"] is None else decimal(line["kg"])) != kg:
        yield Objection("VER-955", line["item"], "weighs otherwise than its packs")
