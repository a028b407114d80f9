"""Circuit profiles: what is read, and that all that is wrong is named at once, with its line."""

import re
from pathlib import Path

import pytest

from meterlog.model import Circuit, ElementKind, FaultMode
from meterlog.model.errors import ProfileError
from meterlog.profile import circuit_faults, circuit_profile, is_circuit, load_circuit

SMALL = (Path(__file__).parent / "small_circuit.toml").read_text(encoding="utf-8")


def changed(old, new):
    assert SMALL.count(old) == 1, old
    return SMALL.replace(old, new)


def line_of(text, part):
    return text[: text.index(part)].count("\n") + 1


def test_a_circuit_is_read_as_it_stands():
    circuit = circuit_profile("small", SMALL, "small.toml")
    assert isinstance(circuit, Circuit)
    assert circuit.name == "small"
    assert circuit.text == SMALL
    assert circuit.speeds == (0, 1)
    assert circuit.nodes[0].name == "minus"
    assert circuit.element("fuse").figures == {"ohm": 0.003, "rating_a": 25.0}
    assert circuit.element("fuse").faults[0].comes_and_goes == 0.5
    assert circuit.element("motor").faults[0].mode is FaultMode.DRAGGING
    assert circuit.element("head").speeds == {1: -1.0}
    assert circuit.element("coil-ground").closed_speeds == (1,)
    assert circuit.plugs == ("relay",)
    assert circuit.fuses == ("fuse",)
    assert circuit.element("coil").kind is ElementKind.COIL
    assert circuit.pairs[0].faults == (("motor", FaultMode.SEIZED), ("fuse", FaultMode.OPEN))
    assert circuit.sections[0].limit_v == 0.1
    assert circuit.no_fault_odds == 0.5


