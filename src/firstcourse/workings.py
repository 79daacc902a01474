"""A number with its formula, the values put in, its unit and its source."""

from pydantic import BaseModel, ConfigDict


class Working(BaseModel):
    """How one headline number came about, so that anyone can redo it by hand.

    Attributes:
        title: What the number is, in words.
        formula: The formula in symbols or words.
        values: Symbol to substituted value, each with its unit, as printed.
        result: The result as printed, without its unit.
        unit: Unit of the result.
        source: Where the formula or rule comes from.
        argument: Further steps in plain sentences, in order.
        steps: Lines with the values put in, in order, each such as `M = w L² / 8 = 5.6 × 168² / 8 = 19,600 lb·in`.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    title: str
    formula: str
    values: dict[str, str] = {}
    result: str
    unit: str
    source: str = ""
    argument: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
