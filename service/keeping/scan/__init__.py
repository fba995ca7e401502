"""What somebody who scans a printed card is told, and what only those of the house see."""

from service.keeping.scan.answer import NewestCard, ScanAnswer, answer_scan
from service.keeping.scan.inside import NOTHING_INSIDE, Inside, see_inside

__all__ = ["NOTHING_INSIDE", "Inside", "NewestCard", "ScanAnswer", "answer_scan", "see_inside"]
