"""The key: made once, private, under a passphrase if wanted; the signature's file has one form."""

import base64
import json
import os
import threading

import pytest
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey

from meterlog.evidence.signed_manifest import SignedManifest, fingerprint_of, fingerprint_typed
from meterlog.evidence.signing import KEY, PUBLIC, Signer, key_folder, own_fingerprint
from meterlog.model.errors import EvidenceError

posix = pytest.mark.skipif(os.name != "posix", reason="modes are of POSIX")


@pytest.fixture
def keys(tmp_path):
    return tmp_path / "data" / "keys"


def test_a_key_is_made_at_first_use_and_taken_ever_after(keys):
    assert own_fingerprint(keys) == ""
    first = Signer.load_or_make(folder=keys)
    second = Signer.load_or_make(folder=keys)
    assert first.public_key == second.public_key
    assert own_fingerprint(keys) == first.fingerprint
    assert second.sign(b"abc").fits(b"abc")
    assert sorted(path.name for path in keys.iterdir()) == [KEY, PUBLIC]


@posix
def test_the_key_is_its_owners_alone(keys):
    old = os.umask(0)
    try:
        Signer.load_or_make(folder=keys)
    finally:
        os.umask(old)
    assert (keys / KEY).stat().st_mode & 0o777 == 0o600
    assert keys.stat().st_mode & 0o777 == 0o700


@posix
@pytest.mark.parametrize("mode", [0o640, 0o604, 0o666])
def test_a_key_that_others_can_read_is_refused(keys, mode):
    Signer.load_or_make(folder=keys)
    (keys / KEY).chmod(mode)
    with pytest.raises(EvidenceError, match=r"not yours alone.*chmod 600"):
        Signer.load_or_make(folder=keys)


@posix
def test_a_folder_that_others_can_change_or_a_link_is_refused(keys, tmp_path):
    Signer.load_or_make(folder=keys)
    keys.chmod(0o777)
    with pytest.raises(EvidenceError, match=r"changed by others.*chmod 700"):
        Signer.load_or_make(folder=keys)
    keys.chmod(0o700)
    (keys / KEY).rename(tmp_path / "elsewhere")
    (keys / KEY).symlink_to(tmp_path / "elsewhere")
    with pytest.raises(EvidenceError, match="can't be read or made"):
        Signer.load_or_make(folder=keys)


def test_a_passphrase_keeps_the_key_and_is_asked_for(keys):
    made = Signer.load_or_make("blau märz", keys)
    assert b"ENCRYPTED PRIVATE KEY" in (keys / KEY).read_bytes()
    assert Signer.load_or_make("blau märz", keys).public_key == made.public_key
    assert own_fingerprint(keys) == made.fingerprint
    with pytest.raises(EvidenceError, match="passphrase is wrong"):
        Signer.load_or_make("blau", keys)
    with pytest.raises(EvidenceError, match="Give the passphrase"):
        Signer.load_or_make(folder=keys)


def test_a_passphrase_for_a_key_without_one_is_told(keys):
    Signer.load_or_make(folder=keys)
    with pytest.raises(EvidenceError, match="Leave the passphrase out"):
        Signer.load_or_make("x", keys)


def test_a_damaged_key_or_one_of_another_kind_is_told_and_never_written_over(keys):
    Signer.load_or_make(folder=keys)
    path = keys / KEY
    content = path.read_bytes()[:-60]
    path.write_bytes(content)
    with pytest.raises(EvidenceError, match="file is damaged"):
        Signer.load_or_make(folder=keys)
    assert path.read_bytes() == content
    other = X25519PrivateKey.generate().private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )
    path.write_bytes(other)
    with pytest.raises(EvidenceError, match="another kind of key"):
        Signer.load_or_make(folder=keys)


def test_a_lost_or_other_public_key_is_put_right(keys, tmp_path):
    made = Signer.load_or_make(folder=keys)
    (keys / PUBLIC).unlink()
    Signer.load_or_make(folder=keys)
    assert own_fingerprint(keys) == made.fingerprint
    Signer.load_or_make(folder=tmp_path / "other")
    (keys / PUBLIC).write_bytes((tmp_path / "other" / PUBLIC).read_bytes())
    Signer.load_or_make(folder=keys)
    assert own_fingerprint(keys) == made.fingerprint


def test_programs_that_start_together_make_one_key(keys):
    found = []
    many = [
        threading.Thread(target=lambda: found.append(Signer.load_or_make(folder=keys).public_key))
        for _ in range(8)
    ]
    for one in many:
        one.start()
    for one in many:
        one.join()
    assert len(found) == 8
    assert len(set(found)) == 1


def test_a_folder_that_can_not_be_made_is_told(tmp_path):
    (tmp_path / "file").write_text("x")
    with pytest.raises(EvidenceError, match="can't be read or made"):
        Signer.load_or_make(folder=tmp_path / "file" / "keys")


def test_the_key_lies_in_the_users_data_folder(monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert key_folder().name == "keys"
    assert "meterlog" in key_folder().parts


def test_the_signature_file_has_one_form_to_the_byte(packer):
    made = packer.signer.sign(b"the list", "tagmanifest-sha256.txt")
    content = made.to_bytes()
    values = json.loads(content)
    assert values["algorithm"] == "Ed25519"
    assert base64.b64decode(values["public_key"]) == packer.signer.public_key
    assert values["fingerprint"] == packer.signer.fingerprint
    assert SignedManifest.parse(content) == made
    for place in range(len(content) * 8):
        wrong = bytearray(content)
        wrong[place // 8] ^= 1 << place % 8
        try:
            found = SignedManifest.parse(bytes(wrong))
        except ValueError:
            continue
        assert not found.fits(b"the list") or found.signed != made.signed


@pytest.mark.parametrize("wrong", [b"", b"{}", b"[]", b"\xff", b"[" * 9000, b" " * 20_000])
def test_what_is_no_signature_is_refused(wrong):
    with pytest.raises(ValueError, match=r"damaged|long|written"):
        SignedManifest.parse(wrong)


def test_a_key_of_a_wrong_length_fits_nothing():
    assert not SignedManifest(b"short", b"x" * 64, "f").fits(b"")
    assert not SignedManifest(b"k" * 32, b"short", "f").fits(b"")


def test_fingerprints_can_be_typed_in_many_ways():
    found = fingerprint_of(bytes(32))
    assert len(found.split()) == 10
    for typed in (found, found.upper(), found.replace(" ", ""), found.replace(" ", ":")):
        assert fingerprint_typed(typed) == found
    for wrong in ("", found[:-1], found + "0", found.replace(found[0], "g", 1)):
        with pytest.raises(ValueError, match="no fingerprint"):
            fingerprint_typed(wrong)


def test_a_fault_inside_the_library_is_told_as_a_damaged_key(tmp_path, monkeypatch):
    """Some damaged keys make it fail with an error of its own, met by fuzzing."""
    from cryptography.exceptions import InternalError

    from meterlog.evidence import signing
    from meterlog.model.errors import EvidenceError

    signing.Signer.load_or_make(folder=tmp_path / "keys")

    def fail(*_):
        raise InternalError("Unknown OpenSSL error.", [])

    monkeypatch.setattr(signing.serialization, "load_pem_private_key", fail)
    with pytest.raises(EvidenceError, match="damaged") as caught:
        signing.Signer.load_or_make(folder=tmp_path / "keys")
    assert caught.value.remedy
    monkeypatch.setattr(signing.serialization, "load_pem_public_key", fail)
    assert signing.own_fingerprint(tmp_path / "keys") == ""
