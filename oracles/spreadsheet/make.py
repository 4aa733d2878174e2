"""Records how Python's csv module reads our tables (see README.md)."""

import csv
import json
from pathlib import Path

HERE = Path(__file__).parent


def rows(name):
    """The cells of a table; strict, so that a broken quotation mark is an error."""
    with open(HERE / f"{name}.csv", encoding="utf-8", newline="") as file:
        table = list(csv.reader(file, strict=True))
    assert len({len(row) for row in table}) == 1, f"rows of {name} differ in length"
    return table


answers = {name: rows(name) for name in ("log", "readings")}
with open(HERE / "answers.json", "w", encoding="utf-8") as file:
    json.dump(answers, file, ensure_ascii=False, indent=1)
    file.write("\n")
