# SPDX-License-Identifier: Apache-2.0
"""The JSON Schemas of the two documents: sound themselves, passing what is sound and failing what is broken.

    schema_test.py
"""

import copy
import json
import os
import sys
import unittest

from jsonschema import Draft202012Validator, RefResolver

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.join(HERE, "..", "..", "..")


def load(*path):
    with open(os.path.join(ROOT, *path), encoding="utf-8") as file:
        return json.load(file)


SURVEY = load("survey-core", "document", "schema", "survey.schema.json")
FIGURES = load("survey-core", "document", "schema", "figures.schema.json")
RULES = load("survey-core", "document", "schema", "rules.schema.json")
CHOICES = load("survey-core", "document", "schema", "choices.schema.json")
LISTS = load("survey-core", "document", "schema", "lists.schema.json")
EXAMPLE = load("tests", "reference", "contract", "survey.example.json")
FULL = load("tests", "core", "document", "full.survey.json")
EXAMPLE_FIGURES = load("tests", "reference", "contract", "figures.example.json")

# Of the malformed documents, those that only a reader can find: ids and names that belong together, the calendar,
# the words of a station list that isn't the schema's, and what is left of a width.
BEYOND_A_SCHEMA = {
    "a day that isn't in the calendar", "a cloth that is all selvedge", "two fabrics of one id",
    "two rooms and two windows of one id", "two windows of one id over two rooms",
    "a length station with an angle only", "two readings of one id", "two obstructions of one id",
    "a fabric that isn't there", "a second lining that isn't there", "a lining and an interlining that aren't there",
    "two layers of one id, one with a cloth that isn't there", "two bearings of one id",
}


def place(document, pointer):
    """The object or list that holds the pointer's last step, and that step."""
    steps = [step.replace("~1", "/").replace("~0", "~") for step in pointer.split("/")[1:]]
    for step in steps[:-1]:
        document = document[int(step)] if isinstance(document, list) else document[step]
    last = steps[-1]
    if isinstance(document, list):
        last = len(document) if last == "-" else int(last)
    return document, last


def patched(document, patch):
    """The operations of RFC 6902 that the malformed documents use."""
    document = copy.deepcopy(document)
    for step in patch:
        holder, key = place(document, step["path"])
        if step["op"] == "remove":
            del holder[key]
            continue
        if step["op"] == "copy":
            source, name = place(document, step["from"])
            value = copy.deepcopy(source[name])
        else:
            value = step["value"]
        if isinstance(holder, list) and step["op"] in ("add", "copy"):
            holder.insert(key, value)
        else:
            holder[key] = value
    return document


def faults(schema, document):
    together = RefResolver.from_schema(schema, store={one["$id"]: one for one in (SURVEY, RULES)})
    validator = Draft202012Validator(schema, resolver=together)
    return [f"{list(fault.absolute_path)}: {fault.message}" for fault in validator.iter_errors(document)]


def objects(document):
    if isinstance(document, dict):
        yield document
    for part in document.values() if isinstance(document, dict) else document:
        if isinstance(part, (dict, list)):
            yield from objects(part)


