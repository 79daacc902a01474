"""Write a job back: as a document that reads to the same job, and as the values a plan keeps of it."""

import datetime
from collections.abc import Callable
from enum import Enum
from fractions import Fraction
from typing import Any

import yaml
from pydantic import BaseModel

from firstcourse.job.fields import is_length
from firstcourse.job.model import Job
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, parse_length, to_mm


class _Dumper(yaml.SafeDumper):
    """Writes texts with a line break of any kind in double quotes: other styles fold the break to a space."""

    def represent_str(self, data: str) -> yaml.ScalarNode:
        style = None if data.splitlines() == [data] else '"'
        return self.represent_scalar("tag:yaml.org,2002:str", data, style=style)


_Dumper.add_representer(str, _Dumper.represent_str)


def job_text(job: Job) -> str:
    """The job as YAML, lengths in the unit of its tape, each exact.

    Example: a length of 63.5 in is written `63 1/2 in`, one that no inch fraction meets is written in mm.
    """
    values = _plain(job, lambda ticks: exact_length(ticks, job.tape))
    return yaml.dump(values, Dumper=_Dumper, sort_keys=False, allow_unicode=True, width=100)


def job_values(job: Job) -> dict[str, Any]:
    """The job as JSON values under the document's names, lengths in millimetres; what is not given is left out."""
    values: dict[str, Any] = _plain(job, to_mm)
    return values


def _plain(value: Any, said: Callable[[int], Any], *, length: bool = True) -> Any:
    if isinstance(value, BaseModel):
        fields = type(value).model_fields
        return {
            fields[name].alias or name: _plain(getattr(value, name), said, length=is_length(fields[name]))
            for name in fields
            if getattr(value, name) != fields[name].default
        }
    if isinstance(value, dict):
        return {key: _plain(item, said, length=length) for key, item in value.items()}
    if isinstance(value, tuple):
        return [_plain(item, said, length=length) for item in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, bool | float | str):
        return value
    if isinstance(value, int):
        return said(value) if length else value
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, datetime.date):
        return value.isoformat()
    raise TypeError(f"a job holds no {type(value).__name__}")


def exact_length(ticks: int, tape: Tape) -> str:
    """A length as it is typed and read again: a fraction of an inch, or decimals of one, or else mm [ticks]."""
    inch = Fraction(abs(ticks), TICKS_PER_INCH)
    sign = "-" if ticks < 0 else ""
    if tape is Tape.INCH and 128 % inch.denominator == 0:
        whole, part = divmod(inch, 1)
        text = f"{whole} {part}" if whole and part else str(part or whole)
        return f"{sign}{text} in"
    if tape is Tape.INCH and parse_length(text := f"{round(float(inch), 3):g} in") == abs(ticks):
        return f"{sign}{text}"
    # One tick is 0.0015625 mm: seven decimals are exact.
    thousandths = Fraction(abs(ticks) * 10**7, TICKS_PER_MM)
    text = f"{thousandths.numerator // 10**7}.{thousandths.numerator % 10**7:07d}".rstrip("0").rstrip(".")
    return f"{sign}{text} mm"
