# make demo     set up, then the whole job on the virtual bench
# make test     set up, then every check and every test
# make bench    set up, then the speed figures
# make help     this list and the rest

PYTHON ?= python3
BIN := .venv/bin
STAMP := .venv/.meterlog-set-up

.DEFAULT_GOAL := help
.PHONY: help setup demo test check collected bench score fuzz survive soak pictures languages wheel constraints clean

help:
	@echo "make setup        set up .venv and the system libraries"
	@echo "make demo         the whole job on the virtual bench, no hardware needed"
	@echo "make test         checks and tests"
	@echo "make check        style, layers, types"
	@echo "make bench        speed figures, each against a reference"
	@echo "make score        detectors and fault isolation against independent generators, about an hour"
	@echo "make fuzz         garbage into decoders, odd files into readers, new cases for every property, two hours"
	@echo "make survive      recordings from meters that drop, stall and vanish; a thousand kills"
	@echo "make soak         a day of two meters in some minutes: nothing lost, no drift, memory"
	@echo "make pictures     the README's pictures of the window, taken anew from the demo"
	@echo "make languages    bring the words of each language up to the source, and compile them"
	@echo "make wheel        build dist/*.whl"
	@echo "make constraints  renew constraints.txt from pyproject.toml"
	@echo "make clean        remove .venv and what was built"

setup: $(STAMP)

$(STAMP): constraints.txt pyproject.toml .ci/setup
	PYTHON="$(PYTHON)" sh .ci/setup

demo: setup
	$(BIN)/python -m meterlog demo

check: setup
	$(BIN)/ruff check meterlog tests
	$(BIN)/ruff format --check --quiet meterlog tests
	$(BIN)/lint-imports
	$(BIN)/mypy

# The order of the files is that of tests/conftest.py: those that wait among those that compute.
# Bytecode is kept (ignored by git): else each worker and each program started compiles all anew.
# It is made beside the checks, once for all workers.
test: setup
	$(MAKE) -j2 check collected
	PYTHONDONTWRITEBYTECODE= $(BIN)/python -m pytest -q -n 4 --dist loadfile --no-loadscope-reorder

collected: setup
	@PYTHONDONTWRITEBYTECODE= $(BIN)/python -m pytest -qq --collect-only > .venv/collected \
		|| { cat .venv/collected; exit 1; }

bench: setup
	$(BIN)/python tests/benchmarks/run.py

score: setup
	$(BIN)/python tests/benchmarks/detection/run.py --runs 1000 --seed 1 --workers 2
	$(BIN)/python tests/benchmarks/bars.py
	$(BIN)/python tests/benchmarks/circuits/run.py --runs 2000 --seed 1 --workers 2

fuzz: setup
	$(BIN)/python tests/fuzz/decoders.py
	$(BIN)/python tests/fuzz/files.py --seconds 120
	METERLOG_NEW_CASES=1 $(BIN)/python -m pytest -q -n 2 --dist loadfile -m hypothesis

survive: setup
	$(BIN)/python tests/rig/survival.py --runs 20
	$(BIN)/python tests/rig/kills.py --kills 1000

soak: setup
	nice $(BIN)/python tests/rig/soak.py

pictures: setup
	$(BIN)/python tests/pictures/take.py

# In English texts are their own words; see DEVELOPERS.md, "Words in another language".
languages: setup
	$(BIN)/python tests/languages/make.py

wheel: setup
	$(BIN)/python -m hatchling build -t wheel

# Needs pip-compile (pip-tools) on the path. The three added names build bagit and meterlog itself.
# No registry address may get into the file.
constraints:
	printf 'editables\nsetuptools\nsetuptools-scm\n' | pip-compile --quiet --upgrade \
		--generate-hashes --allow-unsafe --extra dev --strip-extras \
		--no-emit-index-url --no-emit-trusted-host --no-emit-find-links --no-header --no-annotate \
		--output-file constraints.txt pyproject.toml -

clean:
	rm -rf .venv dist build
