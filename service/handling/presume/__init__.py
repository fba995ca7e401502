"""What published guidance presumes of an object by its kind, material and date.

A presumption adds a hazard as presumed and names its rule; it confirms nothing, replaces nothing
that is recorded, and where it is silent nothing is known.
"""

from service.handling.presume.add import PRESUMPTIONS, RULES, presume_for, presume_hazards

__all__ = ["PRESUMPTIONS", "RULES", "presume_for", "presume_hazards"]
