"""cells.py FOLDER FODS: the cells that LibreOffice made of each csv in FOLDER, against the json of the
same command: a json number must be a number cell of the same value (to the csv's decimals), a text
a text cell, null an empty cell. Ends with "count PASSED FAILED 0"."""

import csv
import json
import pathlib
import sys
import xml.etree.ElementTree as ElementTree

TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"

folder, fods = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
passed = failed = numbers = 0


def sheet_rows(path):
    table = ElementTree.parse(path).getroot().find(".//" + TABLE + "table")
    for row in table.iter(TABLE + "table-row"):
        cells = []
        for cell in row:
            repeat = min(int(cell.get(TABLE + "number-columns-repeated", "1")), 200)
            kind = cell.get(OFFICE + "value-type", "")
            text = "".join("".join(p.itertext()) for p in cell.iter(TEXT + "p"))
            value = float(cell.get(OFFICE + "value")) if kind == "float" else text
            cells.extend([(kind, value)] * repeat)
        yield cells


def fault_of(rows, path, decimal):
    """The first cell that is not what the json says, or None."""
    global numbers
    lines = list(csv.reader(path.open(encoding="utf-8-sig", newline=""), delimiter=",;"[decimal == ","]))
    cells = list(sheet_rows(fods / (path.stem + ".fods")))
    if len(lines) != len(rows) + 1:
        return f"{len(lines)} lines for {len(rows)} rows"
    if [cell[1] for cell in cells[0]][: len(lines[0])] != lines[0]:
        return f"heading {cells[0]}"
    for number, (row, line, made) in enumerate(zip(rows, lines[1:], cells[1:]), 2):
        made = made + [("", "")] * len(line)
        for name, field, (kind, value) in zip(lines[0], line, made):
            wanted = row[name]
            if isinstance(wanted, (int, float)):
                numbers += 1
                good = kind == "float" and value == float(field.replace(",", "."))
            else:
                # A text that is a number all the same (an aspect, say) is no fault.
                good = (wanted is None and kind == "") or (
                    wanted is not None and (kind in ("string", "float"))
                )
            if not good:
                return f"line {number}, {name}: {field!r} became {kind or 'empty'} {value!r}"
    return None


for path in sorted(folder.glob("*.csv")):
    name, language = path.stem.split(".")
    rows = json.loads((folder / (name + ".json")).read_text())
    try:
        fault = fault_of(rows, path, "," if language == "de" else ".")
    except (OSError, AttributeError, ElementTree.ParseError) as error:
        fault = str(error)
    passed, failed = passed + (fault is None), failed + (fault is not None)
    if fault is not None:
        print("FAIL office:", path.name, fault)

print(numbers, "numbers compared")
print("count", passed, failed, 0)
sys.exit(failed > 0)
