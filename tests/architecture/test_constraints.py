"""What is installed is pinned and hashed, and names no address."""

import re
import tomllib
from pathlib import Path

import pytest

from meterlog.instruments.extras import HID, VISA

HOUSE = Path(__file__).resolve().parents[2]
TEXT = (HOUSE / "constraints.txt").read_text(encoding="utf-8")
PROJECT = tomllib.loads((HOUSE / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def _name(requirement):
    return re.split(r"[<>=!~;\[ ]", requirement)[0].lower().replace("_", "-").replace(".", "-")


PINNED = {_name(line) for line in TEXT.splitlines() if re.match(r"^[A-Za-z]", line)}
WANTED = [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["dev"]]


@pytest.mark.parametrize("requirement", WANTED, ids=_name)
def test_every_dependency_is_pinned(requirement):
    assert _name(requirement) in PINNED


def test_every_pin_is_exact_and_hashed():
    blocks = re.split(r"\n(?=[A-Za-z])", TEXT.strip())
    for block in blocks:
        assert re.match(r"^[A-Za-z0-9._-]+==\S+", block), block.splitlines()[0]
        assert "--hash=sha256:" in block, block.splitlines()[0]


def test_no_address_or_local_path_stands_in_the_file():
    assert "://" not in TEXT
    assert not re.search(r"(^|\s)(/|\./|file:/|-i |--index|--find)", TEXT)


@pytest.mark.parametrize(("extra", "packages"), [("hid", HID), ("usbtmc", VISA)])
def test_the_install_line_that_is_told_names_the_packages_of_the_extra(extra, packages):
    assert {_name(line) for line in PROJECT["optional-dependencies"][extra]} == set(packages)
