"""Findings of the judgement of frames, panels and surfaces: all that must be told, and no other."""

from firstcourse.verify.judged.check import check_judged

__all__ = ["check_judged"]
