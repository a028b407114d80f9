"""Edits of valid content: what one case does to a file, by its form.

An edit is three numbers, drawn by hypothesis: which kind, where, and what with. A list of them
shrinks to the few that matter.
"""

from __future__ import annotations

import copy
import io
import json
import tomllib
import warnings
import zipfile
from collections.abc import Callable, Sequence

Edit = tuple[int, int, int]
Form = Callable[[bytes, Sequence[Edit]], bytes]


class Raw(str):
    """Text that goes into a file as it is, and not as a string."""

    __slots__ = ()


def deep(kind: str, count: int = 100_000) -> Raw:
    """Give lists or objects within each other."""
    return Raw("[" * count + "]" * count if kind == "[" else '{"a":' * count + "1" + "}" * count)


NUMBERS = (
    *(0, -1, 1, 0.5, -0.0, 2**31, 2**53, 2**63 - 1, 2**63, -(2**63), 2**64, 10**18, 10**100),
    *(1e-320, 1e308, -1e308, 1e12, 1.1e12),
    *(Raw("1e999999"), Raw("-1e999999"), Raw("NaN"), Raw("Infinity"), Raw("9" * 5000)),
)
TEXTS = (
    *("", " ", "0", "../../../etc/passwd", "/etc/passwd", "C:\\windows", "a\0b", "\n\n", "con"),
    *("\u202egnp.exe", "\ud800", "x" * 70_000, "=1+1", "%s%n{0}", "\x1b[31m", "1e999999", "nan"),
    *("9999-12-31T23:59:59+23:59", "0001-01-01T00:00:00-23:59", "2026-02-30", "１２", "-1"),
    *("motor-current", "../data/about", "data/circuits/../about.json", "speed", "tap", "circuit"),
)
OTHERS = (None, True, False, [], {}, [[]], [None], {"": ""}, deep("["), deep("{"))
NASTY: tuple[object, ...] = (*NUMBERS, *TEXTS, *OTHERS)


def _places(tree: object) -> list[tuple[object, object]]:
    """Give every (container, key) of a tree."""
    found: list[tuple[object, object]] = []
    waiting = [tree]
    while waiting:
        one = waiting.pop()
        keys: Sequence[object] = ()
        if isinstance(one, dict):
            keys = list(one)
        elif isinstance(one, list):
            keys = range(len(one))
        for key in keys:
            found.append((one, key))
            waiting.append(one[key])
    return found


def edit_tree(tree: object, edits: Sequence[Edit]) -> object:
    """Change a tree of dicts and lists: other values, keys gone, named anew, doubled, swapped."""
    for kind, where, what in edits:
        places = _places(tree)
        if not places:
            return copy.deepcopy(NASTY[what % len(NASTY)])
        holder, key = places[where % len(places)]
        step = kind % 7
        if step <= 2:
            holder[key] = copy.deepcopy(NASTY[what % len(NASTY)])
        elif step == 3:
            del holder[key]
        elif step == 4 and isinstance(holder, dict):
            holder[TEXTS[what % len(TEXTS)]] = holder.pop(key)
        elif step == 5 and isinstance(holder, list):
            # Copies of tables share what they hold: many of many would be a tree without end.
            plain = not any(isinstance(one, (dict, list)) for one in holder)
            many = 500 if plain and what % 9 == 0 and len(holder) < 2000 else 1
            holder.extend(list(holder[: 1 + what % 3]) * many)
        else:
            other, name = places[what % len(places)]
            # Never a tree within itself.
            if not isinstance(other[name], (dict, list)):
                holder[key] = other[name]
    return tree


def json_text(tree: object, indent: str = "") -> str:
    """Write a tree as JSON, with :class:`Raw` as it is."""
    if isinstance(tree, Raw):
        return str(tree)
    gap = f"\n{indent}" if indent else " "
    if isinstance(tree, dict):
        inside = f",{gap}".join(f"{json.dumps(str(k))}: {json_text(v)}" for k, v in tree.items())
        return f"{{{inside}}}"
    if isinstance(tree, list):
        return f"[{', '.join(json_text(one) for one in tree)}]"
    return json.dumps(tree)


def toml_text(tree: object) -> str:
    """Write a tree as TOML: tables at the top, inline ones below."""
    if not isinstance(tree, dict):
        return str(tree)
    return "".join(f"{_toml_key(k)} = {_toml(v)}\n" for k, v in tree.items())


def _toml_key(key: object) -> str:
    return json.dumps(str(key), ensure_ascii=True)


