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


def test_no_file_is_longer_than_400_lines():
    assert not {str(path): _lines(path) for path in MODULES + TESTS if _lines(path) > 400}


def test_the_median_module_is_short():
    sizes = [_lines(path) for path in MODULES if path.name != "__init__.py"]
    assert statistics.median(sizes) <= 180


def test_no_file_or_folder_has_a_vague_name():
    stems = {part for path in MODULES for part in (*path.parent.parts, path.stem)}
    assert not stems & VAGUE


def test_the_top_level_holds_what_was_agreed_and_nothing_else():
    seen = {path.name for path in HOUSE.iterdir() if not path.name.startswith(".")}
    assert seen - MADE_BY_TOOLS == TOP_LEVEL


def _first_line(path):
    # The first line of code alone: parsing all of every module took seconds.
    text = path.read_text(encoding="utf-8")
    end = text.find('"""', 3) + 3 if text.startswith('"""') else 0
    return (ast.get_docstring(ast.parse(text[:end])) or "").partition("\n")[0]


def test_every_module_says_in_its_first_line_what_it_is():
    assert not [str(path) for path in MODULES if len(_first_line(path)) < 15]


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


def _written_by_people():
    for path in sorted(HOUSE.rglob("*")):
        parts = path.relative_to(HOUSE).parts
        hidden = any(part.startswith(".") and part != ".ci" for part in parts)
        named = path.suffix in {".py", ".toml", ".md", ".txt", ".json", ""}
        if not hidden and named and parts[0] != "recordings" and path.is_file():
            yield path


def test_no_file_names_a_machine_it_was_made_on():
    files = [path for path in _written_by_people() if path != Path(__file__).resolve()]
    texts = {path: path.read_text(encoding="utf-8", errors="replace") for path in files}
    assert len(texts) > len(MODULES)
    assert not [str(path) for path in files if any(word in texts[path] for word in FOREIGN)]


def test_no_live_judgement_has_windows_of_numpy():
    """Each has Python keep a name and let it go: after hours a table doubles, see DEVELOPERS.md."""
    once = {"analysis/inferred/standing_out.py", "analysis/ripple/line.py", "recording/read_at.py"}
    house = HOUSE / "meterlog"
    using = {
        path.relative_to(house).as_posix()
        for path in MODULES
        if any(word in path.read_text("utf-8") for word in ("sliding_window_view", "as_strided"))
    }
    assert using == once, "are these called again and again while it records?"


def test_no_filter_sees_all_events_of_the_window_all_the_time():
    """Python is called for every one then: a third of what making a page took."""
    while_a_key_is_asked_for = ["window/keys_page.py"]
    house = HOUSE / "meterlog"
    using = [
        path.relative_to(house).as_posix()
        for path in MODULES
        if "application.installEventFilter" in path.read_text("utf-8")
    ]
    assert using == while_a_key_is_asked_for
