"""The layers over a structure, from below: how high they are and what they weigh."""

from dataclasses import dataclass

from firstcourse.errors import InputValueError

PSF_PER_KG_M2 = 0.204816
M_PER_IN = 0.0254
TILE = "tile"
BOND_COAT = "mortar under the tile"
MORTAR_BED = "mortar bed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """One layer over the structure, bond coats included.

    Attributes:
        name: Such as `board`, `bond coat`, `tile`.
        of: The same by the plan's code.
        thickness_in: As it ends up in place [in].
        density_kg_m3: For its mass [kg/m³].
    """

    name: str
    thickness_in: float
    density_kg_m3: float
    of: str = ""

    def __post_init__(self) -> None:
        if self.thickness_in < 0 or self.density_kg_m3 < 0:
            raise InputValueError(f"layer '{self.name}': thickness and density cannot be less than zero")

    @property
    def mass_kg_m2(self) -> float:
        """Mass for one square metre [kg/m²]."""
        return self.thickness_in * M_PER_IN * self.density_kg_m3

    @property
    def mass_psf(self) -> float:
        """Mass for one square foot [psf]."""
        return self.mass_kg_m2 * PSF_PER_KG_M2


def total_height_in(layers: tuple[Layer, ...]) -> float:
    """Height of all layers [in]."""
    return sum(layer.thickness_in for layer in layers)


def total_mass_psf(layers: tuple[Layer, ...]) -> float:
    """Mass of all layers [psf]."""
    return sum(layer.mass_psf for layer in layers)


def total_mass_kg_m2(layers: tuple[Layer, ...]) -> float:
    """Mass of all layers [kg/m²]."""
    return sum(layer.mass_kg_m2 for layer in layers)
