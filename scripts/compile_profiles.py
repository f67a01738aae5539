"""Compute the profile of every exercise: ``make profiles``.

Takes all cores; ``--changed`` computes only exercises that have no profile yet.
"""

from __future__ import annotations

import argparse
import sys
from concurrent.futures import ProcessPoolExecutor, as_completed

from rich.progress import track

from setwright.documents.yaml_io import write_text
from setwright.exercises.computed import Computed, compute
from setwright.exercises.movements import movement_ids
from setwright.exercises.profile_cache import FILE, ProfilesFile, inputs_digest


def catalogue_ids() -> tuple[str, ...]:
    """Ids of the catalogue, without importing what depends on the profiles."""
    from setwright.documents.knowledge import load_folder
    from setwright.exercises.model import PatternFile

    files = load_folder("setwright.exercises", "patterns", PatternFile)
    return tuple(one.id for file in files for one in file.exercises)


def main() -> int:
    """Compute and write; say which exercises cannot be computed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument(
        "--draws", type=int, default=200, help="bodies and stances a spread is from"
    )
    draws = parser.parse_args().draws
    wanted = [ident for ident in catalogue_ids() if ident in movement_ids()]
    missing = sorted(set(catalogue_ids()) - set(wanted))
    found: dict[str, Computed] = {}
    failed: dict[str, str] = {}
    with ProcessPoolExecutor() as pool:
        jobs = {pool.submit(compute, ident, draws): ident for ident in wanted}
        for job in track(as_completed(jobs), "Profiles", total=len(jobs)):
            try:
                found[jobs[job]] = job.result()
            except ValueError as error:
                failed[jobs[job]] = str(error)
    for ident, why in sorted(failed.items()):
        print(f"{ident}: {why}", file=sys.stderr)
    if missing:
        print(f"no movement is declared for: {', '.join(missing)}", file=sys.stderr)
    ordered = {ident: found[ident] for ident in sorted(found)}
    file = ProfilesFile(inputs_sha256=inputs_digest(), profiles=ordered)
    write_text(FILE, file.model_dump_json(indent=0) + "\n")
    print(f"{len(ordered)} profiles, {FILE.stat().st_size} bytes")
    return 1 if failed or missing else 0


if __name__ == "__main__":
    raise SystemExit(main())
