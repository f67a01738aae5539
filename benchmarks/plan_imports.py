"""Share of lines that an import reads as a person does, and how long it takes.

The plans and their expected readings are ours. The twenty were mended on; the fresh ones were
written in rounds, each read once before the importer was mended for it: docs/import.md has those
figures.
"""

import importlib.util
import sys
import time
from collections import Counter
from pathlib import Path

from setwright.plan.foreign.importing import import_plan

FOLDERS = [Path(__file__).parents[1] / "tests" / "plan" / name
           for name in ("imports", "imports_fresh")]  # fmt: skip


def loaded(path):
    name = f"{path.parent.name}_{path.stem}"
    spec = importlib.util.spec_from_file_location(name, path)
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module
    spec.loader.exec_module(module)
    return module


def plans_of(folder):
    workbooks = loaded(folder / "workbooks.py")
    files = [path for path in sorted(folder.glob("[0-9]*")) if path.suffix != ".expected"]
    plans = {path.name: path.read_bytes() for path in files}
    return plans | {f"{stem}.xlsx": workbooks.built(stem) for stem in workbooks.BUILDERS}


def main():
    expected = loaded(FOLDERS[0] / "expected.py")
    for folder in FOLDERS:
        plans = plans_of(folder)
        began = time.perf_counter()
        readings = {name: import_plan(data, name) for name, data in plans.items()}
        took = time.perf_counter() - began
        outcomes = Counter()
        for name, reading in readings.items():
            for line in expected.expectations(name.rsplit(".", 1)[0], folder):
                outcome = expected.outcome(line, reading)
                outcomes[outcome] += 1
                if outcome != "right":
                    print(f"  {name} {line.place}: {outcome}, expected {line.reading}")
        lines, right = sum(outcomes.values()), outcomes["right"]
        pieces = sum(len(reading.pieces) for reading in readings.values())
        print(f"{folder.name}: {len(plans)} plans, {right} of {lines} lines right "
              f"({right / lines:.1%}), {outcomes['asked']} asked about, {outcomes['wrong']} wrong; "
              f"{pieces} lines and cells, all accounted for; {took:.2f} s")  # fmt: skip


if __name__ == "__main__":
    main()
