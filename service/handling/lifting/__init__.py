"""What the weight of a container asks of the person who lifts it.

Advice that repeats published figures; a first filter, never a permission: local assessment decides.
"""

from service.handling.lifting.advice import LIGHT_ADVICE, NO_ADVICE, LiftAdvice, advise_lift
from service.handling.lifting.rules import RULES
from service.handling.lifting.written import format_kg

__all__ = ["LIGHT_ADVICE", "NO_ADVICE", "RULES", "LiftAdvice", "advise_lift", "format_kg"]
