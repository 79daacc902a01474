"""What a setter knows of frame, layers and exposure, for the judgement before anything is bought."""

from typing import Annotated, Literal, Self

from pydantic import Field, FiniteFloat, model_validator

from firstcourse.job.fields import (
    MOST_ITEMS,
    Distance,
    Emission,
    Inertia,
    JobModel,
    Length,
    Load,
    Name,
    Offset,
    Pair,
    SheetSteel,
    Stiffness,
    Thickness,
    measured,
    one_of,
)
from firstcourse.units import EMISSION, INERTIA, LOAD, SHEET_STEEL, STIFFNESS

Mils = Annotated[FiniteFloat, Field(gt=0, le=1000)]
Pounds = Annotated[FiniteFloat, Field(gt=0, le=1e5)]
Species = Literal["dfl", "hf", "spf", "sp", "unknown"]
Grade = Literal["ss", "no1", "no2", "no3", "stud", "construction", "standard", "utility", "unknown"]
SpanRating = Literal["16 oc", "20 oc", "24 oc", "32 oc", "48 oc", "24/16", "32/16", "40/20", "48/24"]
_SPECIES = (
    "Species on the stamp: Douglas fir-larch (dfl), hem-fir (hf), spruce-pine-fir (spf), southern pine (sp); "
    "unknown counts as the weakest of them."
)
_GRADE = (
    "Grade on the stamp: select structural (ss), No. 1 to 3, stud, and of 2x4 alone construction, standard or "
    "utility; unknown counts as the weakest that the size is made in."
)


class JoistLoad(JobModel):
    """A lasting load that stands on one joist, such as a filled tub's foot."""

    load: Load | None = Field(default=None, description="Load on this joist, such as 300 lb or 1.4 kN; needed.")
    load_lb: Pounds | None = Field(default=None, description="Older name of load [lb].")
    at: Length = Field(description="From one end of the joist's span.")

    @model_validator(mode="after")
    def _told(self) -> Self:
        one_of({"load": self.load, "load_lb": self.load_lb})
        if self.load is None and self.load_lb is None:
            raise ValueError("'load' is missing here")
        return self

    @property
    def pounds(self) -> float:
        """Load on this joist [lb]."""
        return measured(LOAD, self.load, self.load_lb) or 0.0


class JoistCut(JobModel):
    """A notch or hole found in a joist."""

    kind: Literal["notch", "end_notch", "hole"] = Field(description="What it is; end_notch lies at a support.")
    size: Length = Field(description="Depth of the notch, or diameter of the hole.")
    at: Distance = Field(description="Its centre from the nearer support.")
    length: Length | None = Field(default=None, description="Length of a notch along the joist.")
    edge: Distance | None = Field(
        default=None, description="Hole: the least distance to the joist's edges and to other cuts."
    )

    in_bottom: bool = Field(default=False, description="The notch is in the joist's bottom edge.")

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if self.kind == "hole" and self.edge is None:
            raise ValueError("give the hole's edge: its least distance to the joist's edges and to other cuts")
        if self.kind == "notch" and self.length is None:
            raise ValueError("give the notch's length along the joist")
        return self


