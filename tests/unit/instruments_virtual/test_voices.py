import pytest

from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.voices import VOICES, voice
from meterlog.model.errors import UsageError
from meterlog.profile import load_meter
from meterlog.profile.meter import DIALECTS

EXAMPLES = ("line-logger", "hand-meter", "panel-meter", "bench-scpi", "block-daq")


def voice_of(name):
    profile = load_meter(name)
    play = Play(find_scenario("worn"), 1)
    return voice(play, MeterModel(profile, "worn", 1))


def test_every_dialect_has_its_entry():
    assert set(VOICES) == set(DIALECTS)


def test_every_dialect_but_the_typed_one_speaks():
    spoken = {load_meter(name).dialect for name in EXAMPLES}
    assert spoken == set(DIALECTS) - {"typed"}
    kinds = {type(voice_of(name)) for name in EXAMPLES}
    assert len(kinds) == len(EXAMPLES)


def test_a_typed_meter_has_no_plug():
    with pytest.raises(UsageError, match="typed-volts: is typed by hand: such a meter has no plug"):
        voice_of("typed-volts")
