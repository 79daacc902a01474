"""How a tile is bedded: contact, notch, back-butter and mortar by its size and place; and where its edges show."""

import math
from dataclasses import dataclass, field
from typing import Literal

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.job import ChosenTile
from firstcourse.layers import combed_mortar, longest_side
from firstcourse.plan import Opening, OpeningKind, SideKind, Surface, SurfaceKind, TileStock
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Ref, Word, least, length, measure
from firstcourse.values import most as at_most
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingBed:
    """The mortar a tile is set in on one surface.

    Attributes:
        size: What the tile counts as for the trowel: `mosaic`, `small`, `medium` or `large`.
        combed: Mean thickness that the notches leave, or all of it where the job gives its thickness [ticks].
        back_buttered: Mortar on the back of the tile beyond that; 0 where none is [ticks].
        contact: Least share of the tile's back in contact with mortar [percent].
        large_mortar: Whether mortar for large and heavy tile is needed.
        notch: Width and depth of the trowel's notch [ticks], and its shape.
        findings: What the setter must know or fix.
        working: How the thickness came about.
    """

    size: Literal["mosaic", "small", "medium", "large"]
    combed: int
    back_buttered: int
    contact: float
    large_mortar: bool
    notch: tuple[int, int, str]
    working: Working
    findings: tuple[Finding, ...] = field(default=())

    @property
    def thickness(self) -> int:
        """Mean thickness of the mortar under the tile [ticks]."""
        return self.combed + self.back_buttered


def setting_bed(
    tile: ChosenTile | TileStock,
    rules: RuleSet,
    *,
    kind: SurfaceKind = SurfaceKind.FLOOR,
    wet: bool = True,
    surface: str = "",
    entered: int | None = None,
) -> SettingBed:
    """Trowel, back-butter, mortar and contact of a tile on a surface.

    Args:
        tile: The tile, of several in one bed the longest.
        rules: Rules in force.
        kind: What the surface is; only floors are judged for slip.
        wet: Whether the surface gets wet.
        surface: Id of the surface, for findings; empty for the tile wherever it is set.
        entered: Thickness of the mortar that the job gives; None where it is as combed [ticks].
    """
    mortar = combed_mortar(longest_side((tile,)), rules, wet=wet)
    size, combed, back = mortar.size, mortar.combed, mortar.buttered
    notch = f"tile.trowel.{size}"
    shape = rules.text(f"{notch}.shape")
    width, depth, land = (rules.ticks(f"{notch}.{part}") for part in ("width", "depth", "land"))
    contact_rule = rules.entry(
        "tile.contact.stone" if tile.kind == "stone" else "tile.contact.wet" if wet else "tile.contact.dry"
    )
    place = surface or f"tile_stock/{tile.id}"
    thickness = mortar.thickness if entered is None else entered
    large = size == "large"
    findings = [
        *_too_thin_or_thick(thickness, large, rules, place, entered is not None),
        _contact(contact_rule.id, rules, back, (width, depth, shape), place),
        *_slip(kind, wet, rules, tile, place),
    ]
    working = Working(
        formula="tiles-mortar",
        at=(surface, f"tile_stock/{tile.id}"),
        inputs={
            "entered": entered is not None,
            "width": length(width),
            "depth": length(depth),
            "shape": Word(word=shape),
            "land": length(land),
            "angle": measure(rules.number("tile.trowel.angle"), "deg"),
            "combed": length(combed),
            "back": length(back) if back else Word(word="none"),
            "contact": measure(rules.number(contact_rule.id), "%"),
            "notch": Ref(ref=f"rule/{notch}.width"),
        },
        result=length(thickness),
        rule=contact_rule.id,
    )
    return SettingBed(
        size=size,
        combed=combed if entered is None else entered,
        back_buttered=back if entered is None else 0,
        contact=rules.number(contact_rule.id),
        large_mortar=large,
        notch=(width, depth, shape),
        findings=tuple(findings),
        working=working,
    )


def shown_edges(surface: Surface) -> tuple[int, ...]:
    """Lengths of the edges of tile that show: where it stops in the open, rims of niches and windows [ticks].

    A window counts where it is set back, so that its returns end at the rim.
    """
    if not surface.tiled:
        return ()
    rings = [o.outline for o in surface.openings if o.outline is not None and is_lined(o)]
    free = [
        round(math.dist(a, b))
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
        if side.kind is SideKind.FREE and side.shown
    ]
    return (*free, *(round(math.dist(a, b)) for ring in rings for a, b in sides(ring)))


def is_lined(opening: Opening) -> bool:
    """Whether boards and membrane run on into an opening: a niche, or a window that is set back."""
    return opening.kind is OpeningKind.NICHE or opening.depth is not None


def _too_thin_or_thick(thickness: int, large: bool, rules: RuleSet, place: str, entered: bool) -> list[Finding]:
    most = "tile.bed.max_large" if large else "tile.bed.max_thin"
    thin = thickness < rules.ticks("tile.bed.min")
    if not thin and thickness <= rules.ticks(most):
        return []
    rule = rules.entry("tile.bed.min" if thin else most)
    return [
        rule.found(
            "TIL-105",
            Severity.FIX,
            place,
            measured=length(thickness),
            limit=(least if thin else at_most)(length(rules.ticks(rule.id))),
            remedies=("thicker" if thin else "thinner",),
            thin=thin,
            entered=entered,
        )
    ]


def _contact(rule_id: str, rules: RuleSet, back: int, notch: tuple[int, int, str], place: str) -> Finding:
    width, depth, shape = notch
    return rules.entry(rule_id).found(
        "TIL-106",
        Severity.NOTE,
        place,
        limit=least(measure(rules.number(rule_id), "%")),
        remedies=("lift",),
        width=length(width),
        depth=length(depth),
        shape=Word(word=shape),
        buttered=back > 0,
        back=length(back),
        sample=int(rules.number("tile.contact.sample")),
    )


def _slip(kind: SurfaceKind, wet: bool, rules: RuleSet, tile: ChosenTile | TileStock, place: str) -> list[Finding]:
    known = [name for name in ("tile.slip.dcof", "tile.slip.pendulum") if rules.has(name)]
    if kind is not SurfaceKind.FLOOR or not wet or not known:
        return []
    rule = rules.entry(known[0])
    given = tile.wet_friction if known[0] == "tile.slip.dcof" else None
    if given is not None and given >= rules.number(known[0]):
        return []
    return [
        rule.found(
            "TIL-108",
            Severity.NOTE,
            place,
            measured=None if given is None else measure(given),
            limit=least(measure(rules.number(known[0]))),
            remedies=("data_sheet",),
            tile=Name(name=tile.id),
            scale=Word(word="friction" if known[0] == "tile.slip.dcof" else "pendulum"),
        )
    ]
