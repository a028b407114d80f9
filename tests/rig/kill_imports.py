"""An import that is killed: all of the recording is there, or nothing that looks like one."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from meterlog.evidence import verify_folder
from meterlog.recording import Recording, find_unsealed
from meterlog.recording.folder_aside import folder_aside
from meterlog.recording.trace_import import KEY, ImportRequest, import_trace

_ROWS = 60_000


class Importing:
    """A long table from elsewhere becomes a recording."""

    source: Path | None = None

    def prepare(self, place: Path) -> None:
        """Write the table, once for all."""
        if Importing.source is None or not Importing.source.exists():
            Importing.source = place.parents[1] / "trace.csv"
            rows = "".join(f"{k / 100:.2f},12.5,{k % 97 / 10}\n" for k in range(_ROWS))
            Importing.source.write_text(f"t,feed,amps\n{rows}")
        self.shelf = place / "shelf"
        self.shelf.mkdir()
        self.out = self.shelf / "run"

    def act(self, tell: Callable[[int], None]) -> None:
        """Import it."""
        assert Importing.source is not None
        roles = (("motor-feed", "feed"), ("motor-current", "amps"))
        import_trace(ImportRequest(Importing.source, "t", roles, self.out))

    def check(self, told: list[int]) -> list[str]:
        """Find the whole of it, sealed, or nothing; then it can be imported."""
        wrong = [f"offered as cut off: {one.name}" for one in find_unsealed(self.shelf)]
        if not self.out.exists():
            self.act(lambda _: None)
        with folder_aside(self.out):  # as the next import begins
            left = [one.name for one in self.shelf.iterdir() if one != self.out]
        if len(left) != 1:
            wrong.append(f"left behind: {left}")
        if not verify_folder(self.out).intact:
            wrong.append("the seal does not hold")
        rows = Recording.open(self.out).rows(KEY)
        return wrong if rows == _ROWS else [*wrong, f"{rows} rows of {_ROWS}"]
