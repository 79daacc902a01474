"""A proposal as values: scope off the plan, price off the offer, and the firm's own words as it wrote them."""

import hashlib
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from decimal import ROUND_FLOOR, Decimal, localcontext
from typing import Literal

from shapely import Polygon

from firstcourse.errors import InputValueError
from firstcourse.findings import Severity
from firstcourse.plan import Frozen, Plan, Surface, SurfaceKind
from firstcourse.plan.base import Ticks
from firstcourse.pricing.book import Found
from firstcourse.pricing.offer import Amount, Offer, figures
from firstcourse.pricing.total import CENT
from firstcourse.pricing.wording import Stage, Wording
from firstcourse.units import TICKS_PER_MM

_M2 = (TICKS_PER_MM * 1000) ** 2
SectionName = Literal["ground", "water", "tile", "site"]
SECTIONS: tuple[SectionName, ...] = ("ground", "water", "tile", "site")
_WATER = {"liquid_membrane", "sheet_membrane", "liner", "sealing_band", "inside_corners", "outside_corners",
          "drain_flanges", "collars", "bed_mortar"}  # fmt: skip
_TILE = {"tile_stock", "tile_mortar", "large_tile_mortar", "grout", "joint_sealant", "bond_breaker", "edge_trim",
         "spacers", "backer_rod"}  # fmt: skip
_TILE_WORK = ("set_tile_", "set_large_tile_", "set_mosaic_", "cut_tile_", "trowel", "mix", "grout_joints",
              "seal_joints")  # fmt: skip
_SITE_WORK = ("set_up_room", "protect_and_clean", "carry")


class TiledScope(Frozen):
    """One pattern of tile on a surface."""

    tiles: tuple[str, ...]
    pattern: str
    angle: int
    joint: Ticks


class SurfaceScope(Frozen):
    """What is built on one surface.

    Attributes:
        boards: New boards are set; those that are up already do not count.
        membrane: As the plan has it.
        area: That is tiled, or boarded where nothing is tiled [m2].
    """

    surface: str
    boards: bool
    membrane: str
    tiled: tuple[TiledScope, ...]
    area: Amount


class RoomScope(Frozen):
    """A room, what is built in it, and which of its walls stay as they are."""

    room: str
    surfaces: tuple[SurfaceScope, ...]
    untouched: tuple[str, ...]


class Section(Frozen):
    """A part of the price before tax."""

    section: SectionName
    amount: Amount


class TaxLine(Frozen):
    """A tax as its step of the price names it."""

    of: str
    amount: Amount


class Due(Frozen):
    """What is paid at a stage."""

    at: Stage
    percent: Amount
    amount: Amount


class Proposal(Frozen):
    """An offer to a client.

    Attributes:
        plan: SHA-256 of plan.json; likewise offer of price.json.
        stops: Findings that stop the work, as `code place`: they are settled first.
        included: Codes of what is done; likewise excluded and assumed.
        found: Unit prices of what strip-out may show.
        sections: Parts of `price`, adding up to it exactly; none where the firm tells one number.
        starts: Day on which work begins, by the calendar or as the job says; likewise ends; empty where
            neither says.
        valid_until: The day of the plan and so many days, or the last day of a quote that it rests on.
    """

    format: Literal["firstcourse-proposal"] = "firstcourse-proposal"
    version: Literal[1] = 1
    plan: str
    offer: str
    on: str
    currency: str
    words: Wording
    rooms: tuple[RoomScope, ...]
    stops: tuple[str, ...]
    included: tuple[str, ...]
    excluded: tuple[str, ...]
    assumed: tuple[str, ...]
    found: tuple[Found, ...]
    sections: tuple[Section, ...]
    price: Amount
    taxes: tuple[TaxLine, ...]
    total: Amount
    payments: tuple[Due, ...]
    starts: str
    ends: str
    valid_until: str


def propose(plan: Plan, document: str, offer: Offer, offer_document: str, words: Wording) -> Proposal:
    """A proposal.

    Args:
        plan: A verified plan.
        document: Its plan.json.
        offer: Its order and price.
        offer_document: Its price.json.
        words: The firm's own.

    Raises:
        InputValueError: Something has no price or no rate, so that no total can be promised.
    """
    if not offer.complete:
        items = [one.at[0] for one in offer.findings if one.code == "PRI-102"]
        tasks = [str(getattr(one.values["task"], "name", "")) for one in offer.findings if one.code == "PRI-103"]
        raise InputValueError(
            "no total can be promised: the price book has no price or rate for "
            f"{', '.join([*items, *tasks])}; add them and make the proposal again"
        )
    with localcontext(prec=60):
        shares = [one.percent for one in words.payments]
        dues = zip(words.payments, shared(offer.total, shares), strict=True)
        return Proposal(
            plan=hashlib.sha256(document.encode()).hexdigest(),
            offer=hashlib.sha256(offer_document.encode()).hexdigest(),
            on=offer.on,
            currency=offer.currency,
            words=words,
            rooms=tuple(_rooms(plan)),
            stops=tuple(f"{one.code} {one.at[0]}" for one in plan.findings if one.severity is Severity.STOP),
            included=tuple(_included(plan, offer)),
            excluded=tuple(_excluded(plan)),
            assumed=tuple(_assumed(plan)),
            found=offer.book.found,
            sections=tuple(_sections(offer)) if words.price_by == "section" else (),
            price=offer.price,
            taxes=tuple(
                TaxLine(of=one.of, amount=one.result) for one in offer.steps if one.formula == "price-tax"
            ),
            total=offer.total,
            payments=tuple(Due(at=one.at, percent=one.percent, amount=amount) for one, amount in dues),
            starts=plan.schedule.visits[0].first if plan.schedule else plan.job.site.starts,
            ends=plan.schedule.ends[:10] if plan.schedule else plan.job.site.ends,
            valid_until=_valid_until(offer, words),
        )


