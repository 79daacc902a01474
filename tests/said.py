"""Findings and workings in words, for tests that read what a setter reads."""

import json

from firstcourse.drawings.cut_words import said_places
from firstcourse.plan import Plan
from firstcourse.units import Tape
from firstcourse.words import Speaker, speaker_for


def said(finding, tape=Tape.INCH, practice="us", **kept):
    return Speaker(practice, tape, **kept).finding(finding)


def all_said(findings, tape=Tape.INCH, practice="us", **kept):
    return Speaker(practice, tape, **kept).findings(findings)


def places_of(places, tape=Tape.INCH):
    """What tiles are cut along, in words, with the number there."""
    return dict(said_places(places, Speaker("us", tape)))


def said_of(plan):
    """The findings of a plan, or of its document as text or as read from JSON, with all that is named in it."""
    if isinstance(plan, dict):
        plan = json.dumps(plan)
    if isinstance(plan, str):
        plan = Plan.model_validate_json(plan)
    return speaker_for(plan).findings(plan.findings)


def worked(working, tape=Tape.INCH, practice="us", **kept):
    return Speaker(practice, tape, **kept).working(working)
