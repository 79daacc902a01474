"""Where members stand: as found, and on a regular spacing between and beside those."""

from collections.abc import Iterable

from firstcourse.job import Member


def placed_members(found: Iterable[Member], regular: Iterable[int], usual: int) -> list[tuple[int, int]]:
    """Centre and width of every member, in order [ticks].

    Args:
        found: Members as found.
        regular: Centres on a regular spacing; one that a member as found overlaps is that member.
        usual: Width of those that say none.
    """
    told = [(member.at, member.width or usual) for member in found]
    free = [at for at in regular if not any(abs(at - other) < (usual + width) // 2 for other, width in told)]
    return sorted([*told, *((at, usual) for at in free)])
