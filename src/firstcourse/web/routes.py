"""Every address that is answered, what it needs, and by whom it is answered. A page is added here."""

from dataclasses import dataclass

from firstcourse.web.asking import MOST_BYTES, Handler, Needs
from firstcourse.web.pages import document, entering, jobs, planning, revisions, statics

DOCUMENT_BYTES = 4_000_000


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
    Page("GET", "/enter", entering.form, Needs.NOTHING),
    Page("POST", "/enter", entering.enter, Needs.NOTHING),
    Page("POST", "/enter/new-code", entering.new_code, Needs.NOTHING),
    Page("POST", "/leave", entering.leave, Needs.SIGNED_IN),
    Page("GET", "/jobs", jobs.listed, Needs.SIGNED_IN),
    Page("GET", "/jobs/new", jobs.new_form, Needs.SIGNED_IN),
    Page("POST", "/jobs/new", jobs.new, Needs.SIGNED_IN),
    Page("POST", "/jobs/upload", jobs.upload, Needs.SIGNED_IN, DOCUMENT_BYTES),
    Page("GET", "/jobs/{job}", jobs.show, Needs.JOB),
    Page("POST", "/jobs/{job}/copy", jobs.copy, Needs.JOB),
    Page("POST", "/jobs/{job}/archive", jobs.archive, Needs.JOB),
    Page("GET", "/jobs/{job}/document", document.show, Needs.JOB),
    Page("POST", "/jobs/{job}/document", document.save, Needs.JOB, DOCUMENT_BYTES),
    Page("GET", "/jobs/{job}/job.yaml", document.download, Needs.JOB),
    Page("POST", "/jobs/{job}/field", document.set_field, Needs.JOB),
    Page("GET", "/jobs/{job}/revisions", revisions.listed, Needs.JOB),
    Page("GET", "/jobs/{job}/difference", revisions.difference, Needs.JOB),
    Page("POST", "/jobs/{job}/undo", revisions.undo, Needs.JOB),
    Page("POST", "/jobs/{job}/plan", planning.plan, Needs.JOB),
    Page("POST", "/jobs/{job}/stop", planning.stop, Needs.JOB),
    Page("GET", "/jobs/{job}/progress", planning.progress, Needs.JOB),
    Page("GET", "/jobs/{job}/surface", planning.surface, Needs.JOB),
    Page("GET", "/jobs/{job}/drawing", planning.drawing, Needs.JOB),
    Page("GET", "/jobs/{job}/papers/{name:path}", planning.paper, Needs.JOB),
)
"""In the order in which they are tried."""
