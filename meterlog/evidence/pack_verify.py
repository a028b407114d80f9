"""PackVerify: tells whether a pack is as it was made, and who signed it: a folder, a zip, a PDF."""

from __future__ import annotations

import tempfile
from dataclasses import replace
from pathlib import Path

from meterlog.evidence.pack_check import PackCheck
from meterlog.evidence.pack_files import AttachedFiles, FolderFiles
from meterlog.evidence.pack_verification import PackVerification
from meterlog.evidence.page_list import PAGES
from meterlog.evidence.row_checks import FOLDER
from meterlog.evidence.shown_text import shown
from meterlog.evidence.signed_manifest import SIGNATURE
from meterlog.evidence.signing import own_fingerprint
from meterlog.evidence.verify import verify_folder
from meterlog.evidence.zip_form import zip_out_of_form
from meterlog.evidence.zip_safety import Unpacked, unpack
from meterlog.model.errors import EvidenceError, RecordingError
from meterlog.profile.plain_file import open_plain
from meterlog.recording import layout

_PAGES = (
    "What the pages of a PDF show is not covered by the signature inside it, only the files it "
    "carries are: hold figures that matter against those, or check the whole pack."
)
_PDF = b"%PDF-"
_ENDINGS = (".zip", ".pdf")
_SIGNS = (
    layout.BAGIT,
    layout.BAG_INFO,
    layout.MANIFEST,
    layout.TAG_MANIFEST,
    SIGNATURE,
    FOLDER,
)


def is_pack(path: Path) -> bool:
    """Tell whether ``path`` is a pack, or what is left of one, and no recording.

    Parameters
    ----------
    path : Path
        A file is taken for one by its ending or its beginning.

    Raises
    ------
    EvidenceError
        If a file can't be read.
    """
    if path.is_file():
        head = _beginning(path)
        return path.suffix.lower() in _ENDINGS or head.startswith(b"PK") or _PDF in head
    recorded = any((path / name).is_file() for name in (layout.ABOUT, layout.EVENTS)) or any(
        (path / layout.PAYLOAD).glob("*.arrows")
    )
    return not recorded and any((path / name).exists() for name in _SIGNS)


def verify_pack(path: Path, key: str = "", own: str | None = None) -> PackVerification:
    """Check a pack.

    Parameters
    ----------
    path : Path
        A folder, a zip file, or a PDF that carries the lists and tables of its pack.
    key : str
        Fingerprint, as :func:`~meterlog.evidence.signed_manifest.fingerprint_of` gives it, of the
        key that must have signed; empty if any may.
    own : str or None
        Fingerprint of this user's key, empty for none; None looks it up.

    Returns
    -------
    PackVerification

    Raises
    ------
    EvidenceError
        If there is no such file, it is none of the three, it is unsafe, or it can't be read.

    Source
    ------
    RFC 8493, section 3 (complete and valid), and RFC 8032 for the signature.
    """
    whose = own_fingerprint() if own is None else own
    try:
        if path.is_dir():
            found = _folder("folder", path, key, whose)
        elif _PDF in _beginning(path):
            found = _pdf(path, key, whose)
        else:
            found = _zip(path, key, whose)
    except OSError as error:
        raise _unreadable(path, error) from error
    # Names in it are a stranger's.
    return replace(
        found,
        problems=tuple(map(shown, found.problems)),
        remarks=tuple(map(shown, found.remarks)),
        changed=tuple(replace(one, words=shown(one.words)) for one in found.changed),
    )


def _beginning(path: Path) -> bytes:
    try:
        with open_plain(path) as stream:
            return stream.read(1024)
    except OSError as error:
        raise _unreadable(path, error) from error


def _unreadable(path: Path, error: OSError) -> EvidenceError:
    return EvidenceError(
        f"can't be read: {error.strerror}.",
        subject=str(error.filename or path),
        remedy="Check that the disk is there, has room, and that you may read it.",
    )


def _folder(
    kind: str, folder: Path, key: str, own: str, out: Unpacked | None = None
) -> PackVerification:
    problems, torn = (out.problems, out.torn) if out is not None else ((), frozenset[str]())
    check = PackCheck(kind, FolderFiles(folder), whole=True, torn=torn, problems=list(problems))
    found = check.run(key, own)
    # After the lists: what they show as changed can't be called known.
    more, remarks = _recordings(folder, check)
    return replace(found, problems=(*found.problems, *more), remarks=(*found.remarks, *remarks))


def _recordings(folder: Path, check: PackCheck) -> tuple[list[str], list[str]]:
    """Check the sealed recordings that lie in a pack by their own seals and checksums."""
    problems: list[str] = []
    remarks: list[str] = []
    places = {
        name.removesuffix(layout.ABOUT)
        for name in check.files.names
        if name.endswith(f"/{layout.ABOUT}") and name != layout.ABOUT
    }
    for place in sorted(places):
        touched = any(place in text for text in check.problems)
        try:
            found = verify_folder(folder / place)
        except RecordingError as error:
            problems.append(f"{place}: {error.message}")
            continue
        if touched:
            problems += (f"{place}{text}" for text in found.problems)
        else:
            remarks += (
                f"{place}{text} It was so when the pack was made." for text in found.problems
            )
        remarks += (f"{place}{text}" for text in found.remarks)
    return problems, remarks


def _zip(path: Path, key: str, own: str) -> PackVerification:
    with tempfile.TemporaryDirectory(prefix="meterlog-verify-") as place:
        out = unpack(path, Path(place))
        found = _folder("zip", out.top, key, own, out)
        return _in_form(found, zip_out_of_form(path, out.top)) if found.intact else found


def _in_form(found: PackVerification, told: tuple[str, str]) -> PackVerification:
    """Add what is to be said of the file around a pack that is intact."""
    wrong, known = told
    remarks = (*found.remarks, known) if known else found.remarks
    return replace(found, container=wrong, remarks=remarks)


def _pdf(path: Path, key: str, own: str) -> PackVerification:
    # Opening PDFs costs more than the rest of this module: only who checks one pays for it.
    from meterlog.evidence.pdf_attached import UNREADABLE, attached
    from meterlog.evidence.pdf_form import out_of_form
    from meterlog.evidence.pdf_pages import differing

    files = attached(path)
    check = PackCheck("pdf", AttachedFiles(files), whole=False)
    listed = files.get(PAGES)
    if listed is None:
        check.remarks.append(_PAGES)
    found = check.run(key, own)
    try:
        pages = () if listed is None else differing(path, listed)
        found = replace(found, problems=(*found.problems, *pages))
        return _in_form(found, out_of_form(path)) if found.intact else found
    except UNREADABLE as error:
        return replace(found, problems=(*found.problems, f"The pages can't be read ({error})."))
