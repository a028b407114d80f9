"""``meterlog circuit``: readings in, suspects and next test out."""

import json
import math

import pytest

from meterlog.cli import main
from meterlog.model import CircuitState
from meterlog.profile import load_circuit
from meterlog.recording import Recording
from meterlog.work.circuit_log import CircuitLog

CIRCUIT = "low-side-linear-12v"
DEAD = ["--state", "key=on,speed=4", "--sign", "fan=dead"]


def run(capsys, *words):
    code = main(["circuit", *words])
    out = capsys.readouterr()
    return code, out.out, out.err


def as_json(capsys, *words):
    code, out, err = run(capsys, *words, "--json")
    assert code == 0, err
    return json.loads(out)


def test_good_feed_and_no_ground_at_the_motor_points_behind_it(capsys):
    told = as_json(
        capsys, CIRCUIT, *DEAD, "--reading", "motor-feed=12.4", "--reading", "motor-return=12.4"
    )
    likely = {one["unit"]: one["probability"] for one in told["suspects"]}
    behind = ("controller", "ground", "command-wiring", "head", "return-wiring")
    assert sum(likely.get(unit, 0.0) for unit in behind) > 0.9
    assert likely["motor"] < 0.25
    assert told["next_test"]["point"] or told["next_test"]["sign"]
    assert told["next_test"]["meaning"]
    assert [one["value"] for one in told["readings"]] == [12.4, 12.4]


def test_no_reading_at_all_gives_the_first_test(capsys):
    told = as_json(capsys, CIRCUIT)
    assert told["settled"] == ""
    assert told["next_test"] is not None
    assert math.isclose(
        sum(one["probability"] for one in told["suspects"] if one["unit"] == "no-fault"),
        next(one["probability"] for one in told["suspects"] if one["unit"] == "no-fault"),
    )


def test_one_reading_never_settles(capsys):
    told = as_json(capsys, CIRCUIT, *DEAD, "--reading", "main-fuse-out=0.0+-0.01")
    assert told["settled"] == ""


def test_options_hold_for_what_follows_them(capsys):
    told = as_json(
        capsys, CIRCUIT, "--state", "key=on,speed=1", "--reading", "motor-feed=12.4",
        "--state", "key=on,speed=4,unplugged=motor", "--accuracy", "1+0.1", "--complaint", "yes",
        "--meter-ohm", "1e6", "--reading", "motor-feed=12,4", "--reading", "motor-current=0+-0.2",
    )  # fmt: skip
    first, second, third = told["readings"]
    assert first["state"]["speed"] == 1
    assert second["state"] == {
        "key": "on", "speed": 4, "unplugged": ["motor"], "pulled": [], "jumpers": [],
    }  # fmt: skip
    assert second["standard_u"] == pytest.approx((0.124 + 0.1) / math.sqrt(3))
    assert (first["complaint"], second["complaint"]) == (None, True)
    assert (first["meter_ohm"], second["meter_ohm"], third["meter_ohm"]) == (10e6, 1e6, None)
    assert third["standard_u"] == pytest.approx(0.1)


def test_what_can_not_be_reached_is_not_proposed(capsys):
    words = [
        CIRCUIT,
        *DEAD,
        "--no-reach",
        "motor",
        "--no-reach",
        "controller",
        "--no-reach",
        "head",
    ]
    told = as_json(capsys, *words)
    assert told["no_reach"] == ["controller", "head", "motor"]
    places = {one["point"]: one["place"] for one in as_json(capsys, CIRCUIT, "--points")["points"]}
    point = told["next_test"]["point"]
    assert not point or places[point] not in {"motor", "controller", "head"}


