import dataclasses

import pytest

from meterlog import __version__
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.scpi_voice import ScpiVoice
from meterlog.instruments.virtual.simulate import plain_meter
from meterlog.profile import ScpiTalk


class Talk:
    """A meter on a fan that is off, 0.2 s a reading, and a clock that is set by hand."""

    def __init__(self, **talk):
        plain = dataclasses.replace(
            plain_meter(0.2, 0.1), name="bench", dialect="scpi", scpi=ScpiTalk(**talk)
        )
        self.play = Play(find_scenario("healthy-new"), 7, scripted=False)
        self.voice = ScpiVoice(self.play, MeterModel(plain, "healthy-new", 7))
        self.now_s = 0.0

    def at(self, now_s):
        self.now_s = now_s
        self.play.advance(self.play.steps_at(now_s))
        return b"".join(self.voice.say(now_s)).decode()

    def ask(self, text):
        self.voice.hear(text.encode() + b"\n", self.now_s)
        return b"".join(self.voice.say(self.now_s)).decode()

    def errors(self):
        found = []
        while not (answer := self.ask("SYST:ERR?")).startswith("0,"):
            found.append(answer.strip())
        return found


@pytest.fixture
def talk():
    return Talk(setup=("CONF:VOLT:DC 20", "HOUSE:SPECIAL 3"))


def test_it_says_who_it_is_in_four_fields(talk):
    assert talk.ask("*idn?") == f"VIRTUAL,bench,7,{__version__}\n"


def test_read_answers_when_the_integration_is_complete(talk):
    talk.at(1.0)
    assert talk.ask("READ?") == ""
    assert talk.voice.due_s() == pytest.approx(1.1)
    assert talk.at(1.0998) == ""
    feed, back, current = (float(field) for field in talk.at(1.1).split(","))
    assert feed == pytest.approx(12.47, abs=0.1)
    assert back == pytest.approx(12.47, abs=0.1)
    assert current == pytest.approx(0.0, abs=0.1)


def test_answers_never_come_faster_than_the_meters_rate(talk):
    talk.at(1.0)
    talk.ask("READ?")
    talk.at(1.1)
    talk.ask("READ?")
    assert talk.voice.due_s() == pytest.approx(1.3)


def test_an_answer_is_written_with_signs_and_exponents(talk):
    talk.ask("READ?")
    fields = talk.at(1.0).strip().split(",")
    assert fields[0].startswith("+1.2")
    assert fields[0].endswith("E+01")


def test_beyond_the_range_it_says_infinity_as_the_standard_has_it(talk):
    talk.ask("CONF:VOLT:DC 1,0.001;:READ?")
    fields = talk.at(1.0).strip().split(",")
    assert fields[:2] == ["+9.900000E+37", "+9.900000E+37"]
    assert float(fields[2]) < 1.0
    talk.ask("VOLT:DC:RANG AUTO;:READ?")
    assert talk.at(2.0).startswith("+1.2")


def test_fetch_without_a_measurement_is_an_error_and_gives_no_answer(talk):
    assert talk.ask("FETC?") == ""
    assert talk.errors() == ['-230,"Data corrupt or stale"']


def test_fetch_waits_for_a_started_measurement_and_then_repeats_it(talk):
    talk.ask("INIT")
    assert talk.ask("FETC?") == ""
    first = talk.at(0.5)
    assert first.count(",") == 2
    assert talk.ask("FETCh?") == first
    talk.at(5.0)
    assert talk.ask("FETCh?") == first


def test_continuous_measurement_gives_each_fetch_a_new_value(talk):
    talk.ask("INIT:CONT ON")
    assert talk.ask("FETC?") == ""
    first = talk.at(0.5)
    assert talk.ask("FETC?") == ""
    assert talk.at(1.0) not in {"", first}


def test_unknown_headers_are_named_in_the_error_queue_and_not_answered(talk):
    assert talk.ask("MAKE:TEA?") == ""
    assert talk.errors() == ['-113,"Undefined header;MAKE:TEA?"']
    assert talk.ask("SYST:ERR?") == '0,"No error"\n'


def test_setup_lines_of_the_profile_and_usual_ones_are_accepted(talk):
    for line in (
        "*CLS",
        "CONF:VOLT:DC 20",
        "HOUSE:SPECIAL 3",
        "SENS:VOLT:DC:NPLC 1",
        "TRIG:SOUR IMM",
    ):
        assert talk.ask(line) == ""
    assert talk.errors() == []


def test_a_range_that_is_no_number_is_refused(talk):
    talk.ask("CONF:VOLT:DC banana")
    assert talk.errors() == ['-104,"Data type error;banana"']


def test_clearing_empties_the_queue_and_the_register(talk):
    talk.ask("NONSENSE")
    assert int(talk.ask("*ESR?")) == 128 + 32
    assert int(talk.ask("*ESR?")) == 0
    assert int(talk.ask("*STB?")) == 4
    talk.ask("*CLS")
    assert talk.errors() == []


def test_a_full_error_queue_says_so_in_its_last_place(talk):
    for count in range(30):
        talk.ask(f"BAD{count}")
    errors = talk.errors()
    assert len(errors) == 20
    assert errors[0] == '-113,"Undefined header;BAD0"'
    assert errors[-1] == '-350,"Queue overflow"'


def test_several_queries_in_one_message_are_answered_in_one_line(talk):
    assert talk.ask("*OPC?;SYST:ERR?;VERS?") == '1;0,"No error";1999.0\n'


def test_what_comes_after_a_reading_waits_for_it(talk):
    talk.ask("READ?")
    assert talk.ask("*OPC?") == ""
    assert talk.at(1.0).splitlines()[1] == "1"


def test_messages_may_come_in_pieces_and_end_in_any_line_end(talk):
    for piece in (b"*O", b"PC?\r", b"\n*OP", b"C?\n"):
        talk.voice.hear(piece, 0.0)
    assert talk.voice.say(0.0) == [b"1\n", b"1\n"]


def test_a_flood_without_line_end_is_an_overrun_not_a_loss_of_memory(talk):
    for _ in range(20):
        talk.voice.hear(b"x" * 1000, 0.0)
    assert talk.errors()[0] == '-363,"Input buffer overrun"'


def test_a_new_client_does_not_get_the_answer_of_the_one_before(talk):
    talk.ask("READ?")
    talk.voice.greet(0.05)
    assert talk.at(1.0) == ""
    assert talk.ask("*OPC?") == "1\n"


def test_a_query_of_the_profiles_own_reads_too():
    own = Talk(query="MEAS:ALL? 1")
    own.ask("meas:all? 1")
    assert own.at(1.0).count(",") == 2
