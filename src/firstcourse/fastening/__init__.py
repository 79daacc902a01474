"""Where every fastener of a board goes."""

from firstcourse.fastening.fasten import Fastened, fasten

__all__ = ["Fastened", "fasten"]
