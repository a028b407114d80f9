"""Thousands of recordings beside one table: by the index alone, by job's card, each once."""

import shutil

import pytest

from meterlog.model.errors import EvidenceError
from meterlog.model.job_card import with_value
from meterlog.work.baseline_tables import table_at, tables_in, usual_screening
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD, JobWork, Side, keep_work
from meterlog.work.library import Library, Usual, Wanted
from meterlog.work.screening import Usuals, baselines_for

GOOD = (0, 3, 6, 9, 12, 18)


def nothing(_part):
    pass


@pytest.fixture
def own(make, screened, tmp_path):
    """Good ones that are screened, then others beside them."""
    for number in GOOD:
        make(f"run-{number}", number)
    screened(tmp_path / "own", out="own/screening")
    make("heavy", 30, part="FM-20, serial 9", load=1.45)
    make("other", 31, part="ZZ-1, serial 1")
    make("unsaid", 33, part="", load=1.45)
    return tmp_path / "own"


@pytest.fixture
def library(own, tmp_path):
    with Library(tmp_path / "cache" / "index.sqlite3") as made:
        made.refresh([own], nothing)
        yield made


def _marks(usuals, library, own, only=None):
    hits = library.search([own], Wanted())
    return {one.folder.name: one.usual for one in usuals.marked(hits, only)}


def test_all_that_is_judged_is_held_once_and_found_by_what_it_is(own, library):
    usuals = Usuals(own / "screening")
    assert usuals.judge(library, library.search([own], Wanted()), nothing) == 0
    library.judge_missing([own], nothing)
    hits = library.search([own], Wanted())
    assert usuals.judge(library, hits, nothing) == len(hits) == len(GOOD) + 3
    assert usuals.judge(library, hits, nothing) == 0
    marks = _marks(usuals, library, own)
    assert marks["heavy"] is Usual.HIGHER
    assert marks["other"] is marks["unsaid"] is Usual.NO_BASELINE
    assert {marks[f"run-{one}"] for one in GOOD} <= {Usual.AS_USUAL, Usual.CANT_TELL}
    assert _marks(usuals, library, own, Usual.HIGHER) == {"heavy": Usual.HIGHER}
    assert usuals.numbers == ("FM-20",)


def test_the_jobs_card_tells_the_number_where_the_recording_does_not(own, library):
    job = own / "jobs" / "1"
    change_card(job / CARD, lambda card: with_value(card, "new_part.number", "fm-20"))
    keep_work(job, JobWork().taking(own / "unsaid", Side.NEW))
    library.refresh([own], nothing)
    library.judge_missing([own], nothing)
    usuals = Usuals(own / "screening")
    hits = library.search([own], Wanted())
    usuals.judge(library, hits, nothing)
    assert _marks(usuals, library, own)["unsaid"] is Usual.HIGHER
    (hit,) = (one for one in hits if one.folder.name == "unsaid")
    told = usuals.held(library, hit)
    assert (told.number, told.held.usual) == ("FM-20", Usual.HIGHER)
    assert told.held.comparison.new.name == "unsaid"


def test_why_there_is_nothing_beside_one_is_known(own, library):
    library.judge_missing([own], nothing)
    usuals = Usuals(own / "screening")
    hits = {one.folder.name: one for one in library.search([own], Wanted())}
    unsaid, other = (usuals.held(library, hits[name]) for name in ("unsaid", "other"))
    assert (unsaid.held, unsaid.number, unsaid.volts) == (None, "", ())
    assert (other.held, other.number, other.volts) == (None, "ZZ-1", ())


def test_it_stops_where_it_is_told_to(own, library):
    library.judge_missing([own], nothing)
    usuals = Usuals(own / "screening")
    parts = []

    def stop(part):
        parts.append(part)
        if len(parts) == 3:
            raise InterruptedError

    hits = library.search([own], Wanted())
    with pytest.raises(InterruptedError):
        usuals.judge(library, hits, stop)
    assert sum(one.usual is not None for one in usuals.marked(hits)) == 2
    assert usuals.judge(library, hits, nothing) == len(hits) - 2


def test_tables_are_found_in_folders_but_not_in_recordings_and_the_newest_is_first(own, tmp_path):
    shutil.copytree(own / "screening", own / "run-0" / "data" / "screening")
    shutil.copytree(own / "screening", own / ".hidden" / "screening")
    newer = tmp_path / "elsewhere" / "deep" / "baselines.parquet"
    newer.parent.mkdir(parents=True)
    shutil.copy(own / "screening" / "baselines.parquet", newer)
    found = tables_in([own, tmp_path / "elsewhere", tmp_path / "nowhere", own], lambda: None)
    assert found == (newer, own / "screening" / "baselines.parquet")
    assert table_at(own / "screening") == table_at(found[1])


def test_a_table_that_is_gone_is_refused_with_what_to_do(own, tmp_path):
    with pytest.raises(EvidenceError, match=r"is not there\. Plug in or connect its disk"):
        Usuals(tmp_path / "nowhere.parquet")


def test_the_usual_place_is_where_a_screening_writes_by_itself(own, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert usual_screening() == tmp_path / "data" / "meterlog" / "screening"
    shutil.copytree(own / "screening", usual_screening())
    assert [one.speed for one in baselines_for("FM-20")] == [1, 2, 3, 4]