# Old text, new text, the key that is named, what is said of it.
WRONG = {
    # what the schema says
    "unknown key": (
        "rating_a = 25\n",
        "rating_a = 25\nratng = 1\n",
        "elements[1].ratng",
        "is not known here",
    ),
    "no title": ('title = "A small circuit"\n', "", "title", "is missing"),
    "kind": ('kind = "fuse"', 'kind = "fuze"', "elements[1].kind", "Did you mean 'fuse'?"),
    "caution": (
        'cautions = ["meter"]',
        'cautions = ["metre"]',
        "places[0].cautions[0]",
        "Did you mean 'meter'?",
    ),
    "odds": ("odds = 2.5", "odds = 0", "elements[1].faults[0].odds", "Expected a number above 0"),
    "less than nothing": ("odds = 2.5", "odds = -3", "elements[1].faults[0].odds", "above 0"),
    "no basis of odds": (
        'odds = 2.5, basis = "from memory"',
        "odds = 2.5",
        "elements[1].faults[0].basis",
        "is missing",
    ),
    "not a number": ("rating_a = 25", "rating_a = nan", "elements[1].rating_a", "finite"),
    "speed's name": (
        "speeds = { 1 = -1.0 }",
        "speeds = { fast = -1.0 }",
        "elements[7].speeds",
        "the number of a speed",
    ),
    "mode": (
        'mode = "open"',
        'mode = "opened"',
        "elements[1].faults[0].mode",
        "Did you mean 'open'?",
    ),
    "mode of a pair": (
        '["fuse", "open"]]',
        '["fuse", "gone"]]',
        "pairs[0].faults[1][1]",
        "Allowed",
    ),
    # what no schema can say
    "first speed": ("speeds = [0, 1]", "speeds = [1, 0]", "speeds", "0 (off) first"),
    "first node": (
        'nodes = ["plus", "minus"]',
        'nodes = ["minus", "plus"]',
        "nodes[0].name",
        "battery negative post",
    ),
    "same place": ("at = [4, 2]", "at = [4, 0]", "nodes[5].at", "is where node 'feed' is drawn"),
    "loose node": (
        "at = [6, 2] },\n",
        'at = [6, 2] },\n  { name = "alone", label = "-", at = [9, 9] },\n',
        "nodes[7].name",
        "hangs on nothing",
    ),
    "no way back from the motor": (
        'nodes = ["return", "minus", "request"]',
        'nodes = ["return", "feed", "request"]',
        "elements[5].nodes",
        "lie on no loop with a battery",
    ),
    "name twice": (
        'name = "coil-ground"',
        'name = "coil"',
        "elements[3].name",
        "repeats the name 'coil'",
    ),
    "unknown node": (
        'nodes = ["coil-end", "minus"]',
        'nodes = ["coil-edn", "minus"]',
        "elements[3].nodes[0]",
        "Did you mean 'coil-end'?",
    ),
    "unknown unit": (
        'unit = "rest"\nlabel = "fuse"',
        'unit = "best"\nlabel = "fuse"',
        "elements[1].unit",
        "Did you mean 'rest'?",
    ),
    "unit without element": (
        'unit = "supply"',
        'unit = "rest"',
        "units[0].name",
        "which has no element",
    ),
    "unit's name": (
        'name = "supply"',
        'name = "no-fault"',
        "units[0].name",
        "stands for nothing electrical",
    ),
    "terminals": (
        'nodes = ["return", "minus", "request"]',
        'nodes = ["return", "minus"]',
        "elements[6].nodes",
        "drain, source, gate",
    ),
    "itself": (
        'nodes = ["feed", "return"]',
        'nodes = ["feed", "feed"]',
        "elements[5].nodes",
        "to itself",
    ),
    "figure missing": (
        "no_load_a = 0.7\n",
        "",
        "elements[5].no_load_a",
        "is missing: every motor needs",
    ),
    "figure of another": (
        "rating_a = 25",
        "rating_a = 25\nthreshold_v = 2",
        "elements[1].threshold_v",
        "no figure of a fuse",
    ),
    "tolerance of another": (
        "tolerance = { ohm = 0.5 }",
        "tolerance = { emf_v = 0.5 }",
        "elements[1].tolerance.emf_v",
        "of no figure of a fuse",
    ),
    "mode of another": (
        'mode = "open"',
        'mode = "seized"',
        "elements[1].faults[0].mode",
        "does not fail so",
    ),
    "mode twice": (
        'mode = "seized"',
        'mode = "dragging", least = 2, most = 3',
        "elements[5].faults[1].mode",
        "repeats",
    ),
    "no bounds": (", least = 9, most = 11", "", "elements[0].faults[0].least", "needs both bounds"),
    "bounds of no use": (
        'mode = "open"',
        'mode = "open", least = 1',
        "elements[1].faults[0].least",
        "has no severity",
    ),
    "bounds turned round": (
        "least = 9, most = 11",
        "least = 11, most = 9",
        "elements[0].faults[0].least",
        "not below most",
    ),
    "no drag": (
        "least = 2, most = 9",
        "least = 1, most = 9",
        "elements[5].faults[0].least",
        "above 1",
    ),
    "flat is full": ("most = 11", "most = 13", "elements[0].faults[0].most", "not below emf_v"),
    "charging": ("charging_v = 14.1", "charging_v = 12", "elements[0].charging_v", "below emf_v"),
    "nominal": ("nominal_v = 12", "nominal_v = 24", "elements[0].emf_v", "nominal_v is 24"),
    "coil alone": (
        'relay = "fan"\nplug',
        'relay = "fun"\nplug',
        "elements[2].relay",
        "there is no contact",
    ),
    "contact alone": (
        'relay = "fan"\nohm = 85',
        'relay = "fun"\nohm = 85',
        "elements[4].relay",
        "there is no coil",
    ),
    "relay unnamed": ('relay = "fan"\nohm = 85', "ohm = 85", "elements[2].relay", "the same word"),
    "relay of a fuse": (
        "rating_a = 25",
        'rating_a = 25\nrelay = "fan"',
        "elements[1].relay",
        "is not used by a fuse",
    ),
    "switched fuse": (
        "rating_a = 25",
        'rating_a = 25\nclosed_keys = ["on"]',
        "elements[1].closed_keys",
        "belongs to a switch",
    ),
    "speed unknown": (
        "closed_speeds = [1]",
        "closed_speeds = [7]",
        "elements[3].closed_speeds",
        "can't be chosen",
    ),
    "head without a speed": (
        "speeds = { 1 = -1.0 }",
        "speeds = { 0 = 2.0 }",
        "elements[7].speeds",
        "says nothing of speed 1",
    ),
    "head's bounds": (
        "speeds = { 1 = -1.0 }",
        "speeds = { 1 = -1.0 }\nleast_v = 10",
        "elements[7].least_v",
        "not below most_v",
    ),
    "plug": (
        "threshold_v = 2",
        'threshold_v = 2\nplug = "x"',
        "elements[6].plug",
        "no plug can open",
    ),
    "two motors": ('kind = "fuse"', 'kind = "motor"', "elements[5].kind", "have 2 motors"),
    "place without point": (
        '[[points]]\nname = "fuse-in"',
        '[[places]]\nname = "far"\nlabel = "far"\nminutes = 1\n[[points]]\nname = "fuse-in"',
        "places[1].name",
        "no test point",
    ),
    "no one gets there": (
        'place = "box"\nreach = "Clamp."',
        'place = "roof"\nreach = "Clamp."',
        "points[2].place",
        "no one can reach",
    ),
    "named as a place": (
        'name = "box"\nlabel = "fuse box"',
        'name = "box"\nlabel = "fuse box"\nminutes = 1\n'
        '[[places]]\nname = "current"\nlabel = "there"',
        "points[2].name",
        "name of a place",
    ),
    "nodes of a voltage": (
        'kind = "drop"',
        'kind = "voltage"',
        "points[1].nodes",
        "a voltage has 1",
    ),
    "always 0": ('nodes = ["plus"]', 'nodes = ["minus"]', "points[0].nodes", "every voltage is 0"),
    "clamp round nothing": ('element = "fuse"\n', "", "points[2].element", "Name the element"),
    "clamp round a controller": (
        'element = "fuse"\n',
        'element = "controller"\n',
        "points[2].element",
        "more than two terminals",
    ),
    "element of a voltage": (
        'nodes = ["plus"]\n',
        'nodes = ["plus"]\nelement = "fuse"\n',
        "points[0].element",
        "not used by a voltage",
    ),
    "section unknown": (
        'nodes = ["plus", "fused"]\nside',
        'nodes = ["plus", "fusd"]\nside',
        "sections[0].nodes[1]",
        "Did you mean 'fused'?",
    ),
    "section unmeasured": (
        'nodes = ["plus", "fused"]\nside',
        'nodes = ["fused", "feed"]\nside',
        "sections[0].nodes",
        "no test point at fused and feed",
    ),
    "pair unknown": (
        '[["motor", "seized"]',
        '[["mtor", "seized"]',
        "pairs[0].faults[0]",
        "Did you mean 'motor'?",
    ),
    "pair's mode": (
        '[["motor", "seized"]',
        '[["motor", "open"]',
        "pairs[0].faults[0]",
        "none of that element's faults",
    ),
    "pair of one": (
        '[["motor", "seized"], ["fuse", "open"]]',
        '[["fuse", "open"], ["fuse", "open"]]',
        "pairs[0].faults",
        "Expected two elements",
    ),
}


