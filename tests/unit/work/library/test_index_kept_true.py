"""The index is never trusted over the folders, and can be thrown away at any time."""

import os
import shutil
import sqlite3
import stat
import subprocess
import sys
import threading

import pytest

from meterlog.model import Origin
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import MeterlogError
from meterlog.recording import layout, seal
from meterlog.work.amendments import add_amendment
from meterlog.work.job_folder import CARD, WORK
from meterlog.work.library import Kind, Library, Verdicts, Wanted
from meterlog.work.library.apart import judge_apart, read_apart
from meterlog.work.library.facts import recording_facts


def nothing(_part):
    pass


def names(hits):
    return [hit.folder.name for hit in hits]


def test_nothing_that_stayed_is_read_twice_and_what_came_or_went_is_known(
    library, shelf, recording
):
    recording("a")
    gone = recording("b", 1)
    assert library.refresh([shelf], nothing).read == 2
    assert library.refresh([shelf], nothing).read == 0
    recording("c", 2)
    shutil.rmtree(gone)
    assert library.refresh([shelf], nothing).read == 1
    assert names(library.search([shelf], Wanted())) == ["c", "a"]


def test_a_changed_head_or_card_is_read_again(library, shelf, recording, job):
    folder, of_job = recording("a", vehicle="van"), job("j", vehicle="van")
    library.refresh([shelf], nothing)
    for path in (folder / layout.ABOUT, of_job / CARD):
        path.write_bytes(path.read_bytes().replace(b'"van"', b'"bus"'))
    assert library.refresh([shelf], nothing).read == 2
    assert library.search([shelf], Wanted("van")) == ()
    found = library.search([shelf], Wanted("bus"))
    assert {hit.kind for hit in found} == {Kind.RUN, Kind.JOB}
    assert any("checksum" in hit.trouble for hit in found)


def test_a_file_changed_behind_the_seal_is_judged_anew_and_said_when_its_size_differs(
    library, shelf, recording
):
    folder = recording("a")
    library.refresh([shelf], nothing)
    library.judge_missing([shelf], nothing)
    assert library.refresh([shelf], nothing).to_judge == 0
    data = folder / layout.arrows("line-logger")
    later = (folder / layout.MANIFEST).stat().st_mtime + 100
    os.utime(data, (later, later))
    assert library.refresh([shelf], nothing).to_judge == 1
    data.write_bytes(data.read_bytes()[:-40])
    library.refresh([shelf], nothing)
    (hit,) = library.search([shelf], Wanted())
    assert hit.verdict is Verdicts.NOT_JUDGED
    assert "not as it was sealed" in hit.trouble


def test_a_copy_has_the_verdict_of_the_first_and_an_edit_on_top_is_judged_anew(
    library, shelf, recording
):
    folder = recording("a")
    shutil.copytree(folder, shelf / "copy")
    library.refresh([shelf], nothing)
    assert library.judge_missing([shelf], nothing) == 1
    assert {hit.verdict for hit in library.search([shelf], Wanted())} == {Verdicts.IN_ORDER}
    edit = Amendment(AmendmentKind.STEP, "", 0, "1", "2", "Ana", "it was 2")
    add_amendment(folder, edit)
    assert library.refresh([shelf], nothing).to_judge == 1
    verdicts = {hit.folder.name: hit.verdict for hit in library.search([shelf], Wanted())}
    assert verdicts == {"a": Verdicts.NOT_JUDGED, "copy": Verdicts.IN_ORDER}


def test_what_can_not_be_read_is_listed_and_says_why(library, shelf, recording, job):
    torn, of_job = recording("torn"), job("j")
    (torn / layout.ABOUT).write_bytes(b"{")
    (of_job / CARD).write_bytes(b"{")
    library.refresh([shelf], nothing)
    found = library.search([shelf], Wanted())
    assert {hit.state for hit in found} == {"can't be read"}
    assert all(hit.trouble for hit in found)
    (of_job / CARD).unlink()
    job("k")
    (shelf / "jobs" / "k" / WORK).write_bytes(b"[]")
    library.refresh([shelf], nothing)
    (found,) = library.search([shelf], Wanted(kind=Kind.JOB))
    assert "list of a job's recordings" in found.trouble


