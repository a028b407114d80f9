"""Signatures against published ones, and digests shortened as this program does.

Source: RFC 8032 (January 2017), section 7.1, TEST 1 and TEST 2 of Ed25519.
"""

import hashlib

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from meterlog.evidence.signed_manifest import SignedManifest, fingerprint_of
from meterlog.evidence.signing import Signer

VECTORS = [
    (
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e3970"
        "1cf9b46bd25bf5f0595bbe24655141438e7a100b",
    ),
    (
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613"
        "d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    ),
]


@pytest.mark.parametrize(("seed", "public", "message", "signature"), VECTORS, ids=["T1", "T2"])
def test_the_published_key_message_and_signature_belong_together(seed, public, message, signature):
    signer = Signer(Ed25519PrivateKey.from_private_bytes(bytes.fromhex(seed)))
    assert signer.public_key.hex() == public
    made = signer.sign(bytes.fromhex(message), "message")
    assert made.signature.hex() == signature
    told = SignedManifest(bytes.fromhex(public), bytes.fromhex(signature), "message")
    assert told.fits(bytes.fromhex(message))
    assert not told.fits(bytes.fromhex(message) + b"\0")
    digits = hashlib.sha256(bytes.fromhex(public)).hexdigest()[:40]
    assert fingerprint_of(bytes.fromhex(public)).replace(" ", "") == digits
