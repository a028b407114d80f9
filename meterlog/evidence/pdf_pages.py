"""PdfPages: what a PDF shows, as digests, so that a changed page is told.

The files inside a PDF are listed and signed; its pages are what people read. So a pack holds a
tag file ``pdf-pages.txt``, listed in the tag manifest and so covered by the signature::

    meterlog pdf pages 1
    9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08  page 1
    ...
    60303ae22b998861bce3b28f33eec1be758a213c86c93c076dbe9f558c11c752  all else
    fd61a03af4f77d870fc21e05e7e80678095c92d808cfb3b5c279ee04c74aca13  files inside

A digest is the SHA-256 of all that is reached from a page: text and lines, fonts, pictures, notes.
``all else`` is what is reached from the catalogue and the information, without the pages and the
files inside; ``files inside`` is what is said of those: names, kinds, dates, not their content.
Objects are written out by their kind, dictionaries in the order of their keys, each object once and
then by the number in which it was met; so numbers of objects and their places in the file do not
count. Streams count as they are packed.

Another program may read a damaged or doctored file in another way than the library here; so what
stands before the beginning of the PDF or behind its end is told too.

Source
------
PDF 2.0, ISO 32000-2, 7.3 (objects), 7.5 (file structure), 7.7.3.4 (what pages inherit). SHA-256:
FIPS 180-4.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import pikepdf

from meterlog.evidence.attached_names import attached_name
from meterlog.evidence.page_list import PAGES
from meterlog.evidence.pdf_form import save_in_form
from meterlog.profile.plain_file import open_plain

_HEAD = "meterlog pdf pages 1"
_REST, _INSIDE = "all else", "files inside"
_BEGINS = b"%PDF-"
_TAIL = 64
_FILES = "/EmbeddedFiles"
_NEVER = frozenset({"/Length"})
"""Follows from the content of a stream."""
_LEFT_OUT = _NEVER | {"/Filter", "/DecodeParms", "/Size", "/CheckSum", "/Params"}
"""What follows from the content of a file inside, or how that is packed; ``Params`` come apart."""
_SAID = {_REST: "the PDF besides its pages", _INSIDE: "what the PDF says of the files inside"}


def page_digests(path: Path) -> bytes:
    """Give the tag file for a PDF.

    Parameters
    ----------
    path : Path

    Raises
    ------
    pikepdf.PdfError
        Or another of the library's errors, if it can't be read.
    """
    with pikepdf.open(path) as document:
        lines = [f"{digest}  {name}\n" for name, digest in _digests(document).items()]
    return "".join((f"{_HEAD}\n", *lines)).encode()


def differing(path: Path, listed: bytes) -> tuple[str, ...]:
    """Say which pages of a PDF are not as listed.

    Parameters
    ----------
    path : Path
    listed : bytes
        The tag file.

    Returns
    -------
    tuple of str
        A sentence for each.

    Raises
    ------
    pikepdf.PdfError
        Or another of the library's errors, if it can't be read.
    """
    lines = listed.decode("utf-8", "replace").splitlines()
    if not lines or lines[0] != _HEAD:
        return (f"{PAGES}: is not as a pack holds it.",)
    wanted = {name: digest for digest, _, name in (line.partition("  ") for line in lines[1:])}
    with pikepdf.open(path) as document:
        found = _digests(document)
    said = [*_around(path)]
    for name in (*found, *(name for name in wanted if name not in found)):
        if name not in wanted:
            said.append(f"{name}: was added later.")
        elif name not in found:
            said.append(f"{name}: is missing.")
        elif found[name] != wanted[name]:
            said.append(f"{_SAID.get(name, name)}: is not as it was made (SHA-256 in {PAGES}).")
    return tuple(said)


def put_inside(path: Path, contents: Mapping[str, bytes]) -> None:
    """Give files inside a PDF another content; nothing else of it changes.

    Parameters
    ----------
    path : Path
    contents : mapping of str to bytes
        By the name of a file that is inside, there or in the pack.
    """
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        for name, content in contents.items():
            known = name if name in document.attachments else attached_name(name)
            stream = document.attachments[known].get_file().obj
            stream.write(content)
            stream.Params.Size = len(content)
            # What the form asks for here (7.11.4); it protects nothing.
            stream.Params.CheckSum = pikepdf.String(
                hashlib.md5(content, usedforsecurity=False).digest()
            )
        save_in_form(document, path)


def _around(path: Path) -> list[str]:
    with open_plain(path) as stream:
        head = stream.read(len(_BEGINS))
        stream.seek(-min(_TAIL, path.stat().st_size), os.SEEK_END)
        tail = stream.read()
    said = []
    if head != _BEGINS:
        said.append("The PDF does not begin at the beginning of its file.")
    if not tail.rstrip(b"\r\n").endswith(b"%%EOF"):
        said.append("There is something behind the end of the PDF.")
    return said


def _digests(document: pikepdf.Pdf) -> dict[str, str]:
    known: dict[tuple[int, int], str] = {}
    for number, page in enumerate(document.pages, 1):
        known[page.obj.objgen] = f"page {number}"
    for name, spec in document.attachments.items():
        known[spec.obj.objgen] = f"file {name}"
    known.pop((0, 0), None)  # those that are no objects of their own
    found = {}
    for number, page in enumerate(document.pages, 1):
        # Where a page hangs in the tree does not show. What it inherits from there the library has
        # written into it by now.
        held = {key: value for key, value in page.obj.items() if key != "/Parent"}
        found[f"page {number}"] = _digest(held.items(), known)
    root = {key: value for key, value in document.Root.items() if key not in {"/Pages", "/Names"}}
    names: Any = document.Root.get("/Names", pikepdf.Dictionary())
    rest = {**root, **{f"/Names{key}": value for key, value in names.items() if key != _FILES}}
    if "/Info" in document.trailer:
        rest["Info"] = document.trailer["/Info"]
    found[_REST] = _digest(rest.items(), known)
    found[_INSIDE] = _inside(document)
    return found


def _inside(document: pikepdf.Pdf) -> str:
    """Digest what is said of each file inside, in the order of their names."""
    digest = hashlib.sha256()
    for name, spec in sorted(document.attachments.items()):
        said = dict(spec.obj.items())
        held: Any = said.pop("/EF", pikepdf.Dictionary())
        parts = {f"/EF{key}": stream.stream_dict for key, stream in held.items()}
        params = {f"{key}/Params": one.get("/Params") for key, one in parts.items()}
        members: list[tuple[str, Any]] = [("name", pikepdf.String(name)), *said.items()]
        for key, one in (*parts.items(), *params.items()):
            kept = {} if one is None else dict(one.items())
            members += ((f"{key}{inner}", value) for inner, value in kept.items()
                        if inner not in _LEFT_OUT)  # fmt: skip
        digest.update(_digest(members, {}).encode())
    return digest.hexdigest()


def _digest(
    members: Iterable[tuple[str, pikepdf.Object]], known: dict[tuple[int, int], str]
) -> str:
    """Digest what is reached from ``members``; ``known`` objects are named, not entered."""
    digest = hashlib.sha256()
    met: dict[tuple[int, int], int] = {}
    # A stack of its own: a hostile file is nested deeper than Python calls.
    waiting: list[object] = _reversed_members(members)
    while waiting:
        one = waiting.pop()
        if isinstance(one, bytes):
            digest.update(one)
            continue
        if isinstance(one, pikepdf.Object) and one.is_indirect:
            which = one.objgen
            if which in known or which in met:
                said = known.get(which) or f"met {met[which]}"
                digest.update(_told(b"R", said.encode()))
                continue
            met[which] = len(met)
        if isinstance(one, pikepdf.Stream):
            digest.update(_told(b"S", one.read_raw_bytes()))
            waiting += _reversed_members(one.stream_dict.items())
        elif isinstance(one, pikepdf.Dictionary):
            waiting += _reversed_members(one.items())
        elif isinstance(one, pikepdf.Array):
            digest.update(_told(b"A", str(len(one)).encode()))
            waiting += list(one)[::-1]
        else:
            digest.update(_scalar(one))
    return digest.hexdigest()


def _reversed_members(members: Iterable[tuple[str, pikepdf.Object]]) -> list[object]:
    held = sorted(
        ((key, value) for key, value in members if key not in _NEVER), key=lambda one: one[0]
    )
    found: list[object] = [b">"]
    for key, value in reversed(held):
        found += [value, _told(b"K", key.encode("utf-8", "surrogateescape"))]
    return [*found, b"<"]


def _scalar(value: object) -> bytes:
    if isinstance(value, pikepdf.String):
        return _told(b"B", bytes(value))
    return _told(type(value).__name__.encode(), str(value).encode("utf-8", "surrogateescape"))


def _told(kind: bytes, content: bytes) -> bytes:
    """Give bytes that nothing else gives: kind, length, content."""
    return b"%s %d:%s" % (kind, len(content), content)
