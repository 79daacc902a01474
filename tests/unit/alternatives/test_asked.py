"""Documents of alternatives: what is read as typed, and one clear line for each mistake."""

import pytest

from firstcourse.alternatives import read_alternatives
from firstcourse.errors import JobError

GOOD = b"""alternatives:
  - name: large
    changes: [{field: "stock[1].size", to: [48 in, 96 in]}]
  - name: no blocking
    changes: [{field: "rooms[1].floor.blocking", to: no}]
"""


def test_values_stay_as_typed() -> None:
    large, none = read_alternatives(GOOD, "a.yaml")
    assert (large.name, large.changes[0].field, large.changes[0].to) == (
        "large",
        "stock[1].size",
        ["48 in", "96 in"],
    )
    assert none.changes[0].to is False


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "a.yaml: is empty"),
        (b"alternatives: [", "is no YAML"),
        (b"alternatives: []", "a.yaml:1:15: alternatives: has too few"),
        (
            GOOD.replace(b"no blocking", b"large"),
            "a.yaml:4:11: alternatives[2].name: 'large' is the name of another",
        ),
        (GOOD.replace(b"name: large", b"named: large"), "a.yaml:2:12: alternatives[1].named: is not known"),
        (GOOD.replace(b"name: large", b"name: 5"), "alternatives[1].name: '5'"),
        (GOOD.replace(b"name: large", b"name: large\n    name: x"), "'name' stands there twice"),
        (GOOD + b"x: &a [1]\ny: *a\n", "write it out"),
        (b"\xff", "is not UTF-8"),
    ],
)
def test_a_mistake_is_told_with_its_place(data: bytes, said: str) -> None:
    with pytest.raises(JobError) as caught:
        read_alternatives(data, "a.yaml")
    assert said in str(caught.value)


def test_at_most_six() -> None:
    many = b"".join(b"  - {name: n%d, changes: [{field: name, to: x}]}\n" % number for number in range(7))
    with pytest.raises(JobError, match="too many"):
        read_alternatives(b"alternatives:\n" + many, "a.yaml")