def test_a_check_is_kept_and_judged_again(capsys, tmp_path):
    folder = tmp_path / "check"
    words = [*DEAD, "--reading", "motor-feed=12.4", "--no-reach", "head"]
    first = as_json(capsys, CIRCUIT, *words, "--save", str(folder))
    assert Recording.open(folder).state == "sealed"
    (again,) = as_json(capsys, "--from", str(folder))["checks"]
    for told in (first, again):
        for one in (*told["readings"], *told["signs"]):
            one.pop("t_utc")
    assert again == first
    assert main(["review", str(folder), "--json"]) == 0
    reviewed = json.loads(capsys.readouterr().out)
    assert reviewed["circuit_checks"][0]["suspects"] == first["suspects"]
    out = tmp_path / "claim"
    assert main(["export", str(folder), "--out", str(out)]) == 0
    assert "motor plug" in (out / "circuit.txt").read_text("utf-8")
    assert json.loads((out / "circuit.json").read_text("utf-8"))["checks"]
    assert "motor-feed" in (out / "circuit-readings.csv").read_text("utf-8")
    assert "circuit-suspects.csv" in (out / "README.txt").read_text("utf-8")


def test_words_for_people(capsys):
    code, out, _ = run(capsys, CIRCUIT, *DEAD, "--reading", "motor-feed=0.0")
    assert code == 0
    assert out.startswith("Circuit: ")
    for title in ("Suspects", "Next", "Readings"):
        assert f"\n{title}\n" in out
    assert "CAUTION" in out
    assert "service manual" in out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([], "which circuit?"),
        (["nowhere"], "no profile of this name among the circuits"),
        ([CIRCUIT, "--reading", "motor-fed=1"], "is no test point"),
        ([CIRCUIT, "--reading", "motor-feed=full"], "is no reading"),
        ([CIRCUIT, "--reading", "motor-feed"], "is no reading"),
        ([CIRCUIT, "--reading", "motor-feed=900"], "900 V can't be on a 12 V circuit"),
        ([CIRCUIT, "--state", "key=start"], "is no position of the key"),
        ([CIRCUIT, "--state", "speed=9"], "is no speed"),
        ([CIRCUIT, "--state", "speed=x"], "is no speed"),
        ([CIRCUIT, "--state", "unplugged=glovebox"], "is no plug"),
        ([CIRCUIT, "--state", "pulled=relay"], "is no fuse"),
        ([CIRCUIT, "--state", "jumper=body"], "joins no two nodes"),
        ([CIRCUIT, "--state", "moon=full"], "is no part of a state"),
        ([CIRCUIT, "--state", "speed=" + "9" * 5000], "is no speed"),
        ([CIRCUIT, "--state", "key=on,key=off"], "names the key twice"),
        ([CIRCUIT, "--state", "speed=4,speed=1"], "names the speed twice"),
        ([CIRCUIT, "--reading", "motor-feed=12.3A"], "is in A, but motor-feed is read in V"),
        ([CIRCUIT, "--reading", "motor-current=8 V"], "is in V, but motor-current is read in A"),
        ([CIRCUIT, "--reading", "motor-feed=12.3+-0.1 A"], "is in A, but motor-feed"),
        ([CIRCUIT, "--reading", "motor-feed=" + "9" * 400], "is no reading"),
        ([CIRCUIT, "--reading", "motor-feed=12.3+-0"], "states an uncertainty that can't be"),
        ([CIRCUIT, "--reading", "motor-feed=12.3+--0.1"], "states an uncertainty that can't be"),
        ([CIRCUIT, "--reading", "motor-feed=12.3+-" + "9" * 160], "an uncertainty that can't be"),
        ([CIRCUIT, "--reading", "motor-feed=12.3+-" + "9" * 400], "an uncertainty that can't be"),
        ([CIRCUIT, *DEAD, "--accuracy", "1+0.1"], "--accuracy 1+0.1: describes nothing"),
        ([CIRCUIT, *DEAD, "--complaint", "no"], "--complaint no: describes nothing"),
        ([CIRCUIT, "--state", "key=on,speed=4"], "--state key=on,speed=4: describes nothing"),
        ([CIRCUIT, "--meter-ohm", "1e6"], "--meter-ohm 1e6: describes nothing"),
        ([CIRCUIT, "--points", *DEAD], "goes with no readings or --save"),
        (["--from", "x", "--points"], "goes with no CIRCUIT"),
        ([CIRCUIT, "--sign", "fan=loud"], "is no sign"),
        ([CIRCUIT, "--complaint", "perhaps"], "neither yes nor no"),
        ([CIRCUIT, "--accuracy", "good"], "is no accuracy"),
        ([CIRCUIT, "--accuracy", "0+0"], "is no accuracy"),
        ([CIRCUIT, "--meter-ohm", "low"], "is no input resistance"),
        ([CIRCUIT, "--no-reach", "moon"], "is no place"),
        ([CIRCUIT, "--opened", "motor-feed"], "is no place"),
        ([CIRCUIT, "--told-at", "0.2"], "is out of range"),
        (["--from", "/nowhere/at/all"], "/nowhere/at/all"),
        ([CIRCUIT, "--from", "x"], "goes with no CIRCUIT"),
    ],
)
def test_bad_use_says_what_and_what_to_do(capsys, words, said):
    code, _, err = run(capsys, *words)
    assert code == 2
    assert said in err
    assert len(err) < 1000
    assert "Traceback" not in err


