"""schemas.py DOCS TOP: the two JSON Schemas in a validator. The demos and the template must be
valid, and so must the json of every command; wrong files must not be, each for one fault that the
program refuses as well. Ends with "count PASSED FAILED"."""

import json
import pathlib
import re
import subprocess
import sys

import jsonschema
import yaml

docs, top = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
passed = failed = 0


class Yaml12(yaml.SafeLoader):
    """YAML 1.2, as editors read it: `on` is a word and no truth value."""


Yaml12.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("bool", r"^(true|false)$", "tf"),
    ("int", r"^[-+]?[0-9]+$", "-+0123456789"),
    ("float", r"^[-+]?[0-9]+\.[0-9]+$", "-+0123456789"),
    ("null", r"^$", [""]),
):
    Yaml12.add_implicit_resolver("tag:yaml.org,2002:" + tag, re.compile(pattern), list(first))


def note(name, good, why=""):
    global passed, failed
    passed, failed = passed + good, failed + (not good)
    if not good:
        print("FAIL schema:", name, str(why)[:400])


def tyresum(*arguments, text=None):
    return subprocess.run(["tyresum", *arguments], input=text, capture_output=True, text=True)


def valid(validator, data):
    errors = list(validator.iter_errors(data))
    return not errors, errors[0] if errors else ""


build_schema = json.loads((docs / "tyresum-build.schema.json").read_text())
rows_schema = json.loads((docs / "tyresum-rows.schema.json").read_text())
Validator = jsonschema.validators.validator_for(build_schema)
for schema in build_schema, rows_schema:
    try:
        Validator.check_schema(schema)
        note("is a schema", True)
    except jsonschema.SchemaError as error:
        note("is a schema", False, error)
build = Validator(build_schema)

template = tyresum("check", "--template").stdout
filled = re.sub(r"(?m)^#(  |[a-z])", r"\1", template)
texts = {path.name: path.read_text() for path in sorted((top / "demo").glob("*.yaml"))}
texts.update({"template": template, "template, every line filled in": filled})
for path in sorted((top / "tests" / "outside" / "builds").glob("*.yaml")):
    texts[path.name] = path.read_text()
for name, text in texts.items():
    note(name, *valid(build, yaml.load(text, Loader=Yaml12)))
    checked = tyresum("check", "-", text=text)
    note("the program reads " + name, checked.returncode == 0, checked.stderr)

good = "tyres: {fitted: {size: 205/55R16 91V}}\n"
wrong = {
    "no tyres": "vehicle: {name: one}\n",
    "no fitted tyre": "tyres: {options: []}\n",
    "no size": "tyres: {fitted: {mass: 20 kg}}\n",
    "an unknown key": good + "vehicel: {name: one}\n",
    "a misspelt key": good + "vehicle: {wheelbse: 2600 mm}\n",
    "no unit": good + "vehicle: {wheelbase: 2600}\n",
    "the unit of another kind": good + "vehicle: {wheelbase: 2600 kg}\n",
    "a unit that is none": good + "vehicle: {wheelbase: 2600 mmm}\n",
    "a decimal comma": good + "vehicle: {wheelbase: '2,6 m'}\n",
    "a word outside its list": good + "vehicle: {drive: all}\n",
    "a mapping for a list": good + "drivetrain: {gears: {a: 1}, axle: 3.9}\n",
    "no axle ratio": good + "drivetrain: {gears: [3.5, 1.0]}\n",
    "a gear that is none": good + "drivetrain: {gears: [3.5, first], axle: 3.9}\n",
    "an option without a name": "tyres: {fitted: {size: 205/55R16 91V}, options: [{size: 195/65R15}]}\n",
    "one of a pair": good + "speedometer: {readings: [[50 km/h]]}\n",
    "an axle that is none": good + "vehicle: {unladen: {front: 700 kg, back: 500 kg}}\n",
    "a bare number out of range": good + "drivetrain: {gears: [3.5], axle: 391}\n",
    "an empty value": good + "vehicle: {wheelbase: }\n",
    "a state that is neither": good + "states: {touring: some}\n",
}
note("the good file", *valid(build, yaml.load(good, Loader=Yaml12)))
note("the program reads the good file", tyresum("check", "-", text=good).returncode == 0)
for name, text in wrong.items():
    note(name, not valid(build, yaml.load(text, Loader=Yaml12))[0], "is taken for valid")
    note("the program refuses: " + name, tyresum("check", "-", text=text).returncode == 2)

for command, schema in rows_schema["$defs"].items():
    validator = Validator({**rows_schema, "anyOf": [schema]})
    for units in "metric", "us", "both":
        if command == "size":
            arguments = [["205/55R16 91V", "LT245/75R16 120/116R", "7.50R16LT", "205/55R16"]]
        elif command == "compare":
            arguments = [["P255/70R16 109S", "LT255/75R16 111/108Q"], [str(top / "demo/commuter_car.yaml")]]
        elif command == "tables":
            arguments = [[]]
        else:
            arguments = [[str(path)] for path in sorted((top / "demo").glob("*.yaml"))]
        for operands in arguments:
            run = tyresum(command, *operands, "--format", "json", "--units", units)
            name = " ".join([command, *operands, units])
            if run.returncode == 2 and "which `" + command + "` needs" in run.stderr:
                continue  # a demo without that part
            try:
                rows = json.loads(run.stdout)
            except ValueError as error:
                note(name, False, error)
                continue
            note(name, *valid(validator, rows))
            note(name + " as a whole", *valid(Validator(rows_schema), rows))
            spoiled = [dict(rows[0], verdict="good"), dict(rows[0], option=3), {"no": "row"}, 7]
            for row in spoiled if "verdict" in rows[0] else spoiled[2:]:
                note(name + " spoiled", not valid(validator, [row])[0], str(row) + " is taken")
            note(name + " has rows", len(rows) > 0)

print("count", passed, failed)
