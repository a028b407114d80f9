"""The job at hand: every change is on the disk at once, and nothing known is lost."""

import shutil

import pytest

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.window.job_at_hand import JobAtHand
from meterlog.work.job_cards import load_card
from meterlog.work.job_folder import CARD, WORK, Side, change_work, load_work
from meterlog.work.screening.part_numbers import motor_of, part_number


@pytest.fixture
def at_hand(tmp_path):
    return JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")


def test_nothing_is_made_before_something_is_entered(at_hand, tmp_path):
    at_hand.enter("work_order", "")
    assert at_hand.folder is None
    assert not (tmp_path / "shelf").exists()


def test_each_entry_is_on_the_disk_and_the_job_is_found_again(at_hand, tmp_path):
    at_hand.enter("work_order", "WO-1")
    assert load_card(at_hand.folder / CARD).work_order == "WO-1"
    at_hand.fit(Side.NEW)
    assert load_work(at_hand.folder).fitted is Side.NEW
    later = JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")
    later.open(later.last_folder())
    assert (later.card, later.work) == (at_hand.card, at_hand.work)


def test_a_card_whose_file_went_away_is_begun_anew_with_all_that_is_known(at_hand):
    at_hand.enter("work_order", "WO-1")
    at_hand.fit(Side.NEW)
    shutil.rmtree(at_hand.folder)
    at_hand.enter("vehicle", "Nomad (invented)")
    at_hand.take_pack(at_hand.folder / "claim-1")
    kept = load_card(at_hand.folder / CARD)
    assert (kept.work_order, kept.vehicle) == ("WO-1", "Nomad (invented)")
    assert load_work(at_hand.folder).fitted is Side.NEW


def test_a_run_of_a_job_whose_folder_went_away_makes_it_anew_with_its_card(at_hand, tmp_path):
    at_hand.enter("work_order", "WO-1")
    at_hand.enter("vehicle", "Nomad (invented)")
    folder = at_hand.folder
    shutil.move(tmp_path / "shelf", tmp_path / "away")
    at_hand.take_recording(tmp_path / "run")
    assert f"was put into {folder} anew" in at_hand.told
    later = JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")
    later.open(later.last_folder())
    assert (later.card, later.work) == (at_hand.card, at_hand.work)
    assert later.card.vehicle == "Nomad (invented)"
    at_hand.told = ""
    at_hand.fit(Side.NEW)
    assert at_hand.told == ""


def test_what_another_program_changed_is_taken_over(at_hand, tmp_path):
    at_hand.enter("work_order", "WO-1")
    told = []
    at_hand.listeners.append(lambda: told.append(1))
    change_work(at_hand.folder, lambda work: work.taking(tmp_path / "r", Side.OLD))
    at_hand.look_again()
    assert at_hand.work.newest(Side.OLD) == tmp_path / "r"
    at_hand.look_again()
    assert told == [1]
    (at_hand.folder / WORK).unlink()
    at_hand.look_again()
    assert at_hand.work.newest(Side.OLD) == tmp_path / "r"


def test_a_folder_without_a_job_is_refused_and_the_job_at_hand_stays(at_hand, tmp_path):
    at_hand.enter("work_order", "WO-1")
    (tmp_path / "empty").mkdir()
    with pytest.raises(UsageError, match="holds no job") as caught:
        at_hand.open(tmp_path / "empty")
    assert "meterlog" not in str(caught.value)
    assert at_hand.card.work_order == "WO-1"


def test_an_entry_that_cannot_be_kept_is_told(tmp_path):
    (tmp_path / "file").write_text("")
    at_hand = JobAtHand(lambda: tmp_path / "file", tmp_path / "settings")
    with pytest.raises(DiskFailed, match="can't be written"):
        at_hand.enter("work_order", "WO-1")
    assert at_hand.folder is None


@pytest.mark.parametrize(
    ("entered", "words", "number", "motor"),
    [
        ({}, "", "", ""),
        ({"name": "Lüfter"}, "Lüfter", "", ""),
        ({"number": "FM-99"}, "FM-99", "FM-99", ""),
        ({"number": "FM-99", "serial": "700"}, "FM-99, serial 700", "FM-99", "700"),
        (
            {"name": "Cabin fan", "number": "FM-99", "serial": "700"},
            "Cabin fan, part number FM-99, serial 700",
            *("FM-99", "700"),
        ),
    ],
)
def test_a_recording_alone_tells_number_and_serial_of_its_part_apart(
    at_hand, entered, words, number, motor
):
    for key, text in entered.items():
        at_hand.enter(f"old_part.{key}", text)
    said = at_hand.job().part
    assert said == words
    assert part_number(said, None) == number
    assert motor_of(said, "", "", number) == motor
