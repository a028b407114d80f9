"""``meterlog amend``: the recording stays, and all that judges it sees the edit and says so."""

import hashlib
import json
import zipfile

import pytest

from meterlog.evidence import signing
from meterlog.recording import Recording
from meterlog.work import review_folder
from meterlog.work.amendments import amendments_path

WHY = ("--why", "knob was at 2", "--who", "N. N.")


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


def digests(folder):
    return {
        path.relative_to(folder): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }


@pytest.fixture
def edited(run, small):
    before = digests(small)
    run(
        *("amend", small, "--step", "0=2", "--move", "tap@7=6.5", *WHY),
        *("--limit", "speed.2.min_a=1", "--limit", "speed.2.max_a=3.5"),
    )
    assert digests(small) == before
    assert run("verify", small).out
    return small


def said(run, *words):
    return json.loads(run(*words, "--json").out)


def edits_in(notes):
    return [note for note in notes if "Edit on top of the recording" in note]


def test_the_review_is_as_if_it_had_been_recorded_so_and_says_every_edit(run, edited):
    now = said(run, "review", edited)
    assert [step["speed"] for step in now["steps"]] == [2]
    (current,) = [one for one in now["findings"] if one["kind"] == "step-current"]
    assert (current["limit"], current["verdict"]) == (3.5, "fail")
    assert [one["t_s"] for one in now["taps"]["taps"]] == [6.5]
    assert now["limits"] == "linear-12v, amended"
    assert len(edits_in(now["notes"])) == 4
    assert "N. N.: the step at 0.000 s was relabelled from 1 to 2. Reason: knob was at 2." in str(
        now["notes"]
    )


def test_as_recorded_is_the_review_from_before_and_says_what_it_leaves_out(run, small):
    before = said(run, "review", small)
    run("amend", small, "--step", "0=2", "--limit", "speed.1.max_a=3.5", *WHY)
    after = said(run, "review", small, "--as-recorded")
    left_out = [note for note in after["notes"] if "Not applied: taken as recorded." in note]
    assert len(left_out) == 2
    after["notes"] = [note for note in after["notes"] if note not in left_out]
    assert after == before


def test_readings_are_never_touched(edited):
    recording, _ = review_folder(edited)
    plain = Recording.open(edited)
    (key,) = [one.key for one in plain.about.instruments]
    for now, was in zip(recording.blocks(key), plain.blocks(key), strict=True):
        assert now.t_ns.tobytes() == was.t_ns.tobytes()
        assert now.values.tobytes() == was.values.tobytes()


def test_other_limits_leave_the_edits_of_the_own_ones_out_and_say_so(run, edited):
    now = said(run, "review", edited, "--limits", "linear-12v")
    (current,) = [one for one in now["findings"] if one["kind"] == "step-current"]
    assert current["limit"] != 3.5
    told = [note for note in now["notes"] if "Not applied: judged by other limits." in note]
    assert len(told) == 2


def test_the_export_lists_the_edits_and_holds_the_events_and_limits_as_amended(
    run, edited, tmp_path
):
    run("export", edited, "--out", tmp_path / "out")
    for name in ("README.txt", "judgement.txt"):
        text = " ".join((tmp_path / "out" / name).read_text().split())
        assert "the mark 'tap' was moved from 7 s to 6.5 s. Reason: knob was at 2." in text
    assert "max_a = 3.5" in (tmp_path / "out/README.txt").read_text()
    events = (tmp_path / "out/events.csv").read_text()
    assert ",6.5," in events
    run("import", tmp_path / "out", "--out", tmp_path / "again")
    one, other = (said(run, "review", folder) for folder in (edited, tmp_path / "again"))
    assert one["findings"] == other["findings"]
    run("export", edited, "--out", tmp_path / "plain", "--as-recorded")
    assert ",6.5," not in (tmp_path / "plain/events.csv").read_text()


