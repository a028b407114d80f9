"""The list of all profiles: by kind, the user's own first."""

from __future__ import annotations

from meterlog.commands.terminal import answer, answer_json
from meterlog.profile import listed

_KINDS = ("meters", "circuits", "limits")


def list_profiles(*, as_json: bool) -> None:
    """Name all profiles that can be had by their name."""
    found = {kind: listed(kind) for kind in _KINDS}
    if as_json:
        answer_json(
            {
                kind: [
                    {"name": one.name, "file": str(one.file), "own": one.own} for one in profiles
                ]
                for kind, profiles in found.items()
            }
        )
        return
    lines: list[str] = []
    for kind, profiles in found.items():
        lines.append(f"{kind}:")
        lines += [f"  {one.name}{'  (your own)' if one.own else ''}" for one in profiles]
    answer("\n".join(lines))
