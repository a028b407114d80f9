"""What is stated of meters once, and in which later recordings it holds."""

from dataclasses import replace

import pytest

from meterlog.model import Channel, Identity, Instrument, Limits, Quantity
from meterlog.model.errors import UsageError
from meterlog.recording import Recording
from meterlog.work import Run, Wiring, choose_meters
from meterlog.work.kept_meters import KeptMeters, StatedMeter
from meterlog.work.skews import KeptSkews

FEED = Channel("feed", Quantity.VOLTAGE)
DUE = StatedMeter(calibration_due="2027-01-31")


def met(profile, serial="", usb="", model="", **more):
    return Instrument(
        profile, profile, "-", (FEED,), Identity(model=model, serial=serial), usb_serial=usb, **more
    )


def state(folder, instrument, **said):
    (known,) = KeptMeters(folder).identified([instrument], {instrument.key: StatedMeter(**said)})
    return known.identity


def later(folder, instrument):
    (known,) = KeptMeters(folder).identified([instrument], {})
    assert replace(known, identity=instrument.identity) == instrument
    return known.identity


def test_an_instrument_with_a_serial_number_is_known_again_by_it(tmp_path):
    scope = met("scope", "S1", model="M1")
    assert state(tmp_path, scope, calibration_due="2027-01-31").calibration_due == "2027-01-31"
    assert later(tmp_path, scope) == Identity("", "M1", "S1", "", "2027-01-31")
    assert later(tmp_path, met("scope", "S1", usb="U9", model="M1")).calibration_due == "2027-01-31"
    for other in (met("scope", "S2"), met("other", "S1"), met("scope", "S1", simulated=True)):
        assert later(tmp_path, other) == other.identity


def test_one_behind_a_usb_adapter_is_known_by_the_adapter(tmp_path):
    logger = met("logger", usb="U7")
    said = {"calibration_due": "2027-01-31", "serial": "L5", "model": "M2"}
    assert state(tmp_path, logger, **said) == Identity("", "M2", "L5", "", "2027-01-31")
    assert later(tmp_path, logger) == Identity("", "M2", "L5", "", "2027-01-31")
    assert later(tmp_path, met("logger", usb="U8")) == Identity()
    # on another adapter it is enough to say which one it is
    assert state(tmp_path, met("logger", usb="U8"), serial="L5").calibration_due == "2027-01-31"


def test_another_meter_behind_the_same_adapter_does_not_inherit_the_calibration(tmp_path):
    logger = met("logger", usb="U7")
    state(tmp_path, logger, serial="L5", calibration_due="2027-01-31", model="M2")
    assert state(tmp_path, logger, serial="L6") == Identity(serial="L6")
    assert later(tmp_path, logger) == Identity(serial="L6")
    assert state(tmp_path, logger, serial="L5") == Identity("", "M2", "L5", "", "2027-01-31")
    assert state(tmp_path, logger, serial="") == Identity()
    assert later(tmp_path, logger) == Identity()


def test_one_that_nobody_can_tell_from_another_is_not_known_again(tmp_path):
    bare = met("bare")
    assert state(tmp_path, bare, calibration_due="2027-01-31").calibration_due == "2027-01-31"
    assert later(tmp_path, bare) == Identity()
    assert state(tmp_path, bare, serial="B1", calibration_due="2027-01-31").serial == "B1"
    assert later(tmp_path, bare) == Identity()
    assert state(tmp_path, bare, serial="B1").calibration_due == "2027-01-31"


def test_what_was_stated_can_be_changed_and_taken_back(tmp_path):
    scope = met("scope", "S1")
    state(tmp_path, scope, calibration_due="2026-01-31")
    state(tmp_path, scope, calibration_due="2027-01-31")
    assert later(tmp_path, scope).calibration_due == "2027-01-31"
    state(tmp_path, scope, calibration_due="")
    assert later(tmp_path, scope).calibration_due == ""


@pytest.mark.parametrize(
    ("said", "what"),
    [
        ({"serial": "S2"}, "its serial is 'S1', not 'S2'. Leave --serial out"),
        ({"model": "M2"}, "its model is 'M1', not 'M2'. Leave --model out"),
    ],
)
def test_what_contradicts_the_instrument_is_refused_and_not_kept(tmp_path, said, what):
    scope = met("scope", "S1", model="M1")
    with pytest.raises(UsageError) as refused:
        state(tmp_path, scope, calibration_due="2027-01-31", **said)
    assert what in str(refused.value)
    assert later(tmp_path, scope) == scope.identity
    assert state(tmp_path, scope, serial="S1", model="M1") == scope.identity


