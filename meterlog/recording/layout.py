"""Layout: where everything lies in a recording's folder."""

from __future__ import annotations

import re
from pathlib import Path

PAYLOAD = "data"
ABOUT = "data/about.json"
EVENTS = "data/events.jsonl"
ORIGINAL = "data/original"
CIRCUITS = "data/circuits"
EDITS = "data/edits.txt"
"""Edits in what an imported recording was made of, in words, one a line."""
PART = "data/part.txt"
"""What was said of an imported recording that is not the whole of what was recorded."""
CONTINUES = "data/continues.json"
"""Which recording this one goes on with, where the disk of that one failed."""
LOCK = "writing.lock"
"""Held by the program that is recording; gone once it has closed the recording."""

CACHE = "cache"
"""What is made anew from the readings when it is missing; no part of the bag."""

BAGIT = "bagit.txt"
BAG_INFO = "bag-info.txt"
MANIFEST = "manifest-sha256.txt"
TAG_MANIFEST = "tagmanifest-sha256.txt"

_KEY = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,99}")


def arrows(key: str) -> str:
    """Give the name, within the folder, of the readings of instrument ``key``."""
    return f"{PAYLOAD}/{key}.arrows"


def raw(key: str) -> str:
    """Give the name, within the folder, of the bytes as instrument ``key`` sent them."""
    return f"{PAYLOAD}/{key}.raw"


def is_file_key(key: str) -> bool:
    """Tell whether an instrument's key is fit for a file name on every system."""
    return _KEY.fullmatch(key) is not None and not key.endswith(".")


def holds_recording(folder: Path) -> bool:
    """Tell whether ``folder`` is a recording, sealed or not."""
    return (folder / ABOUT).is_file()


def has_held_recording(folder: Path) -> bool:
    """Tell whether ``folder`` is a recording or what is left of one."""
    signs = (ABOUT, EVENTS, BAGIT, BAG_INFO, MANIFEST)
    return any((folder / name).is_file() for name in signs) or any(
        (folder / PAYLOAD).glob("*.arrows")
    )


def is_sealed(folder: Path) -> bool:
    """Tell whether ``folder`` has been sealed; ``bagit.txt`` is the last file a seal writes."""
    return (folder / BAGIT).is_file()
