"""Edits of what carries checksums of its own, which are made to fit again."""

from __future__ import annotations

import io
import json
import tempfile
from collections.abc import Sequence
from pathlib import Path

import edits
import numpy as np
import pikepdf
from edits import Edit, Form

from meterlog.recording import layout
from meterlog.recording.checked_text import with_crc
from meterlog.recording.event_chain import EventChain


def as_about(content: bytes, given: Sequence[Edit]) -> bytes:
    """Edit what about.json says and seal it anew, so that its checksum stops nobody."""
    if given and given[0][0] % 5 == 0:
        return edits.edit_bytes(content, given)
    tree = json.loads(content)
    tree.pop("crc32")
    text = edits.json_text(edits.edit_tree(tree, given), "  ")
    try:
        return with_crc(text)
    except (IndexError, UnicodeError):
        return text.encode("utf-8", "surrogatepass")


def as_lines(place: Path) -> Form:
    """Edit JSON lines and chain them anew."""

    def form(content: bytes, given: Sequence[Edit]) -> bytes:
        if given and given[0][0] % 5 == 0:
            return edits.edit_bytes(content, given)
        chain = EventChain((place / layout.ABOUT).read_bytes())
        trees = [json.loads(line) for line in content.splitlines()]
        for one in trees:
            one.pop("chain", None)
            one.pop("crc32", None)
        changed = edits.edit_tree(trees, given)
        if not isinstance(changed, list):
            changed = [changed]
        out = []
        for one in changed:
            text = edits.json_text(one).encode("utf-8", "surrogatepass").decode("utf-8", "replace")
            out.append(chain.object_line(text if text.endswith("}") else f'{{"a": {text}}}'))
        return b"".join(out)

    return form


EXTREMES = (*(0.0, -0.0, 1e-320, 1e308, -1e308, 1e12, 12.5, np.nan, np.inf, -np.inf),)
TIMES = (0, 1, -1, 2**62, 2**63 - 1, -(2**63), 10**9, 3_600 * 10**9)


def as_readings(place: Path) -> Form:
    """Write readings anew, with their checksums: nothing but the numbers is odd."""
    from meterlog.model import Block
    from meterlog.recording import Recorder, Recording

    def form(content: bytes, given: Sequence[Edit]) -> bytes:
        if given and given[0][0] % 2 == 0:
            return edits.edit_bytes(content, given)
        recording = Recording.open(place)
        one = recording.about.instruments[0]
        block = next(iter(recording.blocks(one.key)), None)
        if block is None:
            return content
        t_ns, values, flags = block.t_ns.copy(), block.values.copy(), block.flags.copy()
        for kind, where, what in given:
            row, column = where % len(t_ns), where % values.shape[1]
            if kind % 4 == 1:
                t_ns[row : row + 1 + what % 50] = TIMES[what % len(TIMES)]
            elif kind % 4 == 2:
                flags[row : row + 1 + what % 50, column] = what % 256
            else:
                values[row : row + 1 + what % 50, column] = EXTREMES[what % len(EXTREMES)]
        with tempfile.TemporaryDirectory(prefix="meterlog-fuzz-") as made:
            recorder = Recorder.create(Path(made) / "a", recording.about)
            recorder.take(Block(one.key, t_ns, values, flags))
            recorder.close()
            path = Path(made) / "a" / layout.arrows(one.key)
            return path.read_bytes()

    return form


def as_pdf(content: bytes, given: Sequence[Edit]) -> bytes:
    """Edit a PDF's objects, or its bytes."""
    if not given or given[0][0] % 2 == 0:
        return edits.edit_bytes(content, given)
    with pikepdf.open(io.BytesIO(content)) as document:
        objects = document.objects
        odd = (
            *(pikepdf.Array([]), pikepdf.Dictionary(), pikepdf.Name("/X"), pikepdf.String("../x")),
            *(0, -1, 2**31 - 1, True, None, document.Root, document.trailer["/Root"]),
        )
        for kind, where, what in given:
            one = objects[where % len(objects)]
            value = odd[what % len(odd)]
            try:
                if isinstance(one, pikepdf.Stream) and kind % 3 == 0:
                    one.write(edits.edit_bytes(one.read_raw_bytes(), [(what, where, what)]))
                    continue
                if isinstance(one, pikepdf.Array) and len(one):
                    one[what % len(one)] = value
                elif isinstance(one, (pikepdf.Dictionary, pikepdf.Stream)):
                    keys = list(one.keys())
                    key = keys[what % len(keys)] if keys else "/X"
                    if kind % 3 == 1:
                        del one[key]
                    else:
                        one[key] = value
            except (TypeError, ValueError, KeyError, RuntimeError, pikepdf.PdfError):
                continue
        out = io.BytesIO()
        try:
            document.save(out)
        except (TypeError, ValueError, RuntimeError, pikepdf.PdfError):
            return edits.edit_bytes(content, given)
    return out.getvalue()
