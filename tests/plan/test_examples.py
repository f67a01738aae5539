"""The example files and the schemas that ship for editors."""

import json
import subprocess
import sys
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from setwright.documents.yaml_io import read_yaml
from setwright.plan.read import read_any_plan, read_intake, read_plain_text, read_plan
from setwright.plan.schema import SCHEMAS, schema_text
from setwright.plan.write import write_intake, write_plan

PROJECT = Path(__file__).parents[2]
EXAMPLES = PROJECT / "examples"


def shipped(name):
    return files("setwright.plan").joinpath("schema", name).read_text(encoding="utf-8")


def example(name):
    return (EXAMPLES / name).read_text(encoding="utf-8")


def problems(schema, text):
    validator = Draft202012Validator(json.loads(shipped(schema)))
    return [error.message for error in validator.iter_errors(read_yaml(text, "x").data)]


@pytest.mark.parametrize("name", sorted(SCHEMAS))
def test_shipped_schemas_are_fresh_and_sound(name):
    assert shipped(name) == schema_text(name), "run `make schemas`"
    Draft202012Validator.check_schema(json.loads(shipped(name)))


@pytest.mark.parametrize(
    ("schema", "name"),
    [
        ("plan-1.schema.json", "plan.yaml"),
        ("intake-1.schema.json", "intake.yaml"),
        ("movement-1.schema.json", "movement.yaml"),
    ],
)
def test_examples_fit_their_schemas(schema, name):
    assert problems(schema, example(name)) == []


@pytest.mark.parametrize(
    ("schema", "name", "old", "new"),
    [
        ("plan-1.schema.json", "plan.yaml", "3 x 8-10", "three of eight"),
        ("plan-1.schema.json", "plan.yaml", "sets: 3", "sets: 99"),
        ("plan-1.schema.json", "plan.yaml", "sets: 3", "sats: 3"),
        ("plan-1.schema.json", "plan.yaml", "rest: 60-90 s", "pause: 60-90 s"),
        ("plan-1.schema.json", "plan.yaml", "plan/1", "plan/9"),
        ("intake-1.schema.json", "intake.yaml", "intermediate", "seasoned"),
        ("intake-1.schema.json", "intake.yaml", "monday 60 min", "mondays"),
        ("intake-1.schema.json", "intake.yaml", "75 kg x 7", "75 for 7"),
        ("movement-1.schema.json", "movement.yaml", "knee flexion: 110", "knee flexion: 310"),
        ("movement-1.schema.json", "movement.yaml", "stretched: {knee", "stretched: {kneee"),
        ("movement-1.schema.json", "movement.yaml", "ends: [leg]", "end: [leg]"),
        ("intake-1.schema.json", "intake.yaml", "active_last_3_months: yes", "active: yes"),
    ],
)
def test_the_schemas_refuse_what_the_readers_refuse(schema, name, old, new):
    text = example(name)
    assert old in text
    assert problems(schema, text.replace(old, new, 1))


def test_examples_read_and_come_back_the_same():
    plan = read_plan(example("plan.yaml"), "plan.yaml")
    assert len(plan.sessions) == 4
    assert read_plan(write_plan(plan), "again") == plan
    texted = read_plain_text(example("plan.txt"), "plan.txt")
    assert read_any_plan(example("plan.txt"), "plan.txt") == texted
    assert read_any_plan(write_plan(texted), "again") == texted
    intake = read_intake(example("intake.yaml"), "intake.yaml")
    assert read_intake(write_intake(intake), "again") == intake
    assert intake.avoid[0].exercise == "good-morning"
    assert intake.known_loads[0].exercise == "barbell-bench-press"


def test_a_plan_of_catalogue_names_is_read_without_fuzzy_matching():
    code = (
        "import sys; from pathlib import Path; from setwright.plan.read import read_any_plan;"
        f"read_any_plan(Path({str(EXAMPLES / 'plan.yaml')!r}).read_text(encoding='utf-8'), 'x');"
        "print('rapidfuzz' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
