"""Recordings get folders of their own, named so that a person finds them."""

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from meterlog.work import fresh_folder, recordings_folder


def test_a_checkout_keeps_its_recordings_in_itself():
    assert recordings_folder() == Path(__file__).resolve().parents[3] / "recordings"


def test_two_recordings_in_one_second_get_two_folders(tmp_path):
    names = set()
    for _ in range(3):
        folder = fresh_folder("WO 17/4", tmp_path)
        folder.mkdir()
        names.add(folder.name)
    assert len(names) == 3
    assert all("WO-17-4" in name for name in names)


@given(st.text())
def test_any_words_give_one_plain_folder_name(words):
    folder = fresh_folder(words, Path("shelf"))
    assert folder.parent == Path("shelf")
    assert set(folder.name) <= set(
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-"
    )
    assert len(folder.name) < 70
