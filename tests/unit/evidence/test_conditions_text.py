"""All conditions are told, with units, in the words in which they are entered."""

from dataclasses import fields, replace

from meterlog.evidence.conditions_text import (
    condition_label,
    conditions_words,
    stated_conditions,
)
from meterlog.evidence.readme_text import readme_text
from meterlog.model import Conditions, Job
from meterlog.model.condition_fields import CONDITION_FIELDS

ALL = Conditions(
    "off", "used", "face", "fresh", "closed", "vehicle", "open", "manual", 21.0, 5.0, 12.6
)
WORDS = (
    "engine: off; control of the fan: manual; air goes to: face; air comes from: fresh;"
    " cabin filter: used; windows: open; fan housing: closed; motor is in: vehicle;"
    " battery, fan off: 12.6 V; ambient: 21 °C; fan ran before: 5 min"
)


def test_each_is_told_with_its_unit():
    assert {field.name for field in CONDITION_FIELDS} == {one.name for one in fields(Conditions)}
    assert conditions_words(ALL) == WORDS
    assert conditions_words(Conditions()) == ""
    assert conditions_words(Conditions(ambient_c=0.0)) == "ambient: 0 °C"


def test_what_was_written_besides_is_told_too():
    job = Job(conditions="windscreen wet", measured_under=Conditions(engine="off"))
    assert stated_conditions(job) == "engine: off; windscreen wet"
    assert stated_conditions(Job(conditions="wet")) == "wet"


def test_a_comparison_calls_them_as_the_window_does():
    assert condition_label("ambient") == "ambient"
    assert condition_label("running") == "fan ran before"
    assert condition_label("place") == "motor is in"
    assert condition_label("something else") == "something else"


def test_readme_says_the_same(recording, desk):
    about = recording.about
    recording.about = replace(about, job=Job(measured_under=ALL))
    text = readme_text(recording, desk.review())
    assert "\nConditions   engine: off; " in text
    assert WORDS in " ".join(text.split())
    assert max(map(len, text.splitlines())) <= 100
    assert "running min" not in text