def test_a_comparison_lists_the_edits_and_pairs_by_them(run, edited, tmp_path):
    (tmp_path / "on.csv").write_text("elapsed_s,kind,value\n0,speed,2\n")
    rows = ["t,feed,return,amps", *(f"{k / 50:.2f},12.5,8.5,4.1" for k in range(600))]
    (tmp_path / "new.csv").write_text("\n".join(rows) + "\n")
    run(
        *("import", tmp_path / "new.csv", "--time", "t", "--events", tmp_path / "on.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--out", tmp_path / "new"),
    )
    now = said(run, "compare", edited, tmp_path / "new")
    assert [step["speed"] for step in now["steps"]] == [2]
    assert len([note for note in now["notes"] if note.startswith("small: Edit on top")]) == 4
    found = json.loads(
        run("compare", edited, tmp_path / "new", "--as-recorded", "--json", code=1).out
    )
    assert found["refusal"]


def pack(run, edited, out, *more):
    card = out.with_suffix(".json")
    run("job", card, "--set", "work_order=1")
    run("claim", card, "--before", edited, "--out", out, "--unsigned", *more)
    with zipfile.ZipFile(out / "claim.zip") as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_a_claim_judges_with_the_edits_and_lists_them(run, edited, tmp_path, monkeypatch):
    from meterlog.evidence import claim_pdf

    listed = []
    write = claim_pdf.write_claim_pdf

    def seen(content, *rest):
        listed.append(content.amendments)
        return write(content, *rest)

    monkeypatch.setattr(claim_pdf, "write_claim_pdf", seen)
    files = pack(run, edited, tmp_path / "one")
    assert b"knob was at 2" in files["claim/data/before/README.txt"]
    assert b",6.5," in files["claim/data/before/events.csv"]
    files = pack(run, edited, tmp_path / "two", "--as-recorded")
    assert b",6.5," not in files["claim/data/before/events.csv"]
    for more in ((), ("--as-recorded",)):
        name = tmp_path / f"three{len(more)}"
        files = pack(run, edited, name, "--without-customer", *more)
        for content in files.values():
            assert b"knob was at 2" not in content
            assert b"N. N." not in content
    applied, plain, unnamed, _ = listed
    assert [len(one) for one in listed] == [4, 4, 4, 4]
    assert all(one.startswith("before: ") and "knob was at 2" in one for one in applied)
    assert all(one.endswith("Not applied: taken as recorded.") for one in plain)
    assert all("knob was at 2" not in one and "[left out]" in one for one in unnamed)


def test_damage_is_told_and_what_stands_behind_it_is_not_applied(run, edited):
    path = amendments_path(edited)
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(lines[0] + lines[1].replace(b"6.5", b"5.5") + lines[2] + lines[3])
    now = said(run, "review", edited)
    assert [step["speed"] for step in now["steps"]] == [2]
    assert [one["t_s"] for one in now["taps"]["taps"]] == [7.0]
    (current,) = [one for one in now["findings"] if one["kind"] == "step-current"]
    assert current["limit"] != 3.5
    assert len(edits_in(now["notes"])) == 1
    told = [note for note in now["notes"] if "NOT WHOLE" in note]
    assert "line 2 is damaged" in told[0]
    assert "lines 3 to 4 can't be trusted" in told[1]
    whole = path.read_bytes()
    shown = run("review", edited)
    assert "EDITS NOT WHOLE: small.amendments.jsonl: line 2 is damaged" in shown.out
    assert "EDITED: 1 edit on top of the recording; the notes say each." in shown.err
    assert "EDITS NOT WHOLE" in run("export", edited, "--out", edited.parent / "out").err
    refused = run("amend", edited, "--step", "0=3", *WHY, code=1).err
    assert "line 2 is damaged" in refused
    assert "make the edits anew" in refused
    assert path.read_bytes() == whole
    assert "line 2 is damaged" in run("amend", edited, "--list").err


def test_damage_is_told_in_the_pack_beside_the_edits_before_it(run, edited, tmp_path):
    path = amendments_path(edited)
    path.write_bytes(path.read_bytes().replace(b"6.5", b"5.5"))
    files = pack(run, edited, tmp_path / "pack")
    text = " ".join(files["claim/data/before/README.txt"].decode().split())
    assert "NOT WHOLE: small.amendments.jsonl: line 2 is damaged and left out." in text


