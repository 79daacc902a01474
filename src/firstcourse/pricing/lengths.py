"""Trims, rods and members cut from stock lengths: the fewest lengths, proved where the list is small."""

from collections.abc import Sequence
from dataclasses import dataclass

MOST_EXACT = 14
"""Pieces up to which the fewest lengths are looked for to the end; beyond, longest first and a bound."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """Pieces by the stock length they are cut from.

    Attributes:
        lengths: Of each stock length the indices of its pieces, in cutting order. A piece longer than a length
            takes whole lengths first; its index stands alone in each of them.
        least: No fewer lengths can do.
    """

    lengths: tuple[tuple[int, ...], ...]
    least: int


def cut_lengths(pieces: Sequence[int], stock: int, kerf: int = 0) -> Cutting:
    """Cut pieces from stock lengths.

    Args:
        pieces: Lengths of the pieces [ticks].
        stock: Of one stock length [ticks].
        kerf: Lost at each saw cut [ticks]; the last piece of a length that fits just so needs none.

    Raises:
        ValueError: A stock or a piece has no length.
    """
    if stock <= 0 or kerf < 0 or any(piece <= 0 for piece in pieces):
        raise ValueError("stock and pieces must have a length")
    full = [(index,) for index, piece in enumerate(pieces) for _ in range(piece // stock)]
    # A kerf between pieces: each piece and the stock grow by one, and what fitted still fits.
    left = {index: piece % stock + kerf for index, piece in enumerate(pieces) if piece % stock}
    room = stock + kerf
    order = sorted(left, key=lambda index: (-left[index], index))
    bins = _first_fit(order, left, room)
    least = least_lengths([left[index] for index in order], room)
    if least < len(bins) and len(order) <= MOST_EXACT:
        for number in range(least, len(bins)):
            found = _fits(order, left, room, number)
            if found is not None:
                bins = found
                break
            least = number + 1
    return Cutting(lengths=(*full, *map(tuple, bins)), least=len(full) + least)


def _first_fit(order: Sequence[int], left: dict[int, int], room: int) -> list[list[int]]:
    bins: list[list[int]] = []
    rest: list[int] = []
    for index in order:
        for number, free in enumerate(rest):
            if left[index] <= free:
                bins[number].append(index)
                rest[number] -= left[index]
                break
        else:
            bins.append([index])
            rest.append(room - left[index])
    return bins


def least_lengths(pieces: Sequence[int], room: int) -> int:
    """A number of lengths below which pieces cannot be cut: by their sum, and by those that share with none.

    References:
        Martello and Toth, Knapsack Problems (1990), section 8.3, bound L2 (from memory).
    """
    best = -(-sum(pieces) // room)
    for small in {0, *(piece for piece in pieces if 2 * piece <= room)}:
        alone = [piece for piece in pieces if piece > room - small]
        half = [piece for piece in pieces if room - small >= piece > room / 2]
        fill = sum(piece for piece in pieces if room / 2 >= piece >= small)
        spare = len(half) * room - sum(half)
        best = max(best, len(alone) + len(half) + max(0, -(-(fill - spare) // room)))
    return best


def _fits(order: Sequence[int], left: dict[int, int], room: int, number: int) -> list[list[int]] | None:
    """Pieces in so many lengths, None where they do not go; the longest is placed first, equal rooms once."""
    bins: list[list[int]] = [[] for _ in range(number)]
    rest = [room] * number
    slack = number * room - sum(left[index] for index in order)
    if slack < 0:
        return None

    def place(at: int) -> bool:
        if at == len(order):
            return True
        index, tried = order[at], set()
        for one in range(number):
            if left[index] <= rest[one] and rest[one] not in tried:
                tried.add(rest[one])
                bins[one].append(index)
                rest[one] -= left[index]
                if place(at + 1):
                    return True
                rest[one] += left[index]
                bins[one].pop()
        return False

    return bins if place(0) else None
