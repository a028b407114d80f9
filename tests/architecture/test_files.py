"""One idea a file, a name that says it, and a size that can be read at one sitting."""

import ast
import importlib
import pkgutil
import statistics
import sys
from pathlib import Path

import pytest

import meterlog

HOUSE = Path(__file__).resolve().parents[2]
MODULES = sorted((HOUSE / "meterlog").rglob("*.py"))
TESTS = sorted((HOUSE / "tests").rglob("*.py"))
TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "Makefile",
    "LICENSE",
    "constraints.txt",
    "meterlog",
    "profiles",
    "recordings",
    "tests",
}
MADE_BY_TOOLS = {"build", "dist"}
VAGUE = {"utils", "util", "helpers", "helper", "common", "manager", "base", "core", "misc", "tools"}


def _lines(path):
    return len(path.read_text(encoding="utf-8").splitlines())


@pytest.mark.parametrize("path", MODULES + TESTS, ids=lambda p: str(p.relative_to(HOUSE)))
def test_no_file_is_longer_than_400_lines(path):
    assert _lines(path) <= 400


def test_the_median_module_is_short():
    sizes = [_lines(path) for path in MODULES if path.name != "__init__.py"]
    assert statistics.median(sizes) <= 180


def test_no_file_or_folder_has_a_vague_name():
    stems = {part for path in MODULES for part in (*path.parent.parts, path.stem)}
    assert not stems & VAGUE


def test_the_top_level_holds_what_was_agreed_and_nothing_else():
    seen = {path.name for path in HOUSE.iterdir() if not path.name.startswith(".")}
    assert seen - MADE_BY_TOOLS == TOP_LEVEL


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(HOUSE)))
def test_every_module_says_in_its_first_line_what_it_is(path):
    words = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
    assert words
    assert len(words.splitlines()[0]) >= 15


def _packages():
    found = pkgutil.walk_packages(meterlog.__path__, "meterlog.")
    return [module.name for module in found if module.ispkg and "shipped" not in module.name]


@pytest.mark.parametrize("name", _packages())
def test_every_public_name_of_a_package_is_there(name):
    package = importlib.import_module(name)
    assert hasattr(package, "__all__")
    for public in package.__all__:
        assert getattr(package, public) is not None
    assert list(package.__all__) == sorted(set(package.__all__), key=package.__all__.index)


FOREIGN = (str(HOUSE), sys.prefix)
"""Where this checkout and its Python happen to be."""


@pytest.mark.parametrize(
    "path",
    [
        path
        for path in sorted(HOUSE.rglob("*"))
        if path.suffix in {".py", ".toml", ".md", ".txt", ""}
        and path.is_file()
        and path != Path(__file__).resolve()
        and not any(
            part.startswith(".") and part != ".ci" for part in path.relative_to(HOUSE).parts
        )
        and not path.is_relative_to(HOUSE / "recordings")
    ],
    ids=lambda p: str(p.relative_to(HOUSE)),
)
def test_no_file_names_a_machine_it_was_made_on(path):
    text = path.read_text(encoding="utf-8", errors="replace")
    assert not [word for word in FOREIGN if word in text]