class Joists(JobModel):
    """The joists over their whole length, not only under the tile: lumber by its size, engineered ones by EI."""

    span: Length = Field(description="Longest clear span, face to face of supports, also beyond this room.")
    size: Literal["2x4", "2x6", "2x8", "2x10", "2x12"] | None = Field(
        default=None, description="Nominal size of sawn joists."
    )
    species: Species = Field(default="unknown", description=_SPECIES)
    grade: Grade = Field(default="unknown", description=_GRADE)
    stiffness: Stiffness | None = Field(
        default=None,
        description="EI of engineered or steel joists from their maker, such as 2.0e8 lb in2 or 574 kN m2, "
        "instead of a size.",
    )
    ei_lb_in2: Annotated[FiniteFloat, Field(gt=0, le=1e12)] | None = Field(
        default=None, description="Older name of stiffness [lb in²]."
    )
    sistered: Literal["none", "part", "full"] = Field(
        default="none", description="A second ply on each joist: over the middle part of the span, or all of it."
    )
    continuous: bool = Field(
        default=False, description="They run over a middle support without a joint, its spans not all known."
    )
    spans: Annotated[tuple[Length, ...], Field(min_length=2, max_length=3)] | None = Field(
        default=None, description="Every span in order, where they run over supports without a joint."
    )
    bearing: Length | None = Field(default=None, description="Length of bearing at the ends.")
    start: Offset | None = Field(
        default=None,
        description="Where the span begins: from the left end of the side that the joists run along to the face "
        "of their support, minus where that lies beyond the room. Where not given, what stands on a part of the "
        "floor counts where it does most along the joists.",
    )
    loads: Annotated[tuple[JoistLoad, ...], Field(max_length=20)] = Field(
        default=(),
        description="Lasting loads on the most loaded joist, beside what this plan builds and the tubs in it.",
    )
    cuts: Annotated[tuple[JoistCut, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Notches and holes found."
    )

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        one_of({"stiffness": self.stiffness, "ei_lb_in2": self.ei_lb_in2})
        if (self.size is None) == (self.ei is None):
            raise ValueError("give either size (sawn joists) or stiffness (engineered or steel joists)")
        if self.sistered == "part" and self.size is None:
            raise ValueError("a part sister is judged on sawn joists only")
        if any(load.at >= self.span for load in self.loads):
            raise ValueError("a load must stand within the span")
        if self.spans is not None and max(self.spans) != self.span:
            raise ValueError("span must be the longest of spans")
        if self.start is not None and (self.continuous or self.spans is not None):
            raise ValueError("start is of joists over one span; leave it out where they run over supports")
        return self

    @property
    def ei(self) -> float | None:
        """EI of engineered or steel joists [lb·in²]."""
        return measured(STIFFNESS, self.stiffness, self.ei_lb_in2)


class CeilingJoists(JobModel):
    """The joists over a ceiling: lumber by its size, engineered ones by EI."""

    span: Length = Field(description="Longest clear span, face to face of supports, also beyond this room.")
    above: Literal["attic", "attic_storage", "floor"] = Field(
        default="attic_storage",
        description="What lies above: an attic that holds nothing, one with some storage, or a floor.",
    )
    size: Literal["2x4", "2x6", "2x8", "2x10", "2x12"] | None = Field(
        default=None, description="Nominal size of sawn joists."
    )
    species: Species = Field(default="unknown", description=_SPECIES)
    grade: Grade = Field(default="unknown", description=_GRADE)
    stiffness: Stiffness | None = Field(
        default=None,
        description="EI of engineered or steel joists from their maker, such as 2.0e8 lb in2 or 574 kN m2, "
        "instead of a size.",
    )
    ei_lb_in2: Annotated[FiniteFloat, Field(gt=0, le=1e12)] | None = Field(
        default=None, description="Older name of stiffness [lb in²]."
    )

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        one_of({"stiffness": self.stiffness, "ei_lb_in2": self.ei_lb_in2})
        if (self.size is None) == (self.ei is None):
            raise ValueError("give either size (sawn joists) or stiffness (engineered or steel joists)")
        return self

    @property
    def ei(self) -> float | None:
        """EI of engineered or steel joists [lb·in²]."""
        return measured(STIFFNESS, self.stiffness, self.ei_lb_in2)


class Planks(JobModel):
    """A subfloor of planks (boards) on the joists, as old houses have it; panel layers over it are `panels`."""

    thickness: Length = Field(description="Thickness of the planks, such as 3/4 in.")
    width: Length | None = Field(
        default=None, description="Width of a plank; it says how many screws hold one down."
    )
    lie: Literal["square", "diagonal"] = Field(
        default="square", description="How they lie on the joists: square to them, or on the diagonal."
    )


class Panels(JobModel):
    """The panel layers on the joists, such as plywood; boards come on top."""

    layers: Annotated[tuple[Length, ...], Field(min_length=1, max_length=4)] = Field(
        description="Thickness of each layer from below, such as 23/32 in."
    )
    glued_and_screwed: bool = Field(
        default=False, description="Whether the layers are glued and screwed to each other."
    )
    material: Literal["plywood", "chipboard", "strand_board"] | None = Field(
        default=None,
        description="What they are, for practices that judge panels by kind and joist spacing (uk, au); in us "
        "practice their span rating decides.",
    )
    ratings: tuple[SpanRating, ...] = Field(
        default=(),
        description="Span rating on the stamp of each layer, in the same order, such as 24 oc or 48/24; the least "
        "that its thickness is sold with where not given.",
    )

    @model_validator(mode="after")
    def _each_rated(self) -> Self:
        if self.ratings and len(self.ratings) != len(self.layers):
            raise ValueError("give a rating for each layer, in the same order, or none")
        return self


class FloorTile(JobModel):
    """What will lie on the floor's boards."""

    kind: Literal["ceramic", "stone"] = Field(description="Ceramic (porcelain too) or natural stone.")
    thickness: Thickness = Field(description="Thickness of the tile, at most 2 in.")
    edge: Length | None = Field(default=None, description="Its longest edge; sets how flat the floor must be.")
    mortar_bed: Length | None = Field(default=None, description="A thick mortar bed, where there is one.")
    bond_coat: Length | None = Field(
        default=None,
        description="Mortar under the tile; as its trowel leaves it where not given, that of large tile where "
        "its edge is not given either.",
    )
    heating: Length | None = Field(default=None, description="Thickness of the mortar that embeds floor heating.")
    absorption_percent: Annotated[FiniteFloat, Field(ge=0, le=100)] | None = Field(
        default=None, description="Water it takes up, by its data sheet (ASTM C373, ISO 10545-3)."
    )
    wet_friction: Annotated[FiniteFloat, Field(gt=0, lt=2)] | None = Field(
        default=None, description="Wet dynamic coefficient of friction (DCOF), by its data sheet."
    )


class SpotLevel(JobModel):
    """One reading of the floor's height, with a straightedge or a level."""

    left: Distance = Field(description="Along the room's first side, from its left end.")
    out: Distance = Field(description="Out from that side into the room.")
    height: Offset = Field(description="Height over any level you keep, up is plus.")


class DoorStep(JobModel):
    """A doorway, where the finished floor meets another; heights are over the panels (or slab) of this room."""

    id: Name = Field(description="Its name, such as door to hall.")
    other_floor: Distance = Field(description="Top of the finished floor beyond.")
    door_underside: Length | None = Field(default=None, description="Underside of the door, where there is one.")
    wall: Pair | None = Field(
        default=None, description="Wall it stands in. It is drawn where wall, left and width are given."
    )
    left: Distance | None = Field(default=None, description="Its left end, from the wall's left corner.")
    width: Length | None = Field(default=None, description="Its width along the wall.")
    height: Length | None = Field(
        default=None,
        description="Height of the opening in the wall, for drawings; where its wall is boarded, enter it among "
        "that wall's openings as well.",
    )

    @model_validator(mode="after")
    def _placed(self) -> Self:
        if (self.left is None) != (self.width is None):
            raise ValueError("left and width go together")
        if self.left is not None and self.wall is None:
            raise ValueError("left and width are measured along a wall: name it")
        if self.height is not None and self.width is None:
            raise ValueError("height goes with wall, left and width")
        return self


class WallStuds(JobModel):
    """What the studs are: lumber by its size, or steel by the depth of its web."""

    size: Literal["2x4", "2x6", "2x8"] | None = Field(default=None, description="Nominal size of wood studs.")
    species: Species = Field(default="unknown", description=_SPECIES)
    grade: Grade = Field(default="unknown", description=_GRADE)
    steel: Length | None = Field(default=None, description="Depth of the web of steel studs, instead of a size.")
    thickness: SheetSteel | None = Field(
        default=None,
        description="Thickness of the steel as stamped, such as 33 mil or 0.84 mm; leave it out where only a "
        "gauge is known.",
    )
    mils: Mils | None = Field(
        default=None,
        description="Older name of thickness [1/1000 in].",
    )
    flange: Length | None = Field(default=None, description="Width of a steel stud's flanges.")
    inertia: Inertia | None = Field(
        default=None,
        description="Ix of a steel stud by its maker's table, such as 0.551 in4 or 22.9 cm4; from its shape "
        "otherwise.",
    )
    inertia_in4: Annotated[FiniteFloat, Field(gt=0, le=1000)] | None = Field(
        default=None, description="Older name of inertia [in⁴]."
    )
    height: Length | None = Field(
        default=None, description="Clear height between plates; the wall's height where not given."
    )

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        if (self.size is None) == (self.steel is None):
            raise ValueError("give either size (wood studs) or steel (depth of the web)")
        one_of({"thickness": self.thickness, "mils": self.mils})
        one_of({"inertia": self.inertia, "inertia_in4": self.inertia_in4})
        if self.steel is None and (self.thick_mils, self.flange, self.ix_in4) != (None, None, None):
            raise ValueError("thickness, flange and inertia are for steel studs")
        return self

    @property
    def thick_mils(self) -> float | None:
        """Thickness of the steel [1/1000 in]."""
        return measured(SHEET_STEEL, self.thickness, self.mils)

    @property
    def ix_in4(self) -> float | None:
        """Second moment of area of a steel stud [in⁴]."""
        return measured(INERTIA, self.inertia, self.inertia_in4)


class Exposure(JobModel):
    """What the surface is exposed to, what keeps the water out, and what holds the tile."""

    zone: Literal["dry", "damp", "wet", "steam", "exterior", "near_heat"] = Field(
        description="Where it is: wet inside a shower or tub surround, damp elsewhere in a bathroom."
    )
    membrane: bool = Field(default=False, description="A membrane on the face of the boards.")
    membrane_kind: Literal["waterproof", "low_perm", "crack_isolation"] = Field(
        default="waterproof",
        description="What the membrane is: waterproof (ANSI A118.10), of low permeance as steam asks, or against "
        "cracks alone (A118.12).",
    )
    retarder_behind: bool = Field(
        default=False,
        description="A vapour retarder between boards and framing: plastic sheet, or the insulation's facing.",
    )
    mortar: Literal["organic_adhesive", "unmodified", "modified", "improved", "epoxy"] | None = Field(
        default=None,
        description="What sets the tile: mastic (A136.1), or mortar to A118.1, A118.4, A118.15 or A118.3.",
    )
    fasteners: Literal["backer_screw", "stainless", "roofing_nail", "drywall_screw", "staple"] | None = Field(
        default=None, description="What holds the boards."
    )
    over: (
        Literal[
            "lauan",
            "particle_board",
            "hardboard",
            "strand_board",
            "cushioned_vinyl",
            "hardwood",
            "gypsum_underlayment",
            "painted",
        ]
        | None
    ) = Field(default=None, description="A doubtful ground that boards or tile would go onto.")
    wood_moisture_percent: Annotated[FiniteFloat, Field(ge=0, le=200)] | None = Field(
        default=None, description="Moisture reading in the framing."
    )
    slab_humidity_percent: Annotated[FiniteFloat, Field(ge=0, le=100)] | None = Field(
        default=None, description="Relative humidity inside the slab (ASTM F2170, or a hygrometer)."
    )
    slab_emission: Emission | None = Field(
        default=None,
        description="Moisture the slab gives off in 24 h (ASTM F1869), for 1000 sq ft such as 3 lb, or such as "
        "14.6 g/m2.",
    )
    slab_emission_lb: Annotated[FiniteFloat, Field(ge=0, le=100)] | None = Field(
        default=None, description="Older name of slab_emission [lb]."
    )

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if "membrane_kind" in self.model_fields_set and not self.membrane:
            raise ValueError("membrane_kind says what the membrane is: set membrane: yes with it")
        one_of({"slab_emission": self.slab_emission, "slab_emission_lb": self.slab_emission_lb})
        return self

    @property
    def emission_lb(self) -> float | None:
        """Moisture the slab gives off [lb/1000 ft²/24 h]."""
        return measured(EMISSION, self.slab_emission, self.slab_emission_lb)
