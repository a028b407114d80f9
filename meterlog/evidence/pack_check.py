"""PackCheck: the lists of a pack against its files, its rows and its signature."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from meterlog.evidence.pack_bag import SIGNED_BY
from meterlog.evidence.pack_files import PackFiles, content_of
from meterlog.evidence.pack_verification import (
    ChangedFile,
    PackVerification,
    Signature,
    SignatureState,
)
from meterlog.evidence.page_list import PAGES
from meterlog.evidence.row_checks import FOLDER, RowChecks, checks_name
from meterlog.evidence.signed_manifest import SIGNATURE, SignedManifest
from meterlog.recording import layout
from meterlog.recording.bag import DECLARATION, oxum, read_info, read_manifest

_DATA = f"{layout.PAYLOAD}/"
_NAMED = 3
_ALWAYS = (layout.BAGIT, layout.BAG_INFO, layout.MANIFEST)


@dataclass(slots=True)
class PackCheck:
    """Checks one pack.

    Parameters
    ----------
    kind : str
        ``folder``, ``zip`` or ``pdf``.
    files : PackFiles
    whole : bool
        True if every listed file must be there; False for what a PDF carries.
    torn : frozenset of str
        Files of which only a part could be unpacked, as the problems say already: what is missing
        of them was taken out by nobody.

    Attributes
    ----------
    changed : dict of str to ChangedFile
        By name.
    """

    kind: str
    files: PackFiles
    whole: bool
    torn: frozenset[str] = frozenset()
    problems: list[str] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    changed: dict[str, ChangedFile] = field(default_factory=dict)
    _compared: int = 0
    _lines_damaged: bool = False
    _absent: list[str] = field(default_factory=list)

    def run(self, key: str, own: str) -> PackVerification:
        """Check everything.

        Parameters
        ----------
        key : str
            Fingerprint of the key that must have signed; empty if any may.
        own : str
            Fingerprint of this user's own key; empty if there is none.

        Returns
        -------
        PackVerification

        Raises
        ------
        OSError
            If a file can't be read.
        """
        self.problems += (f"{name}: is no plain file; it was not read." for name in self.files.odd)
        tags = self._manifest(layout.TAG_MANIFEST)
        self._declaration()
        for name in _ALWAYS:
            if name not in tags:
                self.problems.append(f"{layout.TAG_MANIFEST}: does not list {name}.")
        listed = self._manifest(layout.MANIFEST)
        self._wrong_place(tags, listed)
        known = {*tags, *listed, layout.TAG_MANIFEST, SIGNATURE}
        self._unlisted(sorted(self.files.names - known))
        info = self._info()
        if self.whole and not self.torn:
            self._size(info)
        elif self._absent:
            self.remarks.append(_not_attached(self._absent))
        signature = self._signature(info, key, own)
        return PackVerification(
            self.kind,
            tuple(self.problems),
            tuple(self.remarks),
            tuple(self.changed.values()),
            signature,
            self._compared,
            pack=self.files.digest(layout.MANIFEST) if layout.MANIFEST in self.files.names else "",
        )

    def _unlisted(self, names: Sequence[str]) -> None:
        """Say which files no list names; that they were added only where every list is there."""
        lists = [
            one for one in (layout.TAG_MANIFEST, layout.MANIFEST) if one not in self.files.names
        ]
        if lists and names:
            first = ", ".join(names[:_NAMED])
            more = f" and {len(names) - _NAMED} more" if len(names) > _NAMED else ""
            self.problems.append(
                f"Without {' and '.join(lists)} it can't be told whether these are as they were"
                f" packed, or were added: {first}{more}."
            )
            return
        for name in names:
            self.problems.append(
                f"{name}: is in no line of the lists that can be read."
                if self._lines_damaged
                else f"{name}: is listed nowhere; it was added later."
            )

    def _declaration(self) -> None:
        there = layout.BAGIT in self.files.names
        if there and content_of(self.files, layout.BAGIT, 1000) != DECLARATION:
            self.problems.append(f"{layout.BAGIT}: is not as a pack holds it.")

    def _wrong_place(self, tags: dict[str, str], listed: dict[str, str]) -> None:
        for name in listed:
            if not name.startswith(_DATA):
                self.problems.append(f"{layout.MANIFEST}: lists {name}, which is not in {_DATA}.")
        for name in tags:
            if name.startswith(_DATA) or name in {layout.TAG_MANIFEST, SIGNATURE}:
                self.problems.append(f"{layout.TAG_MANIFEST}: lists {name}, which it can't.")

    def _manifest(self, manifest: str) -> dict[str, str]:
        if manifest not in self.files.names:
            self.problems.append(f"{manifest}: is missing.")
            return {}
        digests, damaged = read_manifest(content_of(self.files, manifest))
        self._lines_damaged |= bool(damaged)
        self.problems += (f"{manifest}: line {number} is damaged." for number in damaged)
        for name, digest in digests.items():
            self._compare(name, digest, manifest)
        return digests

    def _compare(self, name: str, digest: str, manifest: str) -> None:
        if name not in self.files.names:
            # These must be in a PDF, else nothing ties its tables and pages to the signature.
            if self.whole or name in {layout.MANIFEST, PAGES}:
                self.problems.append(f"{name}: is missing; {manifest} lists it.")
            else:
                self._absent.append(name)
            return
        self._compared += 1
        if name in self.torn or self.files.digest(name) == digest:
            return
        rows, words = self._rows(name)
        text = f"{name}: differs from what was packed (SHA-256 in {manifest})"
        told = f"{text}: {words}." if words else f"{text}."
        self.problems.append(told)
        self.changed[name] = ChangedFile(name, rows, told)

    def _rows(self, name: str) -> tuple[tuple[tuple[int, int], ...], str]:
        checks = checks_name(name)
        if not name.startswith(_DATA) or checks not in self.files.names or checks in self.changed:
            return (), ""
        try:
            found = RowChecks.parse(content_of(self.files, checks))
        except ValueError:
            return (), ""
        if found.file != name:
            return (), ""
        with self.files.open(name) as stream:
            differing = found.compare(stream)
        return differing.rows, differing.words

    def _info(self) -> dict[str, str]:
        if layout.BAG_INFO not in self.files.names:
            return {}
        return read_info(content_of(self.files, layout.BAG_INFO))

    def _size(self, info: dict[str, str]) -> None:
        inside = [name for name in self.files.names if name.startswith(_DATA)]
        there = oxum(sum(self.files.size(name) for name in inside), len(inside))
        stated = info.get("Payload-Oxum", "")
        if stated != there:
            self.problems.append(
                f"{layout.BAG_INFO}: states {stated or 'no size'} (bytes.files) for the payload, "
                f"but there are {there}."
            )

    def _signature(self, info: dict[str, str], key: str, own: str) -> Signature:
        claimed = info.get(SIGNED_BY, "")
        if SIGNATURE not in self.files.names:
            return self._without(claimed, key)
        try:
            found = SignedManifest.parse(content_of(self.files, SIGNATURE))
        except ValueError as error:
            self.problems.append(f"{SIGNATURE}: {error}.")
            return Signature(SignatureState.BAD, told=False if key else None)
        whose = found.fingerprint
        told = whose == key if key else None
        there = layout.TAG_MANIFEST in self.files.names
        content = content_of(self.files, layout.TAG_MANIFEST) if there else b""
        if found.signed != layout.TAG_MANIFEST or not found.fits(content):
            self.problems.append(f"{SIGNATURE}: does not fit {layout.TAG_MANIFEST}.")
            return Signature(SignatureState.BAD, whose, whose == own, told)
        if told is False:
            self.problems.append(f"{SIGNATURE}: was made by the key {whose}, not by {key}.")
        if claimed != whose and layout.BAG_INFO in self.files.names:
            self.problems.append(
                f"{layout.BAG_INFO}: names {claimed or 'no key'}, but {whose} signed."
            )
        return Signature(SignatureState.GOOD, whose, whose == own, told)

    def _without(self, claimed: str, key: str) -> Signature:
        told = False if key else None
        if claimed:
            self.problems.append(
                f"{SIGNATURE}: is missing; {layout.BAG_INFO} says that {claimed} signed."
            )
            return Signature(SignatureState.MISSING, told=told)
        if key:
            self.problems.append(f"{SIGNATURE}: is missing; nobody signed, {key} did not either.")
        return Signature(SignatureState.UNSIGNED, told=told)


def _not_attached(names: list[str]) -> str:
    """Say which listed files a PDF does not carry; tables by name, as they are what it should."""
    tables = [name for name in names if name.endswith(".csv")]
    others = sum(not name.startswith(FOLDER) for name in names) - len(tables)
    parts = [", ".join(tables)] if tables else []
    if others:
        parts.append(f"{others} other files" if tables else f"{others} files")
    listed = " and ".join(parts) or "digests of rows"
    return f"Listed and not attached, so not checked here: {listed}. Check the whole pack for them."