def test_an_edit_that_fits_no_more_is_told_and_stops_nothing(run, edited):
    path = amendments_path(edited)
    path.unlink()
    from meterlog.model.amendment import Amendment, AmendmentKind
    from meterlog.work.amendments import add_amendment

    add_amendment(edited, Amendment(AmendmentKind.STEP, "", 5, "1", "2", "N. N.", "x"))
    add_amendment(edited, Amendment(AmendmentKind.STEP, "", 0, "1", "4", "N. N.", "x"))
    now = said(run, "review", edited)
    assert [step["speed"] for step in now["steps"]] == [4]
    assert "NOT APPLIED, it does not fit: the recording holds no speed at" in str(now["notes"])


def test_edits_are_listed_and_undone_by_further_edits(run, edited):
    assert run("amend", edited, "--list").out == run("amend", edited).out
    made = said(run, "amend", edited, "--move", "tap@6.5=7", *WHY)
    assert made["made"] == 1
    assert [one["kind"] for one in made["edits"]] == ["step", "marker", "limit", "limit", "marker"]
    last = made["edits"][-1]
    assert (last["t_s"], last["old"], last["new"], last["who"]) == (7.0, "6.5", "7", "N. N.")
    assert [one["t_s"] for one in said(run, "review", edited)["taps"]["taps"]] == [7.0]


def test_who_is_the_login_where_nobody_is_named(run, small, monkeypatch):
    monkeypatch.setattr("getpass.getuser", lambda: "bench-user")
    assert "bench-user: the step" in run("amend", small, "--step", "0=2", "--why", "x").out
    assert run("amend", small, "--list").out.count("\n") == 2


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--step", "5=2"), "There are: 0 s (1)"),
        (("--step", "0"), "TIME=SPEED"),
        (("--step", "x=2"), "is no time"),
        (("--step", "0=1"), "old and new are the same"),
        (("--move", "tap@7=13"), "outside the recording"),
        (("--move", "tap@1=2"), "There are: 7 s"),
        (("--move", "zero@1=2"), "no mark that can be edited"),
        (("--move", "tap@7"), "KIND@TIME=NEW"),
        (("--limit", "fuse=3"), "no such limit"),
        (("--limit", "speed.1.min_a=99"), "above max_a"),
        (("--limit", "speed.1.min_a"), "KEY=VALUE"),
        ((), "without an edit"),
    ],
)
def test_what_does_not_fit_is_refused_and_nothing_is_written(run, small, words, told):
    # The first one fits: nothing of a command is written unless all of it fits.
    first = ("--move", "tap@7=6.9") if words and words[0] == "--limit" else ()
    assert told in run("amend", small, *first, *words, *WHY, code=2).err
    assert not amendments_path(small).exists()


def test_without_a_reason_nothing_is_written(run, small):
    assert "without a reason" in run("amend", small, "--step", "0=2", code=2).err
    assert not amendments_path(small).exists()
    assert "No edits were made." in run("amend", small).out
    assert "is not there" in run("amend", small / "none", code=2).err


def test_a_withdrawn_mark_counts_for_nothing_is_said_and_can_be_put_back(run, small):
    before = digests(small)
    made = run("amend", small, "--withdraw", "tap@7", "--why", "nobody tapped", "--who", "N. N.")
    assert "N. N.: the mark 'tap' at 7 s was withdrawn and counts for nothing" in made.out
    now = said(run, "review", small)
    assert not (now["taps"] or {}).get("taps")
    (told,) = edits_in(now["notes"])
    assert "withdrawn" in told
    again = run("amend", small, "--withdraw", "tap@7", *WHY, code=2)
    assert "no tap is marked there" in again.err
    run("amend", small, "--put-back", "tap@7", *WHY)
    assert [one["t_s"] for one in said(run, "review", small)["taps"]["taps"]] == [7.0]
    assert len(said(run, "amend", small, "--list")["edits"]) == 2
    assert digests(small) == before


def test_verify_shows_how_far_it_is(run, small, monkeypatch):
    monkeypatch.setattr("meterlog.commands.terminal._LINE_PERIOD_S", 0.0)
    parts = [line for line in run("verify", small).err.splitlines() if line.startswith("checking:")]
    assert len(parts) > 1
    assert parts[-1].split()[1] == "100%"
