"""Job cards as files: all or nothing, one program after the other, nothing lost."""

import json
import multiprocessing
import stat
from dataclasses import replace

import pytest

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.model.job_card import JobCard, card_to_dict, with_value
from meterlog.work.file_lock import alone_with
from meterlog.work.job_cards import change_card, load_card

CARD = JobCard(work_order="4711", complaint="dead until hit\nsays Jö", photos=("a.jpg",))


def test_a_card_is_kept_at_once_and_read_back(tmp_path):
    path = tmp_path / "new" / "job.json"
    assert change_card(path, lambda empty: CARD if empty == JobCard() else empty) == CARD
    assert load_card(path) == CARD
    assert [one.name for one in path.parent.iterdir()] == ["job.json"]
    assert change_card(path, lambda card: replace(card, vin="x")).work_order == "4711"
    assert load_card(path) == replace(CARD, vin="x")


def test_what_changes_nothing_writes_nothing(tmp_path):
    path = tmp_path / "job.json"
    change_card(path, lambda _: CARD)
    before = path.stat()
    change_card(path, lambda card: card)
    assert path.stat().st_ino == before.st_ino
    change_card(tmp_path / "empty.json", lambda card: card)
    assert load_card(tmp_path / "empty.json") == JobCard()


def test_the_card_of_a_pack_and_one_by_hand_are_read_too(tmp_path):
    path = tmp_path / "job-card.json"
    path.write_bytes(b"\xef\xbb\xbf" + json.dumps(card_to_dict(CARD)).encode())
    assert load_card(path) == CARD


@pytest.mark.parametrize(
    ("content", "what"),
    [
        (b"", "is no job card: it is not valid JSON"),
        (b"\xff\xfe", "is no job card: it is not valid JSON"),
        (b'{"vin": "1", "vin": "2"}', "'vin' is there twice"),
        (b'{"format": "meterlog job card 9"}', "has not the format"),
        (b'{"format": null}', "has not the format"),
        (b'{"vin": 1}', "vin is 1, not a text."),
        (b"[" * 100_000, "is no job card"),
        (b'{"notes": "' + b"x" * 1_000_000 + b'"}', "larger than 1 MB"),
        (b"[]", "the file is [], not an object."),
    ],
)
def test_what_is_no_card_is_refused_and_never_written_over(tmp_path, content, what):
    path = tmp_path / "job.json"
    path.write_bytes(content)
    for attempt in (load_card, lambda path: change_card(path, lambda _: CARD)):
        with pytest.raises(UsageError) as refused:
            attempt(path)
        assert what in str(refused.value)
        assert str(path) in str(refused.value)
    assert path.read_bytes() == content
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


def test_a_change_that_is_refused_leaves_all_as_it_was(tmp_path):
    path = tmp_path / "job.json"
    change_card(path, lambda _: CARD)
    with pytest.raises(UsageError):
        change_card(path, lambda card: with_value(card, "colour", "red"))
    assert load_card(path) == CARD
    with pytest.raises(UsageError):
        change_card(tmp_path / "b.json", lambda card: with_value(card, "colour", "red"))
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


def test_a_full_disk_is_told_and_the_old_card_stays(tmp_path, monkeypatch):
    path = tmp_path / "job.json"
    change_card(path, lambda _: CARD)

    def full(descriptor):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("meterlog.work.job_cards.sync_descriptor", full)
    with pytest.raises(DiskFailed, match="No space left"):
        change_card(path, lambda card: replace(card, vin="x"))
    assert load_card(path) == CARD
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


def test_places_that_can_hold_no_card_are_told(tmp_path):
    (tmp_path / "file").write_text("")
    (tmp_path / "folder").mkdir()
    with pytest.raises(DiskFailed, match="can't be written"):
        change_card(tmp_path / "file" / "job.json", lambda _: CARD)
    with pytest.raises(DiskFailed, match="can't be read"):
        change_card(tmp_path / "folder", lambda _: CARD)
    with pytest.raises(UsageError, match="no such job card"):
        load_card(tmp_path / "none.json")


def test_a_link_and_the_permissions_stay(tmp_path):
    real = tmp_path / "real.json"
    change_card(real, lambda _: CARD)
    real.chmod(0o640)
    link = tmp_path / "link.json"
    link.symlink_to(real)
    change_card(link, lambda card: replace(card, vin="x"))
    assert link.is_symlink()
    assert load_card(real).vin == "x"
    assert stat.S_IMODE(real.stat().st_mode) == 0o640


def test_what_a_dead_program_left_is_cleared_away(tmp_path):
    path = tmp_path / "job.json"
    (tmp_path / ".job.json.12345678.partial").write_text("half")
    (tmp_path / ".other.json.12345678.partial").write_text("another's")
    (tmp_path / ".job.json.lock").write_text("")
    change_card(path, lambda _: CARD)
    assert sorted(one.name for one in tmp_path.iterdir()) == [
        ".other.json.12345678.partial",
        "job.json",
    ]


def _add(path, letter, count, together):
    together.wait(60)
    for word in (f"{letter}{n}" for n in range(count)):
        change_card(path, lambda card, word=word: replace(card, notes=f"{card.notes} {word}"))


def test_programs_that_change_one_card_at_a_time_lose_nothing_of_each_other(tmp_path):
    path = tmp_path / "job.json"
    starting = multiprocessing.get_context("spawn")
    together = starting.Barrier(3)
    others = [starting.Process(target=_add, args=(path, letter, 40, together)) for letter in "abc"]
    for other in others:
        other.start()
    for other in others:
        other.join(60)
        assert other.exitcode == 0
    notes = load_card(path).notes.split()
    assert sorted(notes) == sorted(f"{letter}{n}" for letter in "abc" for n in range(40))
    for letter in "abc":
        assert [one for one in notes if one[0] == letter] == [f"{letter}{n}" for n in range(40)]
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


def test_a_card_that_another_program_keeps_is_told(tmp_path):
    path = tmp_path / "job.json"
    with (
        alone_with(path),
        pytest.raises(DiskFailed, match="another program"),
        alone_with(path, 0.05),
    ):
        pass
    with alone_with(path, 0.05):
        pass
    assert list(tmp_path.iterdir()) == []
