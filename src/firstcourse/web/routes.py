"""Every address that is answered, what it needs, and by whom it is answered. A page is added here."""

from dataclasses import dataclass

from firstcourse.web.asking import MOST_BYTES, Handler, Needs
from firstcourse.web.pages import (
    choices,
    client,
    document,
    entering,
    jobs,
    onsite,
    people,
    photos,
    planning,
    planning_on,
    rack,
    revisions,
    saving,
    sharing,
    statics,
    ticks_file,
    unfold,
    walking,
)

DOCUMENT_BYTES = 4_000_000
PHOTO_BYTES = 12_500_000
"""A photo with the fields beside it."""


@dataclass(frozen=True, slots=True)
class Page:
    """One address.

    Attributes:
        method: GET or POST.
        path: With names of its parts in braces; `{job}` is a job's id.
        handler: Takes an `Ask` and gives an answer.
        needs: Who may ask.
        most_bytes: The largest form that is read [bytes].
    """

    method: str
    path: str
    handler: Handler
    needs: Needs
    most_bytes: int = MOST_BYTES


PAGES = (
    Page("GET", "/", jobs.home, Needs.SIGNED_IN),
    Page("GET", "/static/{name:path}", statics.static, Needs.NOTHING),
    Page("GET", "/worker.js", statics.worker, Needs.NOTHING),
    Page("GET", "/enter", entering.form, Needs.NOTHING),
    Page("POST", "/enter", entering.enter, Needs.NOTHING),
    Page("POST", "/enter/new-code", entering.new_code, Needs.NOTHING),
    Page("GET", "/sign-in", entering.sign_in_form, Needs.NOTHING),
    Page("POST", "/sign-in", entering.sign_in_by_name, Needs.NOTHING),
    Page("POST", "/leave", entering.leave, Needs.SIGNED_IN),
    Page("GET", "/account", people.own, Needs.ACCOUNT),
    Page("POST", "/account/password", people.set_password, Needs.ACCOUNT),
    Page("POST", "/account/tongue", people.set_tongue, Needs.ACCOUNT),
    Page("POST", "/account/code", people.own_code, Needs.ACCOUNT),
    Page("POST", "/account/leave-one", people.leave_one, Needs.ACCOUNT),
    Page("POST", "/account/leave-all", people.leave_all, Needs.ACCOUNT),
    Page("GET", "/people", people.listed, Needs.OWNER),
    Page("POST", "/people", people.new, Needs.OWNER),
    Page("POST", "/people/{account}/code", people.code, Needs.OWNER),
    Page("POST", "/people/{account}/close", people.close, Needs.OWNER),
    Page("GET", "/rack", rack.shown, Needs.ACCOUNT),
    Page("POST", "/rack", rack.add, Needs.ACCOUNT),
    Page("POST", "/rack/throw", rack.throw, Needs.ACCOUNT),
    Page("GET", "/jobs", jobs.listed, Needs.ACCOUNT),
    Page("GET", "/jobs/new", jobs.new_form, Needs.ACCOUNT),
    Page("POST", "/jobs/new", jobs.new, Needs.ACCOUNT),
    Page("POST", "/jobs/upload", jobs.upload, Needs.ACCOUNT, DOCUMENT_BYTES),
    Page("GET", "/jobs/{job}", jobs.show, Needs.JOB),
    Page("POST", "/jobs/{job}/copy", jobs.copy, Needs.JOB),
    Page("POST", "/jobs/{job}/archive", jobs.archive, Needs.JOB),
    Page("GET", "/jobs/{job}/walk", walking.listed, Needs.JOB),
    Page("POST", "/jobs/{job}/walk", walking.lay, Needs.JOB),
    Page("GET", "/jobs/{job}/walk/{walk}", walking.show, Needs.JOB),
    Page("POST", "/jobs/{job}/walk/{walk}", walking.tape, Needs.JOB),
    Page("POST", "/jobs/{job}/walk/{walk}/drop", walking.drop, Needs.JOB),
    Page("GET", "/jobs/{job}/walk/{walk}/done", walking.finish_form, Needs.JOB),
    Page("POST", "/jobs/{job}/walk/{walk}/done", walking.finish, Needs.JOB),
    Page("GET", "/jobs/{job}/document", document.show, Needs.JOB),
    Page("POST", "/jobs/{job}/document", document.save, Needs.JOB, DOCUMENT_BYTES),
    Page("GET", "/jobs/{job}/job.yaml", document.download, Needs.JOB),
    Page("POST", "/jobs/{job}/field", document.set_field, Needs.JOB),
    Page("POST", "/jobs/{job}/decide", saving.decide, Needs.JOB, DOCUMENT_BYTES),
    Page("GET", "/jobs/{job}/revisions", revisions.listed, Needs.JOB),
    Page("GET", "/jobs/{job}/difference", revisions.difference, Needs.JOB),
    Page("POST", "/jobs/{job}/undo", revisions.undo, Needs.JOB),
    Page("POST", "/jobs/{job}/plan", planning.plan, Needs.JOB),
    Page("POST", "/jobs/{job}/stop", planning.stop, Needs.JOB),
    Page("GET", "/jobs/{job}/progress", planning.progress, Needs.JOB),
    Page("GET", "/jobs/{job}/choices", choices.show, Needs.JOB),
    Page("POST", "/jobs/{job}/choices", choices.save, Needs.JOB),
    Page("GET", "/jobs/{job}/rack", rack.of_job, Needs.JOB),
    Page("POST", "/jobs/{job}/rack", rack.put, Needs.JOB),
    Page("POST", "/jobs/{job}/rack/back", rack.back, Needs.JOB),
    Page("GET", "/jobs/{job}/room/{number}", unfold.room, Needs.JOB),
    Page("GET", "/jobs/{job}/surface/{surface:path}", unfold.surface, Needs.JOB),
    Page("POST", "/jobs/{job}/opening", unfold.put, Needs.JOB),
    Page("POST", "/jobs/{job}/opening/remove", unfold.remove, Needs.JOB),
    Page("POST", "/jobs/{job}/start", unfold.start, Needs.JOB),
    Page("POST", "/jobs/{job}/remedy", unfold.remedy, Needs.JOB),
    Page("POST", "/jobs/{job}/light", unfold.light, Needs.JOB),
    Page("GET", "/jobs/{job}/surface", planning.surface, Needs.JOB),
    Page("GET", "/jobs/{job}/drawing", planning.drawing, Needs.READ_JOB),
    Page("GET", "/jobs/{job}/papers/{name:path}", planning.paper, Needs.JOB),
    Page("GET", "/jobs/{job}/site", onsite.show, Needs.JOB),
    Page("POST", "/jobs/{job}/site", onsite.enter, Needs.JOB),
    Page("GET", "/jobs/{job}/site/along", onsite.along, Needs.JOB),
    Page("POST", "/jobs/{job}/site/events", onsite.events, Needs.JOB),
    Page("POST", "/jobs/{job}/site/file", ticks_file.take, Needs.JOB, DOCUMENT_BYTES),
    Page("GET", "/jobs/{job}/site/drawing", onsite.drawing, Needs.JOB),
    Page("POST", "/jobs/{job}/site/fix", planning_on.fix, Needs.JOB),
    Page("GET", "/jobs/{job}/site/left", planning_on.left, Needs.JOB),
    Page("GET", "/jobs/{job}/site/photos", photos.listed, Needs.JOB),
    Page("POST", "/jobs/{job}/site/photos", photos.add, Needs.JOB, PHOTO_BYTES),
    Page("POST", "/jobs/{job}/site/photos/drop", photos.drop, Needs.JOB),
    Page("GET", "/jobs/{job}/site/photos/{photo}", photos.shown, Needs.JOB),
    Page("GET", "/jobs/{job}/people", sharing.shown, Needs.OWNER),
    Page("POST", "/jobs/{job}/people", sharing.share, Needs.OWNER),
    Page("GET", "/jobs/{job}/links", sharing.links, Needs.JOB),
    Page("POST", "/jobs/{job}/links", sharing.new_link, Needs.JOB),
    Page("POST", "/jobs/{job}/links/end", sharing.end_link, Needs.JOB),
    Page("GET", "/jobs/{job}/client", client.show, Needs.READ_JOB),
    Page("POST", "/jobs/{job}/client/answer", client.answer, Needs.READ_JOB),
    Page("GET", "/jobs/{job}/client/drawing", client.drawing, Needs.READ_JOB),
)
"""In the order in which they are tried."""