def test_unsealed_ones_are_told_and_one_being_recorded_is_not(library, shelf, recording, record_on):
    cut = recording("cut", sealed=False, ended=False)
    open_one = record_on("open")
    looked = library.refresh([shelf], nothing)
    states = {hit.folder.name: hit.state for hit in library.search([shelf], Wanted())}
    open_one.close("stopped")
    assert states["open"] == "being recorded"
    assert shelf / "open" not in looked.unsealed
    if states["cut"] == "not sealed":  # its recorder is gone, as after a crash
        assert looked.unsealed == (cut,)
    looked = library.refresh([shelf], nothing)
    assert shelf / "open" in looked.unsealed
    seal(shelf / "open", recovered=True)
    library.refresh([shelf], nothing)
    states = {hit.folder.name: hit.state for hit in library.search([shelf], Wanted())}
    assert states["open"] == "recovered"


def test_a_folder_that_is_gone_is_said_and_what_was_in_it_is_marked(
    library, shelf, recording, tmp_path
):
    recording("a")
    stick = tmp_path / "stick"
    shutil.move(shelf, stick)
    shelf.mkdir()
    recording("b", 1)
    library.refresh([shelf, stick], nothing)
    shutil.move(stick, tmp_path / "pulled")
    looked = library.refresh([shelf, stick], nothing)
    assert looked.gone == ((stick, "it is not there now"),)
    away = {hit.folder.name: hit.away for hit in library.search([shelf, stick], Wanted())}
    assert away == {"a": True, "b": False}
    assert library.judge_missing([shelf, stick], nothing) == 1
    shutil.move(tmp_path / "pulled", stick)
    assert library.refresh([shelf, stick], nothing).gone == ()
    assert not any(hit.away for hit in library.search([shelf, stick], Wanted()))
    library.forget(stick)
    assert library.search([stick], Wanted()) == ()
    assert (stick / "a").is_dir()


@pytest.mark.parametrize("damage", ["text", "empty", "middle", "table", "letters"])
def test_a_damaged_index_is_thrown_away_made_anew_and_said(library, shelf, recording, damage):
    for number in range(12):
        recording(f"r{number}", number)
    library.refresh([shelf], nothing)
    path = library.path
    if damage == "table":
        with sqlite3.connect(path) as connection:
            connection.execute("DROP TABLE belongs")
        connection.close()
    else:
        content = bytearray(path.read_bytes())
        if damage == "middle":
            content[4096:] = b"\xff" * (len(content) - 4096)
        if damage == "letters":  # SQLite's own words about it are then no text either
            content = content.replace(b"CREATE TABLE", b"CREATE \xf4ABLE")
        path.write_bytes({"text": b"no database at all" * 90, "empty": b""}.get(damage, content))
    made = library.times_made
    assert library.refresh([shelf], nothing).known == 12
    assert len(library.search([shelf], Wanted())) == 12
    assert library.times_made == made + 1
    assert ("thrown away" in library.told) is (damage != "empty")


def test_a_search_survives_damage_and_tells_that_the_index_is_new(library, shelf, recording):
    recording("a")
    library.refresh([shelf], nothing)
    made = library.times_made
    library.path.write_bytes(b"\x00" * 9000)
    assert library.search([shelf], Wanted()) == ()
    assert library.times_made == made + 1


def test_an_index_that_can_not_be_kept_is_made_elsewhere_and_said(tmp_path, shelf, recording):
    recording("a")
    (tmp_path / "file").write_bytes(b"")
    with Library(tmp_path / "file" / "index.sqlite3") as library:
        assert library.refresh([shelf], nothing).known == 1
        assert len(library.search([shelf], Wanted())) == 1
        assert "can't be kept" in library.told
        own = library.path
    assert not own.exists()


def test_only_its_owner_may_read_the_index(library, shelf):
    library.refresh([shelf], nothing)
    if os.name == "posix":
        assert stat.S_IMODE(library.path.stat().st_mode) == 0o600


