"""An index that is damaged and can't be thrown away is kept elsewhere; nothing waits for ever."""

import random
import threading

import pytest

from meterlog.work.library import Library, Wanted


@pytest.mark.parametrize("ending", ["-shm", "-wal"])
def test_where_it_can_not_be_thrown_away_it_is_kept_elsewhere(tmp_path, shelf, recording, ending):
    recording("a")
    index = tmp_path / "cache" / "index.sqlite3"
    index.parent.mkdir()
    index.write_bytes(random.Random(3).randbytes(8192))
    # No right stands against taking this away, so that the test holds for root, too.
    in_the_way = index.with_name(index.name + ending)
    in_the_way.mkdir()
    found = []

    def look():
        with Library(index) as library:
            known = library.refresh([shelf], lambda part: None).known
            hits = library.search([shelf], Wanted())
            found.append((known, len(hits), library.told, library.path))

    looking = threading.Thread(target=look, daemon=True)
    looking.start()
    looking.join(30.0)
    assert found, "it waits for itself"
    ((known, hits, told, path),) = found
    assert (known, hits) == (1, 1)
    assert f"can't be kept in {index}" in told
    assert path != index
    assert in_the_way.is_dir()