def shared(amount: Decimal, weights: Sequence[Decimal]) -> tuple[Decimal, ...]:
    """An amount in cents shared by weights, its parts adding up to it: cents left over go to the largest rests.

    Args:
        amount: In whole cents.
        weights: Not negative; all of it goes to the first where all are 0.
    """
    whole = sum(weights, Decimal(0))
    if not whole:
        return (amount, *(Decimal(0) for _ in weights[1:]))
    exact = [amount * weight / whole for weight in weights]
    parts = [one.quantize(CENT, ROUND_FLOOR) for one in exact]
    left = int((amount - sum(parts, Decimal(0))) / CENT)
    for place in sorted(range(len(parts)), key=lambda place: (parts[place] - exact[place], place))[:left]:
        parts[place] += CENT
    return tuple(parts)


def _rooms(plan: Plan) -> Iterator[RoomScope]:
    walls: dict[str, list[str]] = {}
    for room in plan.given.job.get("rooms", ()):
        corners = room["corners"]
        pairs = zip(corners, [*corners[1:], corners[0]], strict=True)
        walls[room["name"]] = [f"{room['name']}/wall/{a}-{b}" for a, b in pairs]
    built = {one.id for one in plan.surfaces if _built(one)}
    for name in dict.fromkeys(one.room for one in plan.surfaces if _built(one)):
        yield RoomScope(
            room=name,
            surfaces=tuple(_scope(one) for one in plan.surfaces if one.room == name and _built(one)),
            untouched=tuple(wall for wall in walls.get(name, ()) if wall not in built),
        )


def _built(surface: Surface) -> bool:
    return bool(surface.tiled) or any(not board.fixed for board in surface.boards)


def _scope(surface: Surface) -> SurfaceScope:
    tiled = [part for area in surface.tiled for part in area.area]
    size = (
        sum(Polygon(part.outline, part.holes).area for part in tiled) if tiled else Polygon(surface.outline).area
    )
    return SurfaceScope(
        surface=surface.id,
        boards=any(not board.fixed for board in surface.boards),
        membrane=surface.membrane,
        tiled=tuple(
            TiledScope(tiles=one.tiles, pattern=one.pattern, angle=one.angle, joint=one.joint)
            for one in surface.tiled
        ),
        area=figures(size / _M2),
    )


def _included(plan: Plan, offer: Offer) -> Iterator[str]:
    tasks = {one.task for one in offer.tasks}
    bought = {one.item.partition("/")[0] for one in offer.order}
    told = {
        "protect": "protect_and_clean" in tasks,
        "members": any(one.added for surface in plan.surfaces for one in surface.supports),
        "boards": any(not one.fixed for surface in plan.surfaces for one in surface.boards),
        "tape": "seam_tape" in bought,
        "membrane": any(surface.membrane for surface in plan.surfaces),
        "bed": "bed_mortar" in bought,
        "tile": any(surface.tiles for surface in plan.surfaces),
        "grout": "grout" in bought,
        "soft_joints": "joint_sealant" in bought,
        "trim": "edge_trim" in bought,
        "spares": any(one.spares for one in offer.order),
        "waste": bool(offer.load.by),
    }
    yield from (code for code, so in told.items() if so)


def _excluded(plan: Plan) -> Iterator[str]:
    # Nothing of these is planned or counted; what a plan counts leaves the list.
    yield from ("strip_out", "plumbing", "electrical", "structure")
    floors = [one for one in plan.surfaces if one.kind is SurfaceKind.FLOOR]
    if floors:
        yield "level_floor"
    yield from ("old_layers", "fixtures", "decorating", "permits")


def _assumed(plan: Plan) -> Iterator[str]:
    yield from ("measured", "unseen", "old_house")
    if any(one.supports for one in plan.surfaces):
        yield "framing"
    judged = {one.surface for one in plan.structures if one.lines}
    if any(one.kind is SurfaceKind.FLOOR and one.id not in judged for one in plan.surfaces):
        yield "floor_unjudged"
    yield from ("tile_sizes", "access")


def section_of(item: str) -> SectionName:
    """The section of the price that something bought belongs to."""
    kind = item.partition("/")[0]
    return "water" if kind in _WATER else "tile" if kind in _TILE else "ground"


def section_of_task(task: str) -> SectionName:
    """The section of the price that a task belongs to."""
    return "site" if task in _SITE_WORK else "tile" if task.startswith(_TILE_WORK) else "ground"


def _sections(offer: Offer) -> Iterator[Section]:
    """The price before tax by what each section costs directly; overhead, risks and profit go along."""
    direct = dict.fromkeys(SECTIONS, Decimal(0))
    for line in offer.order:
        direct[section_of(line.item)] += line.cost
    for task in offer.tasks:
        direct[section_of_task(task.task)] += task.cost
    whole = next(one.result for one in offer.steps if one.formula == "price-direct")
    direct["site"] += whole - sum(direct.values(), Decimal(0))
    for name, amount in zip(SECTIONS, shared(offer.price, list(direct.values())), strict=True):
        if amount:
            yield Section(section=name, amount=amount)


def _valid_until(offer: Offer, words: Wording) -> str:
    last = date.fromisoformat(offer.on) + timedelta(days=words.valid_days)
    used = {(line.item, one.supplier) for line in offer.order for one in line.bought}
    quotes = [one.valid_until for one in offer.book.materials if (one.item, one.supplier) in used]
    return min([last, *(day for day in quotes if day >= date.fromisoformat(offer.on))]).isoformat()