class Schemas(unittest.TestCase):
    def test_are_sound(self):
        for schema in (SURVEY, FIGURES, RULES, CHOICES, LISTS):
            Draft202012Validator.check_schema(schema)
            self.assertEqual(schema["$schema"], "https://json-schema.org/draft/2020-12/schema")

    def test_pass_what_is_sound(self):
        self.assertEqual(faults(SURVEY, EXAMPLE), [])
        self.assertEqual(faults(SURVEY, FULL), [])
        self.assertEqual(faults(FIGURES, EXAMPLE_FIGURES), [])
        self.assertEqual(faults(SURVEY, {"format": "truehang.survey/1.4", "id": "x", "fabrics": [], "rooms": []}), [])

    def test_hold_lists_to_what_a_survey_holds(self):
        layers = FULL["rooms"][0]["windows"][0]["layers"]
        named = next(layer["hardware"] for layer in layers if "name" in layer.get("hardware", {}))
        rules = {"name": "Lined curtains", "rules": {"hem_mm": 160}}
        lists = {"format": "truehang.lists/1", "fabrics": FULL["fabrics"], "hardware": [named], "rules": [rules]}
        self.assertEqual(faults(LISTS, lists), [])
        for broken in ({"fabrics": [{"id": "a"}]}, {"hardware": [named | {"name": ""}]}, {"hardware": [{"kind": "pole"}]},
                       {"rules": [rules | {"rules": {"hem_mm": -1}}]}, {"format": "truehang.lists/2"}):
            self.assertNotEqual(faults(LISTS, lists | broken), [], broken)

    def test_name_every_key_of_the_full_survey(self):
        """Closed to unknown keys, the survey's schema still passes a survey that has every key once."""
        closed = copy.deepcopy(SURVEY)
        for part in objects(closed):
            if part.get("type") == "object" and "additionalProperties" not in part:
                part["additionalProperties"] = False
        self.assertEqual(faults(closed, FULL), [])
        self.assertNotEqual(faults(closed, FULL | {"unheard_of": 1}), [])

    def test_take_unknown_keys_and_words(self):
        survey, figures = copy.deepcopy(FULL), copy.deepcopy(EXAMPLE_FIGURES)
        for part in list(objects(survey)) + list(objects(figures)):
            if "eyelet" not in part:  # head_mm holds numbers only
                part["from_a_newer_phone"] = {"deep": [1, None]}
        survey["rooms"][0]["windows"][0]["shape"] = "porthole"
        survey["rooms"][0]["windows"][0]["readings"][0]["station"] = "porthole.rim"
        survey["rooms"][0]["windows"][0]["layers"][0]["treatment"]["heading"] = "reefed"
        self.assertEqual(faults(SURVEY, survey), [])
        self.assertEqual(faults(FIGURES, figures), [])

    def test_fail_the_malformed_surveys(self):
        cases = load("tests", "core", "document", "malformed.json")
        self.assertLessEqual(BEYOND_A_SCHEMA, {case["what"] for case in cases})
        for case in cases:
            with self.subTest(case["what"]):
                found = faults(SURVEY, patched(EXAMPLE, case["patch"]))
                if case["what"] in BEYOND_A_SCHEMA:
                    self.assertEqual(found, [])
                else:
                    self.assertNotEqual(found, [])

    def test_fail_broken_figures(self):
        window = "/windows/0"
        broken = [("replace", "/format", "truehang.survey/1"), ("remove", "/survey", None), ("remove", "/windows", None),
                  ("remove", "/orders", None), ("remove", "/haberdashery", None), ("replace", "/revision", "1"),
                  ("remove", window + "/id", None), ("remove", window + "/finished", None),
                  ("remove", window + "/next", None), ("replace", window + "/finished/drop_mm", 1992.4),
                  ("replace", window + "/finished/drop_u_mm", None), ("replace", window + "/cloth", []),
                  ("remove", window + "/cloth/fullness", None), ("replace", window + "/lining/cut_drop_mm", 2109.5),
                  ("replace", window + "/sizes/0/u_mm", -1), ("remove", window + "/checks/0/adds_up", None),
                  ("replace", window + "/flags/0/severity", "urgent"), ("replace", window + "/flags/0/text", ""),
                  ("replace", window + "/flags/0/code", "does-not-add-up"), ("replace", window + "/mass_kg", "2.65"),
                  ("remove", window + "/trace/0/steps/0/mm", None), ("add", window + "/trace/0/steps/0/count", 2),
                  ("replace", "/orders/0/provisional", 0), ("replace", "/orders/0/cuts/0/count", 1.5),
                  ("remove", "/haberdashery/0/count", None)]
        for op, path, value in broken:
            with self.subTest(path):
                found = faults(FIGURES, patched(EXAMPLE_FIGURES, [{"op": op, "path": path, "value": value}]))
                self.assertNotEqual(found, [])

    def test_rules_alone_are_the_rules_of_a_survey(self):
        """One list of rules in two schemas: what a survey's rules may be, but for what they are called."""
        of_survey = {key: value for key, value in SURVEY["$defs"]["rules"]["properties"].items()
                     if key not in ("name", "version", "date")}
        self.assertEqual(RULES["$defs"]["rules"]["properties"], of_survey)
        rules = {"format": "truehang.rules/1", "name": "Lined", "version": 2, "date": "2026-03-14",
                 "rules": {"hem_mm": 160, "knots": 7, "head_mm": {"tab": 12}}}
        self.assertEqual(faults(RULES, rules), [])
        for key, value in (("format", "truehang.survey/1"), ("version", 0), ("date", "soon"), ("name", 3),
                           ("rules", {"hem_mm": -1}), ("rules", {"tab_gap_mm": 0})):
            with self.subTest(key):
                self.assertNotEqual(faults(RULES, rules | {key: value}), [])

    def test_take_layered_figures(self):
        figures = copy.deepcopy(EXAMPLE_FIGURES)
        window = figures["windows"][0]
        hanging = ("finished", "cloth", "lining", "interlining", "tabs", "eyelets", "hooks", "weights", "blind", "pelmet",
                   "mass_kg", "bracket_kg")
        window["layers"] = [{"id": "curtains"} | {key: window.pop(key) for key in hanging}]
        self.assertEqual(faults(FIGURES, figures), [])
        del window["layers"][0]["cloth"]
        self.assertNotEqual(faults(FIGURES, figures), [])


if __name__ == "__main__":
    sys.exit(unittest.main())
