"""Two programs seal one recording at the same moment: one does, the other is told the truth."""

import multiprocessing
import threading

import pytest

from meterlog.evidence import verify_folder
from meterlog.model.errors import EvidenceError
from meterlog.recording import Recording, find_unsealed, layout, seal, sealing

BUSY = "is being recorded or sealed by a running program."


def _seal(folder, recovered, both, told):
    both.wait()
    try:
        seal(folder, recovered=recovered)
        told.put("sealed")
    except EvidenceError as error:
        told.put(error.message)


@pytest.mark.pty
def test_of_two_at_once_one_seals_and_the_other_says_that_it_is_done(maker):
    fork = multiprocessing.get_context("fork")
    for number in range(20):
        folder = maker.small(f"run-{number}").folder
        both, told = fork.Barrier(2), fork.SimpleQueue()
        pair = [fork.Process(target=_seal, args=(folder, one, both, told)) for one in (True, False)]
        for one in pair:
            one.start()
        said = sorted(told.get() for _ in pair)
        for one in pair:
            one.join()
        # On a slow disk the other may not wait for the end of it.
        assert said[0] in {"is sealed already.", BUSY}
        assert said[1] == "sealed"
        assert verify_folder(folder).intact
        assert not (folder / layout.LOCK).exists()


def test_while_one_is_being_sealed_nobody_takes_it_for_one_that_was_cut_off(maker, monkeypatch):
    folder = maker.small().folder
    real, begun, go_on = sealing.sha256_of, threading.Event(), threading.Event()

    def slow(path):
        begun.set()
        assert go_on.wait(60)
        return real(path)

    monkeypatch.setattr(sealing, "sha256_of", slow)
    first = threading.Thread(target=seal, args=(folder,))
    first.start()
    assert begun.wait(60)
    try:
        assert find_unsealed(folder) == ()
        with pytest.raises(EvidenceError, match="recorded or sealed by a running program"):
            seal(folder, recovered=True)
    finally:
        go_on.set()
        first.join()
    assert Recording.open(folder).state == "sealed"
    assert verify_folder(folder).intact


@pytest.mark.parametrize("name", [layout.MANIFEST, layout.BAGIT])
def test_a_seal_is_not_written_through_a_link(maker, tmp_path, name):
    folder, target = maker.small().folder, tmp_path / "mine.txt"
    target.write_text("mine")
    (folder / f"{name}.partial").symlink_to(target)
    (folder / name).symlink_to(tmp_path / "absent")
    seal(folder)
    assert target.read_text() == "mine"
    assert not (tmp_path / "absent").exists()
    assert verify_folder(folder).intact
