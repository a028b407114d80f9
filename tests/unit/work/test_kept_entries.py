"""What is kept between recordings is written all or nothing, and never grows without end."""

import pytest

from meterlog.work.kept_entries import KeptEntries


def test_entries_come_back_in_their_order(tmp_path):
    KeptEntries("a.json", tmp_path / "new").write({"z": 1, "ä": {"b": None}})
    assert list(KeptEntries("a.json", tmp_path / "new").read().items()) == [
        ("z", 1),
        ("ä", {"b": None}),
    ]


def test_of_many_the_oldest_go_first(tmp_path):
    kept = KeptEntries("a.json", tmp_path)
    kept.write({str(number): number for number in range(205)})
    assert list(kept.read()) == [str(number) for number in range(5, 205)]


def test_a_write_that_fails_leaves_what_was_there_and_nothing_beside_it(tmp_path, monkeypatch):
    kept = KeptEntries("a.json", tmp_path)
    kept.write({"a": 1})

    def full(descriptor):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(OSError, match="No space"):
        kept.write({"a": 2})
    assert kept.read() == {"a": 1}
    assert [path.name for path in tmp_path.iterdir()] == ["a.json"]


def test_what_json_can_not_hold_is_refused_and_nothing_is_written(tmp_path):
    with pytest.raises(ValueError, match="JSON"):
        KeptEntries("a.json", tmp_path).write({"a": float("nan")})
    assert not list(tmp_path.iterdir())
