"""A small pack for the tests of this folder. All of it is invented."""

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from meterlog.evidence.pack_bag import write_bag
from meterlog.evidence.signing import Signer

INFO = {"Bagging-Date": "2026-05-04", "External-Description": "invented claim"}


def table(rows):
    lines = ["elapsed_s,current_a", *(f"{k * 0.1:.1f},{k % 7}.25" for k in range(1, rows))]
    return "".join(f"{line}\r\n" for line in lines).encode()


def fill(folder):
    """Put a payload into ``folder``: two tables, a picture, a text beside it."""
    (folder / "data/before").mkdir(parents=True)
    (folder / "data/before/findings.csv").write_bytes(table(12))
    (folder / "data/before/readings-m.csv").write_bytes(table(1000))
    (folder / "data/photo of the plug.png").write_bytes(b"\x89PNG invented" * 3)
    (folder / "README.txt").write_bytes(b"How to check this pack.\n")
    return folder


class Packer:
    """What the tests make packs with."""

    info = INFO
    fill = staticmethod(fill)
    table = staticmethod(table)

    def __init__(self):
        self.signer = Signer(Ed25519PrivateKey.from_private_bytes(bytes(range(32))))
        self.stranger = Signer(Ed25519PrivateKey.from_private_bytes(bytes(32)))

    def make(self, folder, *, signed=True):
        write_bag(fill(folder), INFO, self.signer if signed else None)
        return folder


@pytest.fixture
def packer():
    return Packer()


@pytest.fixture
def pack(packer, tmp_path):
    return packer.make(tmp_path / "claim")