def test_units_may_be_typed(capsys):
    words = ["--reading", "motor-feed=12.3 V +- 0.1 V", "--reading", "motor-current=8A±0.2A"]
    told = as_json(capsys, CIRCUIT, "--state", "key=on,speed=4", *words)
    assert [(one["value"], one["unit"]) for one in told["readings"]] == [(12.3, "V"), (8.0, "A")]


def test_minus_nothing_is_nothing(capsys):
    code, out, _ = run(capsys, CIRCUIT, *DEAD, "--reading", "motor-feed=-0.00")
    assert code == 0
    assert "wire: 0.000 V" in out
    assert "-0.000" not in out


def test_a_recording_without_a_check_says_so(capsys, tmp_path):
    folder = tmp_path / "check"
    assert run(capsys, CIRCUIT, "--opened", "motor", "--save", str(folder))[0] == 0
    code, _, err = run(capsys, "--from", str(folder))
    assert code == 2
    assert str(folder) in err
    assert "holds no check of a circuit" in err


def test_where_nothing_was_entered_nothing_is_kept_and_that_is_said(capsys, tmp_path):
    folder = tmp_path / "check"
    code, _, err = run(capsys, CIRCUIT, "--save", str(folder))
    assert code == 2
    assert "nothing was entered" in err
    assert "Kept" not in err
    assert not folder.exists()


def test_what_can_not_be_of_the_circuit_is_refused_before_it_is_kept(capsys, tmp_path):
    folder = tmp_path / "check"
    code, _, err = run(capsys, CIRCUIT, "--reading", "motor-feed=27.5", "--save", str(folder))
    assert code == 2
    assert "can't be on a 12 V circuit" in err
    assert not folder.exists()


@pytest.fixture
def spoiled(tmp_path):
    """Make a recording with one good check, and one whose entry is of no such circuit."""
    log = CircuitLog(lambda: tmp_path / "check")
    log.choose(load_circuit(CIRCUIT))

    def make(value, *, good=True):
        if good:
            log.read("motor-feed", 12.3, CircuitState(), 0.05)
            log.choose(log.circuit)
        log.read("motor-feed", value, CircuitState(), 0.05)
        return str(log.close())

    return make


def test_what_could_not_be_judged_is_told_beside_what_could(capsys, spoiled):
    folder = spoiled(99.0)
    code, out, err = run(capsys, "--from", folder, "--json")
    assert code == 0
    told = json.loads(out)
    assert len(told["checks"]) == 1
    assert len(told["lacking"]) == 1
    assert "99 V can't be" in told["lacking"][0]
    assert "99 V can't be" in err


def test_a_check_that_can_not_be_judged_is_not_called_missing(capsys, spoiled):
    code, _, err = run(capsys, "--from", spoiled(99.0, good=False))
    assert code == 2
    assert "99 V can't be" in err
    assert "no check of a circuit in it can be judged" in err
    assert "holds no check" not in err
