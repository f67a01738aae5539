"""Share of lines of the twenty plans that an import reads as a person does, and how long it takes.

The plans and their expected readings are ours; the importer was mended on the texts and CSV files,
the six workbooks were written after it.
"""

import importlib.util
import sys
import time
from pathlib import Path

from setwright.plan.foreign.importing import import_plan

FOLDER = Path(__file__).parents[1] / "tests" / "plan" / "imports"


def loaded(name):
    spec = importlib.util.spec_from_file_location(f"foreign_{name}", FOLDER / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


def main():
    expected, workbooks = loaded("expected"), loaded("workbooks")
    files = [p for p in sorted(FOLDER.glob("[0-9]*")) if p.suffix in (".txt", ".csv", ".tsv")]
    plans = {path.name: path.read_bytes() for path in files}
    plans |= {f"{stem}.xlsx": workbooks.built(stem) for stem in workbooks.BUILDERS}
    right = total = pieces = asked = 0
    began = time.perf_counter()
    readings = {name: import_plan(data, name) for name, data in plans.items()}
    took = time.perf_counter() - began
    for name, reading in readings.items():
        lines = expected.expectations(name.rsplit(".", 1)[0])
        wrong = [line for line in lines if not expected.right(line, reading)]
        right, total = right + len(lines) - len(wrong), total + len(lines)
        pieces, asked = pieces + len(reading.pieces), asked + len(reading.attention)
        print(f"{name:22} {len(lines) - len(wrong):3} of {len(lines):3} lines right")
        for line in wrong:
            print(f"    {line.place}: expected {line.reading}")
    print(f"all: {right} of {total} lines right ({right / total:.1%})")
    print(f"{pieces} lines and cells, all accounted for; {asked} asked about; {took:.2f} s in all")


if __name__ == "__main__":
    main()
