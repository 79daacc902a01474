"""Write a job back as a document that reads to the same job."""

import datetime
from enum import Enum
from fractions import Fraction
from typing import Any

import yaml
from pydantic import BaseModel

from firstcourse.job.fields import is_length
from firstcourse.job.model import Job
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape


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
    return yaml.dump(_plain(job, job.tape), Dumper=_Dumper, sort_keys=False, allow_unicode=True, width=100)


def _plain(value: Any, tape: Tape, *, length: bool = True) -> Any:
    if isinstance(value, BaseModel):
        fields = type(value).model_fields
        return {
            fields[name].alias or name: _plain(getattr(value, name), tape, length=is_length(fields[name]))
            for name in fields
            if getattr(value, name) != fields[name].default
        }
    if isinstance(value, dict):
        return {key: _plain(item, tape, length=length) for key, item in value.items()}
    if isinstance(value, tuple):
        return [_plain(item, tape, length=length) for item in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, bool | float | str):
        return value
    if isinstance(value, int):
        return _exact_length(value, tape) if length else value
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, datetime.date):
        return value.isoformat()
    raise TypeError(f"a job holds no {type(value).__name__}")


def _exact_length(ticks: int, tape: Tape) -> str:
    inch = Fraction(abs(ticks), TICKS_PER_INCH)
    sign = "-" if ticks < 0 else ""
    if tape is Tape.INCH and 128 % inch.denominator == 0:
        whole, part = divmod(inch, 1)
        text = f"{whole} {part}" if whole and part else str(part or whole)
        return f"{sign}{text} in"
    # One tick is 0.0015625 mm: seven decimals are exact.
    thousandths = Fraction(abs(ticks) * 10**7, TICKS_PER_MM)
    text = f"{thousandths.numerator // 10**7}.{thousandths.numerator % 10**7:07d}".rstrip("0").rstrip(".")
    return f"{sign}{text} mm"
