"""Re-proves a plan from plan.json alone, knowing no planner."""

from firstcourse.verify.compared import verify_comparison
from firstcourse.verify.handed import verify_handover
from firstcourse.verify.priced import verify_price
from firstcourse.verify.proof import objecting, verify, verify_text
from firstcourse.verify.proposed import verify_proposal
from firstcourse.verify.verdict import Objection, Verdict

__all__ = [
    "Objection",
    "Verdict",
    "objecting",
    "verify",
    "verify_comparison",
    "verify_handover",
    "verify_price",
    "verify_proposal",
    "verify_text",
]
