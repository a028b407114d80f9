"""What a search finds: words, dates, verdicts, jobs."""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model.errors import UsageError
from meterlog.work.job_folder import Side
from meterlog.work.library import Kind, Verdicts, Wanted, wanted_date, wanted_verdict
from meterlog.work.library.folded import folded
from meterlog.work.library.found_by import found_by


def nothing(_part):
    pass


def names(hits):
    return [hit.folder.name for hit in hits]


@pytest.fixture
def three(recording):
    recording("a", 0, vehicle="Löwe 3 hatch", work_order="WO 1", complaint="dead until I hit it")
    recording("b", 1, vehicle="Kestrel van", part="FM-20 sn 7", work_order="WO 2")
    recording("c", 40, vehicle="Kestrel van", part="FM-21 sn 8", technician="Łukasz")


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("", ["c", "b", "a"]),
        ("LOWE", ["a"]),
        ("kestrel fm-21", ["c"]),
        ("fm-21 KESTREL", ["c"]),
        ("lukasz", ["c"]),
        ("Łukasz", ["c"]),
        ("hit dead", ["a"]),
        ("line-logger", ["c", "b", "a"]),
        ("simulated", ["c", "b", "a"]),
        ("100%", []),
        ("_", []),
        ("fm-21 lowe", []),
    ],
)
def test_every_word_must_be_there_without_accents_and_case(library, shelf, three, words, found):
    library.refresh([shelf], nothing)
    assert names(library.search([shelf], Wanted(words))) == found


@pytest.mark.parametrize(
    ("since", "until", "found"),
    [
        # It began at 22:30 UTC, which is 23:30 at the place, on 4 March.
        ("2026-03-04", "2026-03-04", ["a"]),
        ("2026-03-05", "", ["c", "b"]),
        ("2026-03", "2026-03", ["b", "a"]),
        ("", "2025", []),
        ("4.3.2026", "5.3.2026", ["b", "a"]),
    ],
)
def test_dates_are_those_of_the_place_and_both_ends_count(
    library, shelf, three, since, until, found
):
    library.refresh([shelf], nothing)
    wanted = Wanted(since=wanted_date(since), until=wanted_date(until, last=True))
    assert names(library.search([shelf], wanted)) == found


@pytest.mark.parametrize(
    ("text", "last", "day"),
    [
        ("2028-02", True, "2028-02-29"),
        ("2026-12", True, "2026-12-31"),
        ("2026", True, "2026-12-31"),
        ("2026", False, "2026-01-01"),
        ("9999-12", True, "9999-12-31"),
        ("1.2.2026", False, "2026-02-01"),
        ("  ", False, ""),
    ],
)
def test_a_part_of_a_date_is_a_stretch(text, last, day):
    assert wanted_date(text, last=last) == day


@pytest.mark.parametrize("text", ["soon", "2026-13", "26-1-1", "2026-02-30", "2026-1-1-1", "-"])
def test_what_is_no_date_is_refused_with_the_form_of_one(text):
    with pytest.raises(UsageError, match="is no date") as refused:
        wanted_date(text)
    assert "2026-11-29" in str(refused.value)


def test_verdicts_are_read_by_their_beginning():
    assert wanted_verdict("Fault") is Verdicts.FAULT
    assert wanted_verdict("cant-tell") is Verdicts.CANT_TELL
    assert wanted_verdict("can't tell") is Verdicts.CANT_TELL
    assert wanted_verdict("not-judged") is Verdicts.NOT_JUDGED
    for text in ("", "bad"):
        with pytest.raises(UsageError, match="fault-found, suspicion"):
            wanted_verdict(text)


def test_folding_knows_letters_that_unicode_does_not_take_apart():
    assert folded("  Straße\tØRSTED ﬁne Ⅳ ") == "strasse orsted fine iv"


def test_verdict_worst_finding_and_currents_come_with_judging(library, shelf, recording):
    recording("good", 0)
    recording("bad", 1, dead=True)
    looked = library.refresh([shelf], nothing)
    assert looked.to_judge == 2
    assert {hit.verdict for hit in library.search([shelf], Wanted())} == {Verdicts.NOT_JUDGED}
    parts = []
    assert library.judge_missing([shelf], parts.append) == 2
    assert parts == sorted(parts)
    assert parts[-1] == 1.0
    bad, good = library.search([shelf], Wanted())
    assert (good.verdict, good.worst) == (Verdicts.IN_ORDER, "")
    assert good.currents[0].speed == 1
    assert good.currents[0].mean_a == pytest.approx(4.0, abs=0.01)
    # 1 % of 4 A and 5 counts of 0.01 A are 0.09 A, rectangular: 95 % of it.
    assert good.currents[0].expanded_a == pytest.approx(0.95 * 0.09, rel=0.05)
    assert bad.verdict in {Verdicts.FAULT, Verdicts.SUSPICION}
    assert bad.worst
    assert "motor opens" in bad.sentence
    fit = library.search([shelf], Wanted(verdict=bad.verdict))
    assert names(fit) == ["bad"]
    assert library.refresh([shelf], nothing).to_judge == 0


