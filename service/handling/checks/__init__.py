"""The yearly round: what is looked at in each container, how often, and what a finding asks for."""

from service.handling.checks.rules import RULES

__all__ = ["RULES"]
