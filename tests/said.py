"""Findings and workings in words, for tests that read what a setter reads."""

from firstcourse.units import Tape
from firstcourse.words import Speaker


def said(finding, tape=Tape.INCH, practice="us", **kept):
    return Speaker(practice, tape, **kept).finding(finding)


def all_said(findings, tape=Tape.INCH, practice="us", **kept):
    return Speaker(practice, tape, **kept).findings(findings)


def worked(working, tape=Tape.INCH, practice="us", **kept):
    return Speaker(practice, tape, **kept).working(working)
