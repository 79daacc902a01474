"""What is handed over when a job is done: what was recorded of it, held against what its plan asks for."""

from firstcourse.handing.handover import Handover, KeptPhoto, handed_over
from firstcourse.handing.record import LARGEST_RECORD, Record, read_record

__all__ = ["LARGEST_RECORD", "Handover", "KeptPhoto", "Record", "handed_over", "read_record"]
