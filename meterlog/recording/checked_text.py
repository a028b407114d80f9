"""CheckedText: a JSON object in a file that carries a CRC-32 of itself as its last member."""

from __future__ import annotations

import re
import zlib

_TAIL = re.compile(rb',(\s*)"crc32": ?"([0-9a-f]{8})"(\s*)\}\s*\Z')


def with_crc(text: str) -> bytes:
    """Give JSON text of an object with a ``crc32`` member added at its end.

    Parameters
    ----------
    text : str
        One JSON object with at least one member, on one line or indented by two.

    Returns
    -------
    bytes
        UTF-8. The checksum covers every byte before the comma that leads to ``crc32``.

    Source
    ------
    CRC-32 as in ISO/IEC/IEEE 8802-3 (Ethernet), RFC 1952 section 8; ``zlib.crc32``.
    """
    # A lone surrogate (a file name of odd bytes in a note) becomes a JSON escape, not an error.
    encoded = text.encode("utf-8", "backslashreplace")
    body = encoded.rstrip()[:-1].rstrip()
    gap = b"\n  " if b"\n" in body else b" "
    end = b"\n}\n" if b"\n" in body else b"}\n"
    return body + b"," + gap + b'"crc32": "%08x"' % zlib.crc32(body) + end


def crc_holds(content: bytes) -> bool:
    """Tell whether ``content`` is as :func:`with_crc` made it; False when the member is absent."""
    tail = _TAIL.search(content)
    return tail is not None and int(tail[2], 16) == zlib.crc32(content[: tail.start()])
