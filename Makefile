# Two commands do everything on a fresh machine: `make demo` and `make test`.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
INSTALLED := $(VENV)/.installed

.PHONY: demo test check knowledge profiles schemas lock benchmarks paths-check clean

demo: $(INSTALLED)
	$(BIN)/setwright demo demo

# Root on Debian gets the programs of the tests that are missing. The workspace is tested twice:
# on its embedded database, then on a PostgreSQL that is started for it and goes away.
test: check
	scripts/ensure_programs.sh
	$(BIN)/python -m pytest -n auto --dist worksteal
	$(BIN)/python scripts/with_postgresql.py $(BIN)/python -m pytest -n auto --dist worksteal tests/web

check: $(INSTALLED)
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	SETWRIGHT_SECRET=types $(BIN)/mypy
	$(BIN)/lint-imports

knowledge: $(INSTALLED)
	$(BIN)/python scripts/compile_knowledge.py

# The shares of every exercise from the mechanics; about a minute on two cores.
profiles: $(INSTALLED)
	$(BIN)/python scripts/compile_profiles.py

# The path figures against the model files, for those who have them and the opensim wheel:
#   make paths-check MODELS=folder/with/the/model/files OPENSIM_PYTHON=python/that/has/opensim
paths-check:
	PYTHONPATH=src $(OPENSIM_PYTHON) scripts/check_paths_against_opensim.py $(MODELS)/LaiUhlrich2022.osim
	PYTHONPATH=src $(OPENSIM_PYTHON) scripts/check_shoulder_against_opensim.py $(MODELS)/ThoracoscapularShoulderModel.osim

schemas: $(INSTALLED)
	$(BIN)/python scripts/write_schemas.py

benchmarks: $(INSTALLED)
	for script in benchmarks/*.py; do echo "== $$script"; $(BIN)/python $$script; done

lock: $(INSTALLED)
	$(BIN)/python -m pip freeze --exclude-editable > requirements.lock

$(INSTALLED): pyproject.toml requirements.lock
	$(PYTHON) -c 'import sys; sys.exit("Setwright needs Python 3.11 or newer") if sys.version_info < (3, 11) else None'
	$(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --requirement requirements.lock
	$(BIN)/python -m pip install --quiet --no-deps --no-build-isolation --editable .
	touch $@

clean:
	rm -rf $(VENV) build dist .pytest_cache .mypy_cache .ruff_cache .hypothesis .import_linter_cache
