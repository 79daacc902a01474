"""Where every fastener of a board goes."""

from firstcourse.boards.fastening.fasten import Fastened, fasten

__all__ = ["Fastened", "fasten"]