def _toml(tree: object) -> str:
    if isinstance(tree, Raw):
        return str(tree).replace("Infinity", "inf").replace("NaN", "nan").replace('{"a":', "{a=")
    if isinstance(tree, dict):
        return "{" + ", ".join(f"{_toml_key(k)} = {_toml(v)}" for k, v in tree.items()) + "}"
    if isinstance(tree, list):
        return "[" + ", ".join(_toml(one) for one in tree) + "]"
    if tree is None:
        return "''"
    return json.dumps(tree)


def edit_bytes(content: bytes, edits: Sequence[Edit]) -> bytes:
    """Flip, cut, double, put in: what a broken disk, a broken copy and a stranger do."""
    data = bytearray(content)
    for kind, where, what in edits:
        place = where % (len(data) + 1)
        step = kind % 8
        if step == 0 and place < len(data):
            data[place] ^= 1 << what % 8
        elif step == 1:
            del data[place : place + 1 + what % 64]
        elif step == 2:
            data[place:place] = what.to_bytes(4, "little")[: 1 + what % 4]
        elif step == 3:
            del data[place:]
        elif step == 4:
            data[place:place] = data[: what % 4096]
        elif step == 5:
            data[place : place + 4] = (b"\xff" * 4, b"\0" * 4, b"\xff\xff\xff\x7f")[what % 3]
        elif step == 6:
            data[place:place] = bytes([what % 256]) * (1 << what % 17)
        else:
            data[place : place + 8] = (1 << what % 64).to_bytes(8, "little")
    return bytes(data)


def as_bytes(content: bytes, edits: Sequence[Edit]) -> bytes:
    """Edit a file whose form does not matter."""
    return edit_bytes(content, edits)


def as_json(content: bytes, edits: Sequence[Edit]) -> bytes:
    """Edit a JSON file: every other time its bytes, else its tree."""
    if not edits or edits[0][0] % 4 == 0:
        return edit_bytes(content, edits)
    tree = edit_tree(json.loads(content), edits)
    return json_text(tree, "  ").encode("utf-8", "surrogatepass")


def as_toml(content: bytes, edits: Sequence[Edit]) -> bytes:
    """Edit a TOML file likewise."""
    if not edits or edits[0][0] % 3 == 0:
        return edit_bytes(content, edits)
    tree = edit_tree(tomllib.loads(content.decode()), edits)
    return toml_text(tree).encode("utf-8", "surrogatepass")


def as_table(content: bytes, edits: Sequence[Edit]) -> bytes:
    """Edit a CSV file: cells, or bytes."""
    if not edits or edits[0][0] % 3 == 0:
        return edit_bytes(content, edits)
    rows = [line.split(",") for line in content.decode("utf-8-sig").splitlines()]
    for kind, where, what in edits:
        row = rows[where % len(rows)]
        value = NASTY[what % (len(NUMBERS) + len(TEXTS))]
        if kind % 5 == 0:
            row.append(str(value))
        elif kind % 5 == 1 and len(row) > 1:
            row.pop()
        elif kind % 5 == 2:
            rows.insert(where % len(rows), list(rows[what % len(rows)]))
        else:
            row[what % len(row)] = str(value)
    text = "\n".join(",".join(row) for row in rows) + "\n"
    return text.encode("utf-8", "surrogatepass")


def as_zip(content: bytes, edits: Sequence[Edit]) -> bytes:
    """Edit a zip: its entries' names, kinds, sizes and content; or its bytes."""
    if not edits or edits[0][0] % 2 == 0:
        return edit_bytes(content, edits)
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        entries = [(one, archive.read(one)) for one in archive.infolist()]
    for kind, where, what in edits:
        at = where % len(entries)
        head, body = entries[at]
        step = kind % 8
        if step == 0:
            head.filename = TEXTS[what % len(TEXTS)].replace("\ud800", "?")[:60_000] or "x"
        elif step == 1:
            head.external_attr = (0o120777, 0o020666, 0o010644, 0o040755)[what % 4] << 16
        elif step == 2:
            entries[at] = (head, edit_bytes(body, [(what, where, what)]))
        elif step == 3:
            entries.append((zipfile.ZipInfo(head.filename.upper()), body))
        elif step == 4:
            head.compress_type = (0, 8, 12, 14)[what % 4]
        elif step == 5:
            entries[at] = (head, bytes(1 << 16) * (1 << what % 11))
        elif step == 6:
            entries.append((zipfile.ZipInfo(head.filename + "/x"), body))
        elif len(entries) > 1:
            del entries[at]
    out = io.BytesIO()
    with warnings.catch_warnings(action="ignore"), zipfile.ZipFile(out, "w") as archive:
        for head, body in entries:  # two of one name are meant
            archive.writestr(head, body)
    made = out.getvalue()
    return edit_bytes(made, edits[:1]) if edits[0][1] % 5 == 0 else made