def test_a_circuit_in_which_nothing_can_fail_is_refused():
    no_pairs = SMALL[: SMALL.index("[[pairs]]")]
    text = re.sub(r"^faults = \[(.*|\n(  .*\n)*)\]\n", "", no_pairs, flags=re.M)
    assert "mode =" not in text
    (error,) = circuit_faults(text, "mine.toml")
    assert error.message.startswith("elements have no faults")
    assert error.subject == f"mine.toml, line {line_of(text, '[[elements]]')}"


@pytest.mark.parametrize(("old", "new", "key", "said"), WRONG.values(), ids=WRONG)
def test_what_is_wrong_is_named_with_file_line_key_and_what_was_expected(old, new, key, said):
    text = changed(old, new)
    found = circuit_faults(text, "mine.toml")
    told = [str(error) for error in found]
    assert any(f" {key} " in f" {error.message} " and said in str(error) for error in found), told
    assert all(error.remedy for error in found)
    assert all(error.subject.startswith("mine.toml") for error in found)
    if key != "title":
        assert all(", line " in error.subject for error in found), told
    with pytest.raises(ProfileError):
        circuit_profile("mine", text, "mine.toml")


def test_the_small_circuit_itself_has_no_fault():
    assert circuit_faults(SMALL, "small.toml") == []


def test_every_fault_is_named_at_once_in_the_order_of_the_lines():
    text = SMALL
    for old, new in (
        ("at = [4, 2]", "at = [4, 0]"),
        ("rating_a = 25\n", ""),
        ('unit = "rest"\nlabel = "relay contact"', 'unit = "none"\nlabel = "relay contact"'),
        ('place = "box"\nreach = "Clamp."', 'place = "roof"\nreach = "Clamp."'),
    ):
        assert text.count(old) == 1
        text = text.replace(old, new)
    found = circuit_faults(text, "mine.toml")
    lines = [int(error.subject.rpartition(" ")[2]) for error in found]
    assert lines == sorted(lines)
    keys = [error.message.partition(" ")[0] for error in found]
    assert keys == ["nodes[5].at", "elements[1].rating_a", "elements[4].unit", "points[2].place"]
    assert lines[0] == line_of(text, '{ name = "return"')
    assert lines[3] == line_of(text, 'place = "roof"')


@pytest.mark.parametrize("data", [b"\x00\xff\xfe", b"\xc3(", b"\xff" * 4096])
def test_bytes_that_are_no_text_are_refused_in_words(tmp_path, data):
    file = tmp_path / "garbage.toml"
    file.write_bytes(data)
    with pytest.raises(ProfileError, match=r"UTF-8|not valid TOML") as caught:
        load_circuit(str(file))
    assert caught.value.subject == str(file)
    assert caught.value.remedy


@pytest.mark.parametrize(
    "text", ["", "a = ", "[[nodes]]", "nodes = 3", "elements = [1, 2]", "\x00"]
)
def test_what_is_no_circuit_at_all_is_refused_in_words(text):
    found = circuit_faults(text, "p.toml")
    assert found
    assert all(error.subject.startswith("p.toml") and len(str(error)) < 900 for error in found)


def test_a_circuit_is_known_by_its_lists():
    assert is_circuit(SMALL)
    assert not is_circuit('title = "x"\n[[channels]]\nname = "a"')
    assert not is_circuit("[[[")
