"""Skews kept from one recording to the next."""

import json
from dataclasses import replace
from datetime import UTC, datetime

import pytest

from meterlog.model import Channel, Identity, Instrument, Quantity
from meterlog.model.errors import DiskFailed
from meterlog.work.skews import KeptSkew, KeptSkews, MeterKey

WHEN = datetime(2026, 1, 2, tzinfo=UTC)
FEED = Channel("feed", Quantity.VOLTAGE)


def met(profile, serial="", usb="", **more):
    return Instrument(
        profile, profile, "-", (FEED,), Identity(serial=serial), usb_serial=usb, **more
    )


CLAMP, VOLTS, THIRD = met("clamp", "S1"), met("volts", usb="U7"), met("third")


def kept(folder, *pairs):
    store = KeptSkews(folder)
    for first, second, later_s in pairs:
        skew = KeptSkew(later_s, 0.01, 6, WHEN)
        store.keep(MeterKey.of(first), MeterKey.of(second), skew)
    return KeptSkews(folder)


def test_a_skew_is_found_either_way_round_with_its_sign(tmp_path):
    store = kept(tmp_path / "new", (CLAMP, VOLTS, 0.12))
    keys = MeterKey.of(CLAMP), MeterKey.of(VOLTS)
    assert store.find(*keys) == KeptSkew(0.12, 0.01, 6, WHEN)
    assert store.find(*reversed(keys)).later_s == -0.12
    assert store.find(keys[0], MeterKey.of(THIRD)) is None


def test_a_new_one_takes_the_place_of_the_old_one_whichever_way_round(tmp_path):
    store = kept(tmp_path, (CLAMP, VOLTS, 0.12), (VOLTS, CLAMP, 0.3))
    assert store.find(MeterKey.of(CLAMP), MeterKey.of(VOLTS)).later_s == -0.3
    assert len(json.loads((tmp_path / "skews.json").read_text())) == 1


@pytest.mark.parametrize(
    "other", [met("volts", usb="U8"), met("volts"), met("volts", usb="U7", simulated=True)]
)
def test_another_adapter_or_a_virtual_meter_is_another_meter(tmp_path, other):
    store = kept(tmp_path, (CLAMP, VOLTS, 0.12))
    assert store.find(MeterKey.of(CLAMP), MeterKey.of(other)) is None


def test_the_later_one_is_moved_back(tmp_path):
    store = kept(tmp_path, (CLAMP, VOLTS, 0.12))
    first, second = store.applied([CLAMP, VOLTS])
    assert (first.skew_s, first.skew_u_s) == (0.0, 0.0)
    assert (second.skew_s, second.skew_u_s) == (0.12, 0.01)


def test_nothing_is_ever_moved_behind_its_arrival_the_others_are_moved_back_instead(tmp_path):
    store = kept(tmp_path, (CLAMP, VOLTS, -0.12), (CLAMP, THIRD, 0.05))
    skews = [one.skew_s for one in store.applied([CLAMP, VOLTS, THIRD])]
    assert skews == pytest.approx([0.12, 0.0, 0.17])


def test_without_anything_kept_instruments_stay_as_they_are(tmp_path):
    assert KeptSkews(tmp_path).applied([CLAMP, VOLTS]) == (CLAMP, VOLTS)
    assert KeptSkews(tmp_path).applied([]) == ()


def test_two_that_can_not_be_told_apart_have_no_skew(tmp_path):
    same = met("third")
    store = kept(tmp_path, (THIRD, replace(same, key="third-2"), 0.2))
    assert store.applied([THIRD, replace(same, key="third-2")])[1].skew_s == 0.0


def test_a_forgotten_one_is_gone(tmp_path):
    store = kept(tmp_path, (CLAMP, VOLTS, 0.12))
    keys = MeterKey.of(VOLTS), MeterKey.of(CLAMP)
    assert store.forget(*keys)
    assert store.find(*keys) is None
    assert not store.forget(*keys)


@pytest.mark.parametrize("text", ["", "[]", "{", '{"x": 1}', '{"a": {"later_s": "NaN"}}'])
def test_a_broken_file_is_as_none_and_is_written_anew(tmp_path, text):
    (tmp_path / "skews.json").write_text(text)
    assert KeptSkews(tmp_path).find(MeterKey.of(CLAMP), MeterKey.of(VOLTS)) is None
    store = kept(tmp_path, (CLAMP, VOLTS, 0.12))
    assert store.find(MeterKey.of(CLAMP), MeterKey.of(VOLTS)).later_s == 0.12


def test_a_value_that_is_no_skew_is_none(tmp_path):
    store = kept(tmp_path, (CLAMP, VOLTS, 0.12))
    for key, value in (("later_s", None), ("u_s", 0.0), ("measured_utc", "x"), ("u_s", "nan")):
        entries = json.loads((tmp_path / "skews.json").read_text())
        for entry in entries.values():
            entry[key] = value
        (tmp_path / "skews.json").write_text(json.dumps(entries))
        assert store.find(MeterKey.of(CLAMP), MeterKey.of(VOLTS)) is None


def test_a_folder_that_takes_no_file_is_told(tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(DiskFailed, match=r"skews\.json"):
        kept(tmp_path / "file", (CLAMP, VOLTS, 0.12))
