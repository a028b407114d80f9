"""SHA-256 of files against published values.

Source: FIPS 180-4 with the NIST example values ("abc", two-block message, 896-bit message, one
million times "a"); the empty message from the same series.
"""

import hashlib

import pytest

from meterlog.recording.bag import sha256_of

VECTORS = [
    (b"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
    (b"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
    (
        b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ),
    (
        b"abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmn"
        b"hijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu",
        "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1",
    ),
    (b"a" * 1_000_000, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"),
]


@pytest.mark.parametrize(("message", "digest"), VECTORS, ids=lambda value: str(value)[:20])
def test_a_file_has_the_published_digest(tmp_path, message, digest):
    (tmp_path / "f").write_bytes(message)
    assert sha256_of(tmp_path / "f") == digest


def test_a_file_longer_than_one_piece_is_digested_whole(tmp_path):
    content = bytes(range(256)) * 5000
    (tmp_path / "f").write_bytes(content)
    assert sha256_of(tmp_path / "f") == hashlib.sha256(content).hexdigest()
