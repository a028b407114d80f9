"""A check of a circuit as text, JSON and tables: what a reader who was not there wants to know."""

import math

import pytest

from meterlog.circuit.cautions import CAUTIONS, DEFER
from meterlog.evidence.circuit_csv import DROP_COLUMNS, READING_COLUMNS, circuit_tables
from meterlog.evidence.circuit_json import circuit_to_dict
from meterlog.evidence.circuit_text import circuit_text
from meterlog.evidence.table_column import heads
from meterlog.model import (
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    CircuitVerdict,
    DoubtedReading,
    PossibleResult,
    ProposedTest,
    SectionDrop,
    Sign,
    Suspect,
    SuspectFault,
    Verdict,
)
from meterlog.profile import load_circuit

HIGH = CircuitState("on", 4)
USUAL = "a usual hand meter, as none was stated"


@pytest.fixture(scope="module")
def circuit():
    return load_circuit("low-side-linear-12v")


def _reading(number, point, value, complaint=True, ohm=10e6, source="typed"):
    return CircuitReading(
        number, HIGH, point, value, 0.05, meter_ohm=ohm, complaint=complaint, source=source,
        basis=USUAL, t_utc=f"2026-05-01T10:00:{number:02d}.000+00:00",
    )  # fmt: skip


CHECK = CircuitCheck(
    "invented",
    readings=(
        _reading(2, "across-motor", 12.4),
        _reading(3, "motor-current", 0.0, complaint=None, ohm=math.inf, source="clamp.amps"),
    ),
    signs=(CircuitSign(1, HIGH, Sign.FAN, "dead", "2026-05-01T10:00:01.000+00:00"),),
    no_reach=frozenset({"head"}),
)
MOTOR = Suspect(
    "motor", "fan motor", 0.999, 0.74, (SuspectFault("fan motor: dead spot", "motor", "open", 0.7),)
)
PLUG = Suspect("motor-plug", "motor plug", 0.2, 0.01)


def _verdict(**facts):
    given = {
        "circuit": "invented",
        "suspects": (MOTOR, PLUG),
        "settled": "motor",
        "settled_words": "The motor.",
        "next_test": None,
    }
    return CircuitVerdict(**{**given, **facts})


def _section(text, title):
    parts = dict(part.split("\n", 1) for part in text.rstrip().split("\n\n") if "\n" in part)
    return " ".join(parts[title].split())


def test_what_one_entry_carries_stands_beside_the_odds(circuit):
    said = _section(circuit_text(circuit, CHECK, _verdict()), "Suspects")
    assert "74 % without the entry that speaks most for it" in said
    assert said.count("without the entry") == 1, "of a likely unit only"


def test_a_verdict_has_the_cautions_of_what_confirms_it(circuit):
    said = _section(circuit_text(circuit, CHECK, _verdict()), "Cautions")
    for words in (CAUTIONS["jumper"], CAUTIONS["airbag"], DEFER):
        assert words in said
    assert circuit_to_dict(circuit, CHECK, _verdict())["cautions"][-1] == DEFER


def test_a_proposal_has_a_line_for_each_outcome_and_its_own_cautions(circuit):
    outcomes = tuple(
        PossibleResult(None, None, "", 0.5, (), words)
        for words in ("near 0 V leaves the fuse", "about 12 V leaves the motor")
    )
    test = ProposedTest(
        "battery", None, HIGH, 1.0, 1.0, 12.0, 12.8, outcomes, (DEFER,), "Measure.", "all in one"
    )
    text = circuit_text(circuit, CHECK, _verdict(settled="", next_test=test))
    assert "\n  - near 0 V leaves the fuse\n  - about 12 V leaves the motor\n" in text
    assert "\nCautions\n" not in text
    assert f"CAUTION: {DEFER}" in " ".join(text.split())


def test_that_nothing_is_in_doubt_is_said_as_well(circuit):
    assert "no entry contradicts" in _section(
        circuit_text(circuit, CHECK, _verdict()), "Doubtful readings"
    )
    doubt = DoubtedReading(2, "across-motor", 0.9, 0.0, 0.1, "Reading 2 does not go.")
    told = circuit_text(circuit, CHECK, _verdict(doubted=(doubt,)))
    assert _section(told, "Doubtful readings") == "Reading 2 does not go."
    empty = circuit_text(circuit, CircuitCheck("invented"), _verdict())
    assert "Doubtful" not in empty


def test_what_it_rests_on_is_told_to_who_was_not_there(circuit):
    text = circuit_text(circuit, CHECK, _verdict(), whole=True)
    meters = _section(text, "Meters")
    assert f"Entry 2: typed; U by {USUAL}; 10 MΩ" in meters
    assert f"Entry 3: clamp.amps; U by {USUAL}; clamp" in meters
    assert "about 95 %" in meters
    assert "Entry 2: the complaint was there." in meters
    assert "Entry 3: not said whether the complaint was there." in meters
    assert "from 2026-05-01T10:00:01.000+00:00 to 2026-05-01T10:00:03.000+00:00" in meters
    left = _section(text, "Not measured")
    assert "battery positive post" in left
    assert "across the motor's own terminals" not in left
    shut = left.partition("Could not be reached: ")[2]
    assert shut == "control head, command output; control head, feedback input."
    odds = _section(text, "Where the odds come from")
    assert "Invented vehicle" in odds
    assert "fan motor: dead spot: common practice, no source: worn brushes" in odds
    short = circuit_text(circuit, CHECK, _verdict())
    assert "Not measured" not in short
    assert "Where the odds" not in short


def test_the_odds_of_a_pair_of_faults_say_where_they_come_from(circuit):
    pair = circuit.pairs[0]
    fault = SuspectFault(pair.words, " + ".join(name for name, _ in pair.faults), "", 0.5)
    suspects = (Suspect("motor", "fan motor", 0.9, 0.9, (fault,)),)
    text = circuit_text(circuit, CHECK, _verdict(suspects=suspects), whole=True)
    assert f"{pair.words}: {pair.basis}" in _section(text, "Where the odds come from")


def test_the_same_for_programs(circuit):
    told = circuit_to_dict(circuit, CHECK, _verdict())
    assert told["basis"] == circuit.basis
    assert "battery" in told["not_measured"]
    assert "across-motor" not in told["not_measured"]
    assert [one["meter_ohm"] for one in told["readings"]] == [10e6, None]


def test_tables_tell_checks_apart_and_why_a_drop_was_not_judged(circuit):
    drop = SectionDrop(
        "main-fuse", "main fuse", "feed", HIGH, 0.01, 0.02, 0.1, Verdict.CANT_TELL, 1.0, None,
        (2, 3), "main fuse: can't tell, as the fan stands.",
    )  # fmt: skip
    tables = circuit_tables(circuit, CHECK, _verdict(drops=(drop,)), 2)
    assert {row[0] for table in tables.values() for row in table.rows} == {2}
    drops = tables["circuit-drops.csv"]
    assert drops.columns == DROP_COLUMNS
    (row,) = drops.rows
    assert dict(zip(heads(DROP_COLUMNS), row, strict=True))["entries"] == "2 3"
    assert dict(zip(heads(DROP_COLUMNS), row, strict=True))["statement"] == drop.words
    entries = tables["circuit-readings.csv"]
    assert entries.columns == READING_COLUMNS
    rows = [dict(zip(heads(READING_COLUMNS), row, strict=True)) for row in entries.rows]
    assert [row["entry"] for row in rows] == [1, 2, 3]
