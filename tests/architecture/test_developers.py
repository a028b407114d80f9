"""The page for contributors names only files that are there."""

import re
from pathlib import Path

HOUSE = Path(__file__).resolve().parents[2]
PAGE = (HOUSE / "DEVELOPERS.md").read_text(encoding="utf-8")


def _named():
    """Give every Python file of the page; a bare name may stand beside one with its folder."""
    for line in PAGE.splitlines():
        folders = [""]
        for name in re.findall(r"`([a-z_/]+\.py)`", line):
            if "/" in name:
                folders.append(name.rpartition("/")[0] + "/")
            yield name, [folder + name for folder in folders] if "/" not in name else [name]


def test_every_file_that_is_named_is_there():
    files = [f"/{path.relative_to(HOUSE)}" for path in HOUSE.rglob("*.py")]
    named = list(_named())
    assert len(named) > 60
    gone = [
        name
        for name, places in named
        if not any(file.endswith(f"/{place}") for place in places for file in files)
    ]
    assert not gone
