"""The commented document that `firstcourse new` writes."""

from firstcourse.units import Tape

_IN_INCHES = """\
# A Firstcourse job. Change what is here to what your tape says; lines with # are notes.
# Lengths need a unit: 5' 3-1/2", 63 1/2 in, 1615 mm or 1.615 m.
name: My first job
practice: us            # whose rules: us, uk or au
date: 2026-11-25        # the rules are read for this day
tape: inch              # inch (1/16 in) or mm
currency: USD

stock:                  # what you can buy
  - id: floor board 3x5
    size: [36 in, 60 in]
    thickness: 1/4 in
    for: [floor]
  - id: wall board 3x5
    size: [36 in, 60 in]
    thickness: 0.42 in
    for: [wall, ceiling]

rooms:
  - name: bath
    # Stand inside and turn to the right: name the corners in that order.
    # Wall A-B then has A at its left end and B at its right.
    corners: [A, B, C, D]
    sides: {A-B: 8' 0-1/4", B-C: 5' 0", C-D: 8' 0-1/8", D-A: 5' 0-1/8"}
    # Four sides do not fix a room: tape at least one diagonal, two to check yourself.
    diagonals: {A-C: 9' 5-5/16", B-D: 9' 5-1/4"}
    taped_to: studs         # studs, or finish where what is on the walls still has to come off
    height: 8'
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 14 1/4 in}
      panel_joints:
        - {parallel_to: A-B, out: 30 in}
      openings:
        - {id: closet flange, kind: flange, left: 48 in, out: 15 in, diameter: 4 1/2 in}
    walls:
      - wall: A-B
        foot: floor
        boards: {top: 4'}          # boarded up to here; leave out for the whole wall
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings:
          - {id: supply, kind: pipe, left: 50 in, bottom: 8 in, diameter: 1 in}
"""
_IN_MM = """\
# A Firstcourse job. Change what is here to what your tape says; lines with # are notes.
# Lengths need a unit: 1615 mm, 1.615 m, 5' 3-1/2" or 63 1/2 in.
name: My first job
practice: uk            # whose rules: us, uk or au
date: 2026-11-25        # the rules are read for this day
tape: mm                # mm or inch (1/16 in)
currency: GBP

stock:                  # what you can buy
  - id: floor board 900x1500
    size: [900 mm, 1500 mm]
    thickness: 6 mm
    for: [floor]
  - id: wall board 900x1500
    size: [900 mm, 1500 mm]
    thickness: 12 mm
    for: [wall, ceiling]

rooms:
  - name: bath
    # Stand inside and turn to the right: name the corners in that order.
    # Wall A-B then has A at its left end and B at its right.
    corners: [A, B, C, D]
    sides: {A-B: 2445 mm, B-C: 1524 mm, C-D: 2442 mm, D-A: 1527 mm}
    # Four sides do not fix a room: tape at least one diagonal, two to check yourself.
    diagonals: {A-C: 2879 mm, B-D: 2882 mm}
    taped_to: studs         # studs, or finish where what is on the walls still has to come off
    height: 2400 mm
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 360 mm}
      panel_joints:
        - {parallel_to: A-B, out: 760 mm}
      openings:
        - {id: closet flange, kind: flange, left: 1220 mm, out: 380 mm, diameter: 115 mm}
    walls:
      - wall: A-B
        foot: floor
        boards: {top: 1200 mm}     # boarded up to here; leave out for the whole wall
        framing: {spacing: 400 mm, first: 420 mm}
        openings:
          - {id: supply, kind: pipe, left: 1270 mm, bottom: 200 mm, diameter: 25 mm}
"""


def starter_text(tape: Tape = Tape.INCH) -> str:
    """A small job that plans as it stands, with a note on every line a newcomer must change.

    Args:
        tape: What its lengths are written in.
    """
    return _IN_MM if tape is Tape.MM else _IN_INCHES