def test_a_job_is_what_its_recordings_come_to_and_lends_them_its_words(
    library, shelf, recording, job
):
    old = recording("old", 3, dead=True)
    new = recording("new", 5)
    recording("other", 9)
    job(
        "j1",
        [(old, Side.OLD), (new, Side.NEW)],
        plate="INV 4711",
        vehicle="Aral bus",
        **{"old_part.number": "FM-20", "new_part.number": "FM-21"},
    )
    library.refresh([shelf], nothing)
    found = library.search([shelf], Wanted("inv 4711"))
    assert [(hit.folder.name, hit.kind, hit.side) for hit in found] == [
        ("new", Kind.RUN, "new"),
        ("j1", Kind.JOB, ""),
        ("old", Kind.RUN, "old"),
    ]
    assert found[1].verdict is Verdicts.NOT_JUDGED
    assert found[1].part == "FM-20 → FM-21"
    assert found[1].started == found[0].started
    assert found[1].mark == "SIMULATED"
    library.judge_missing([shelf], nothing)
    judged = library.search([shelf], Wanted(kind=Kind.JOB))[0]
    of_old = library.search([shelf], Wanted("old"))[-1].verdict
    assert judged.verdict is of_old
    assert judged.sentence == f"Old part: {of_old.value}. New part: in order."


def test_thousands_are_searched_in_a_few_times_what_reading_them_takes(library, shelf, recording):
    """Seven to nine times were measured: 50 ms are wanted where reading takes 5."""
    folder = recording("one", vehicle="Löwe 3 hatch", work_order="WO 1")
    library.refresh([shelf], nothing)
    rows = 2000

    def multiply(connection):
        names = [row[1] for row in connection.execute("PRAGMA table_info(things)")]
        rest = ", ".join(name for name in names if name != "folder")
        for number in range(1, rows):
            connection.execute(
                f"INSERT INTO things (folder, {rest}) SELECT ?, {rest} FROM things "
                "WHERE folder = ?",
                [f"{shelf}/{number}", str(folder)],
            )

    def read(connection):
        assert len(list(map(tuple, connection.execute("SELECT * FROM things")))) == rows

    def search():
        assert len(library.search([shelf], Wanted("lowe"))) == rows

    library._index.run(multiply)
    searched, plain = zip(
        *((_timed(search), _timed(lambda: library._index.run(read))) for _ in range(7)),
        strict=True,
    )
    assert min(searched) < 20 * min(plain)


def _timed(work):
    """Give the time for which this thread computes: others at work on the machine don't count."""
    start_s = time.thread_time()
    work()
    return time.thread_time() - start_s


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("", ()),
        ("lowe wo", ()),  # the line itself shows them
        ("DEAD", ("a wo 1 lowe 3 hatch dead until i hit it…",)),
        ("hit dead löwe", ("…3 hatch dead until i hit it line-logger…",)),
        ("until logger", ("…wo 1 lowe 3 hatch dead until i hit it line-logger…",)),
    ],
)
def test_a_hit_says_where_the_words_stand_that_its_line_does_not_show(
    library, shelf, three, words, why
):
    library.refresh([shelf], nothing)
    hit = next(one for one in library.search([shelf], Wanted(words)) if one.folder.name == "a")
    assert hit.found_by == why


@given(
    text=st.text("ab c", min_size=1, max_size=120).map(folded).filter(bool),
    start=st.integers(0, 119),
    size=st.integers(1, 20),
)
def test_what_is_around_a_word_holds_it_whole_and_is_of_the_text(text, start, size):
    term = text[start : start + size].strip()
    told = found_by([term], "", text, "") if term else ()
    for one in told:
        assert term in one
        assert one.strip("…") in text
        assert one.startswith("…") != text.startswith(one.strip("…"))


def test_a_whole_complaint_can_be_looked_for_and_bytes_that_are_no_text(library, shelf, recording):
    many = " ".join(f"w{k}w" for k in range(1_500))
    recording("long", 0, complaint=many)
    recording("other", 1, complaint=many.replace("w7w ", ""))
    library.refresh([shelf], nothing)
    assert names(library.search([shelf], Wanted(many))) == ["long"]
    assert names(library.search([shelf], Wanted("w8w " * 2_000))) == ["other", "long"]
    assert names(library.search([shelf], Wanted("\udcff\udcfe"))) == []
