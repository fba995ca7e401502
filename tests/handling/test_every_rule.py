from __future__ import annotations

import ast
import importlib
import re

import service.handling
from service.handling.every_rule import RULE_GROUPS, list_rules, name_evidence
from service.handling.rule import Evidence, Rule
from tests.contracts.sources import SERVICE, python_files


def test_codes_are_unique_and_lasting() -> None:
    """Each rule has a code of its own in kebab-case, and a sentence that ends like one."""
    codes = [rule.code for rule in list_rules()]
    assert len(set(codes)) == len(codes) > 50
    for rule in list_rules():
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", rule.code)
        assert rule.says[0].isupper()
        assert rule.says.endswith(".")


def test_what_is_called_published_names_its_source() -> None:
    """A published rule says where; common practice has no source."""
    for rule in list_rules():
        assert bool(rule.source) or rule.evidence is not Evidence.PUBLISHED, rule.code
        assert not rule.source or rule.evidence is not Evidence.PRACTICE, rule.code


def test_no_rule_of_handling_is_left_out() -> None:
    """Every list of rules in the package is in a group."""
    folder = SERVICE / "handling"
    listed = {id(rule) for rule in list_rules()}
    modules = {
        f"service.{path.relative_to(SERVICE).with_suffix('').as_posix().replace('/', '.')}"
        for path in python_files(folder)
        if any(_names_rules(node) for node in ast.parse(path.read_text("utf-8")).body)
    }
    assert modules
    for name in sorted(modules):
        module = __import__(name, fromlist=["RULES"])
        missing = [rule.code for rule in module.RULES if id(rule) not in listed]
        assert missing == [], name
    assert service.handling.__doc__


def _names_rules(node: ast.stmt) -> bool:
    targets = node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)]
    return any(isinstance(target, ast.Name) and target.id == "RULES" for target in targets)


def test_every_rule_that_is_made_is_listed() -> None:
    """No rule is made in a module of handling without standing in its list."""
    listed = {id(rule) for rule in list_rules()}
    for path in python_files(SERVICE / "handling"):
        parts = path.relative_to(SERVICE).with_suffix("").parts
        module = importlib.import_module(".".join(("service", *parts)))
        made = [rule for rule in vars(module).values() if isinstance(rule, Rule)]
        assert [rule.code for rule in made if id(rule) not in listed] == [], path


def test_evidence_in_words() -> None:
    """The source stands behind what kind of evidence it is."""
    assert name_evidence(Rule("a", "A.", Evidence.PUBLISHED, "ISO 780")) == "published: ISO 780"
    assert name_evidence(Rule("a", "A.", Evidence.PRACTICE)) == "common practice"
    assert {group.heading for group in RULE_GROUPS} >= {"Hazards", "Cautions", "Lifting"}