def test_many_threads_may_begin_it_at_once(tmp_path, shelf, recording):
    recording("a")
    for number in range(15):
        with Library(tmp_path / f"index-{number}.sqlite3") as library:
            found, start = [], threading.Barrier(6)

            def look(library=library, found=found, start=start):
                start.wait()
                found.append(library.refresh([shelf], nothing).known)
                found.append(len(library.search([shelf], Wanted())))

            threads = [threading.Thread(target=look) for _ in range(6)]
            for thread in threads:
                thread.start()
            for thread in threads:
                thread.join()
            assert found == [1] * 12
            assert library.told == ""


def test_several_programs_and_threads_share_one_index(library, shelf, recording):
    for number in range(12):
        recording(f"r{number}", number)
    library.refresh([shelf], nothing)
    library.forget(shelf)
    program = (
        "import sys\nfrom pathlib import Path\nfrom meterlog.work.library import Library\n"
        "with Library(Path(sys.argv[1])) as one:\n"
        "    for _ in range(5): one.refresh([Path(sys.argv[2])], lambda part: None)\n"
        "    print(one.judge_missing([Path(sys.argv[2])], lambda part: None), one.told)"
    )
    command = [sys.executable, "-c", program, str(library.path), str(shelf)]
    children = [
        subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        for _ in range(2)
    ]
    found = []
    threads = [
        threading.Thread(
            target=lambda: found.append([library.refresh([shelf], nothing).known for _ in range(5)])
        )
        for _ in range(3)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    said = [child.communicate(timeout=240) for child in children]
    assert found == [[12] * 5] * 3
    assert all(child.returncode == 0 for child in children), said
    hits = library.search([shelf], Wanted())
    assert [hit.verdict for hit in hits] == [Verdicts.IN_ORDER] * 12


def test_links_and_copies_in_packs_are_not_walked_into(library, shelf, recording):
    folder = recording("a")
    (shelf / "loop").symlink_to(shelf, target_is_directory=True)
    pack = shelf / "pack"
    shutil.copytree(folder, pack / "data" / "before")
    (pack / "bagit.txt").write_bytes(b"")
    assert library.refresh([shelf], nothing).known == 1


def test_work_that_is_broken_off_keeps_what_was_read(library, shelf, recording):
    for number in range(3):
        recording(f"r{number}", number)

    class Enough(Exception):
        pass

    def stop(part):
        if part > 0.4:
            raise Enough

    library.refresh([shelf], nothing)
    with pytest.raises(Enough):
        library.judge_missing([shelf], stop)
    left = library.refresh([shelf], nothing).to_judge
    assert 0 < left < 3
    assert library.refresh([shelf], nothing, most=0).left == 0
    recording("r3", 3)
    looked = library.refresh([shelf], nothing, most=0)
    assert (looked.read, looked.left, looked.known) == (0, 1, 4)


def test_reading_and_judging_in_another_process(library, shelf, recording, monkeypatch):
    recording("a")
    recording("b", 1)
    parts = []
    assert read_apart(library.path, [shelf], parts.append) == 2
    assert judge_apart(library.path, [shelf], 1, parts.append) == 1
    assert library.refresh([shelf], nothing).to_judge == 1
    monkeypatch.setattr(sys, "executable", str(shelf / "none"))
    with pytest.raises(MeterlogError, match="can't go on"):
        judge_apart(library.path, [shelf], 1, parts.append)


def test_a_process_that_is_stopped_ends(library, shelf, recording):
    recording("a")

    class Enough(Exception):
        pass

    def stop(_part):
        raise Enough

    with pytest.raises(Enough):
        read_apart(library.path, [shelf], stop)


MARKS = {
    Origin.MEASURED: "",
    Origin.SIMULATED: "SIMULATED",
    Origin.IMPORTED: "IMPORTED",
    Origin.TYPED: "TYPED BY HAND",
}


@pytest.mark.parametrize("origin", list(Origin))
def test_what_no_meter_sent_is_marked_in_the_index(recording, origin):
    assert recording_facts(recording("a", origin=origin)).mark == MARKS[origin]
