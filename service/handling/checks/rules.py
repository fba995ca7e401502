"""The rules behind the round, each with what backs it."""

from __future__ import annotations

from service.handling.rule import Evidence, Rule

YEARLY = Rule(
    "check-yearly",
    "Every container is looked into once a year.",
    Evidence.PRACTICE,
)
TEXTILES_OFTEN = Rule(
    "check-textiles-often",
    "Boxes of textiles are looked into every few months; here every three.",
    Evidence.PUBLISHED,
    "a public museum's textile care page: look inside every few months",
)
NATURAL_HISTORY_OFTEN = Rule(
    "check-natural-history-often",
    "Skins, feathers, insects and dried plants are eaten as textiles are: every three months.",
    Evidence.PRACTICE,
)
TISSUE_TEST = Rule(
    "check-tissue-acid",
    "Tissue is changed when it is yellow or a pH pen shows acid.",
    Evidence.PRACTICE,
)
CORROSION = Rule(
    "check-corrosion",
    "Metal that corrodes is seen early: white on lead, green on copper, red on iron.",
    Evidence.PRACTICE,
)
LABELS_LEGIBLE = Rule(
    "check-labels-legible",
    "A number that fades or a label that lets go is found while somebody still knows the box.",
    Evidence.PRACTICE,
)
WEIGH_IF_CHOSEN = Rule(
    "check-weight-if-chosen",
    "To weigh is to lift: it is asked for only where the museum chooses so.",
    Evidence.PRACTICE,
)
FOUND_AGAIN = Rule(
    "check-found-again",
    "Where something was found, it is looked at again after a month.",
    Evidence.PRACTICE,
)
MUSEUM_CHOICE = Rule(
    "check-museum-choice",
    "The museum has set how often this is looked at.",
    Evidence.PRACTICE,
)
ISOLATE_PESTS = Rule(
    "isolate-pests",
    "Inspect for pests; what has them is bagged in clean polyethylene and kept apart.",
    Evidence.PUBLISHED,
    "CCI Notes 13/5",
)
LOOK_BESIDE_PESTS = Rule(
    "look-beside-pests",
    "Pests walk: the same shelf is looked at next, then what stands before and behind it.",
    Evidence.PRACTICE,
)

RULES: tuple[Rule, ...] = (
    YEARLY,
    TEXTILES_OFTEN,
    NATURAL_HISTORY_OFTEN,
    TISSUE_TEST,
    CORROSION,
    LABELS_LEGIBLE,
    WEIGH_IF_CHOSEN,
    FOUND_AGAIN,
    MUSEUM_CHOICE,
    ISOLATE_PESTS,
    LOOK_BESIDE_PESTS,
)
