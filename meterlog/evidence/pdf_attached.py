"""PdfAttached: the files that a PDF carries inside, read with care.

Source
------
PDF 2.0, ISO 32000-2, 7.11.4 (embedded file streams) and 7.4.4 (FlateDecode).
"""

from __future__ import annotations

import hashlib
import zlib
from pathlib import Path

import pikepdf

from meterlog.evidence.attached_names import attached_name
from meterlog.evidence.pdf_limits import bound
from meterlog.evidence.signed_manifest import SIGNATURE
from meterlog.model.errors import EvidenceError
from meterlog.recording import layout
from meterlog.recording.bag import read_manifest

UNREADABLE = (
    pikepdf.PdfError,
    pikepdf.ForeignObjectError,
    AttributeError,
    KeyError,
    RuntimeError,
    TypeError,
    ValueError,
)
"""What the library raises for what it can't read, depending on which byte is wrong."""
_NAMES = ("/F", "/UF")
_MOST_FILES = 10_000
_MOST_BYTES = 2 << 30
"""Of all attachments together, unpacked: they are held in memory."""
_TAGS = (layout.BAGIT, layout.BAG_INFO, layout.MANIFEST, layout.TAG_MANIFEST, SIGNATURE)


def attached(path: Path) -> dict[str, bytes]:
    """Give what a PDF carries, by name in the pack.

    Parameters
    ----------
    path : Path

    Returns
    -------
    dict of str to bytes
        An attachment that has no folder in its name gets the name of the listed file that is so
        called inside a PDF (:mod:`~meterlog.evidence.attached_names`); else the one under which
        the manifest lists its content; else that of the one listed file of its name; else it keeps
        its own.

    Raises
    ------
    EvidenceError
        If it is no PDF, is locked, is damaged, carries nothing, more than is sensible, two files
        of one name, or a file in a form that is not read here.
    """
    bound()
    try:
        with pikepdf.open(path) as document:
            found = _contents(document, path)
    except pikepdf.PasswordError as error:
        raise _refused(path, "is locked by a password", "Open it and save it without.") from error
    except UNREADABLE as error:
        raise _refused(
            path, f"can't be read as a PDF: {error}", "It is damaged; ask for it again."
        ) from error
    if not found:
        raise _refused(
            path, "carries no files, so nothing can be checked", "Give the pack's folder or zip."
        )
    return _renamed(found)


def _contents(document: pikepdf.Pdf, path: Path) -> dict[str, bytes]:
    found: dict[str, bytes] = {}
    left = _MOST_BYTES
    if len(document.attachments) > _MOST_FILES:
        raise _refused(path, "is refused: it carries too many files", "Ask its maker for another.")
    for key, spec in document.attachments.items():
        if why := _ambiguous(spec.obj):
            raise _refused(f"{path}: {key}", f"is refused: {why}", "Ask its maker for another.")
        name = spec.filename or key
        if name in found:
            raise _refused(
                path, f"is refused: it carries two files {name!r}", "Ask its maker for another."
            )
        found[name] = _content(spec.get_file().obj, left, f"{path}: {name}")
        left -= len(found[name])
    return found


def _ambiguous(spec: pikepdf.Object) -> str:
    """Say why two programs could take out two different files."""
    if len({str(spec[key]) for key in _NAMES if key in spec}) > 1:
        return "it has two names"
    held = [spec.EF[key] for key in spec.EF.keys()]  # noqa: SIM118  # no mapping of Python's
    if any(one.read_raw_bytes() != held[0].read_raw_bytes() for one in held[1:]):
        return "it has two contents"
    return ""


def _content(stream: pikepdf.Object, most: int, subject: str) -> bytes:
    # The library would unpack all there is: here no more than may be.
    raw = stream.read_raw_bytes()
    kind = stream.get("/Filter")
    if isinstance(kind, pikepdf.Array) and len(kind) == 1:
        kind = kind[0]
    if kind is None or (isinstance(kind, pikepdf.Array) and len(kind) == 0):
        content = raw
    elif kind == pikepdf.Name.FlateDecode and stream.get("/DecodeParms") is None:
        content = _inflated(raw, most, subject)
    else:
        raise _refused(subject, f"is packed in a form not read here ({kind})", "Take the zip.")
    if len(content) > most:
        raise _refused(subject, "is refused: the files inside are too large", "Take the zip.")
    return content


def _inflated(raw: bytes, most: int, subject: str) -> bytes:
    machine = zlib.decompressobj()
    try:
        return machine.decompress(raw, most + 1)
    except zlib.error as error:
        raise _refused(
            subject, f"is damaged in the PDF ({error})", "Ask for it again, or take the zip."
        ) from error


def _refused(subject: object, why: str, remedy: str) -> EvidenceError:
    return EvidenceError(f"{why}.", subject=str(subject), remedy=remedy)


def _renamed(found: dict[str, bytes]) -> dict[str, bytes]:
    listed: dict[str, str] = {}
    for manifest in (layout.TAG_MANIFEST, layout.MANIFEST):
        listed.update(read_manifest(found.get(manifest, b""))[0])
    named: dict[str, bytes] = {}
    inside = {attached_name(one): one for one in listed}
    for name, content in found.items():
        meant = inside.get(name) or _meant(name, content, listed)
        named[meant if meant not in named else name] = content
    return named


def _meant(name: str, content: bytes, listed: dict[str, str]) -> str:
    if name in listed or name in _TAGS:
        return name
    digest = hashlib.sha256(content).hexdigest()
    same = [one for one, other in listed.items() if other == digest]
    alike = [one for one in listed if one.rpartition("/")[2] == name]
    if len(same) == 1:
        return same[0]
    return alike[0] if len(alike) == 1 else name