@pytest.mark.parametrize("text", ["", "[]", '{"x": 1}', "{", '{"[\\"scope\\"]": []}'])
def test_a_file_that_a_hand_has_spoilt_is_as_none(tmp_path, text):
    (tmp_path / "meters.json").write_text(text)
    assert later(tmp_path, met("scope", "S1")) == Identity(serial="S1")


def test_a_kept_date_that_is_none_is_not_believed(tmp_path):
    state(tmp_path, met("scope", "S1"), calibration_due="2027-01-31")
    file = tmp_path / "meters.json"
    file.write_text(file.read_text().replace("2027-01-31", "soon"))
    assert later(tmp_path, met("scope", "S1")).calibration_due == ""


def test_settings_that_can_not_be_written_are_told_and_stop_nothing(tmp_path):
    (tmp_path / "file").write_text("")
    store = KeptMeters(tmp_path / "file" / "in")
    (known,) = store.identified([met("scope", "S1")], {"scope": DUE})
    assert known.identity.calibration_due == "2027-01-31"
    assert "scope" in store.not_kept[0]


@pytest.fixture
def settings(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))


def typed_run(folder, stated=None):
    choices = choose_meters(Wiring(["typed-volts@typed:"], ["motor-feed=typed-volts.volts"]))
    return Run(choices, Limits(), folder, stated=stated)


def test_a_recording_keeps_what_was_stated(settings, tmp_path):
    said = StatedMeter("M3", "T9", "2027-01-31")
    run = typed_run(tmp_path / "run", {"typed-volts": said})
    run.start()
    run.stop()
    (read,) = Recording.open(tmp_path / "run").about.instruments
    assert read.identity == Identity("", "M3", "T9", "", "2027-01-31")
    again = typed_run(tmp_path / "again", {"typed-volts": StatedMeter(serial="T9")})
    again.start()
    again.stop()
    assert Recording.open(tmp_path / "again").about.instruments[0].identity == read.identity


def test_a_meter_that_is_not_there_is_refused_before_anything_is_opened(settings, tmp_path):
    with pytest.raises(UsageError, match="There are: typed-volts"):
        typed_run(tmp_path / "run", {"typed-amps": DUE})
    assert not (tmp_path / "run").exists()


def test_a_skew_holds_that_was_measured_before_the_serial_number_was_stated(
    settings, tmp_path, monkeypatch
):
    from datetime import UTC, datetime

    from meterlog.work.skews import KeptSkew, MeterKey

    first, second = met("scope", "S1"), met("logger", usb="U7")
    skew = KeptSkew(0.12, 0.01, 6, datetime(2026, 1, 2, tzinfo=UTC))
    KeptSkews().keep(MeterKey.of(first), MeterKey.of(second), skew)
    run = typed_run(tmp_path / "run")
    KeptMeters().identified([second], {"logger": StatedMeter(serial="L5")})
    known = run._known([first, second])
    assert known[1].identity.serial == "L5"
    assert (known[1].skew_s, known[1].skew_u_s) == (0.12, 0.01)
    # measured again, under the stated number, the newer one holds
    KeptSkews().keep(MeterKey.of(known[0]), MeterKey.of(known[1]), replace(skew, later_s=0.2))
    assert run._known([first, second])[1].skew_s == 0.2


def test_what_is_known_of_calibrations_can_be_listed(tmp_path):
    assert KeptMeters(tmp_path).known() == ()
    state(tmp_path, met("scope", "S1", model="M1"), calibration_due="2027-01-31")
    state(tmp_path, met("logger", usb="U7"), calibration_due="2026-01-31")
    state(tmp_path, met("bench", "V1", simulated=True), calibration_due="2027-01-31")
    state(tmp_path, met("other", "S2"), model="M2")
    known = [(one.profile, one.identity) for one in KeptMeters(tmp_path).known()]
    assert known == [
        ("scope", Identity(model="M1", serial="S1", calibration_due="2027-01-31")),
        ("logger", Identity(calibration_due="2026-01-31")),
    ]
