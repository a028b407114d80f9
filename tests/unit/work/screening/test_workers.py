"""Work side by side: processes, threads, a cluster; a worker that dies costs one recording."""

import importlib
import json
import os
import subprocess
import sys
import time

import pytest

from meterlog.model.errors import LinkNotFound, UsageError
from meterlog.work.screening import Workers
from meterlog.work.screening.cluster import ADDRESS
from meterlog.work.screening.places import Place, places_in
from meterlog.work.screening.reviewing import Asked
from meterlog.work.screening.workers import review_lots


class Deadly(Place):
    """Ends the worker that is given it, as running out of memory does."""

    def __reduce__(self):
        return os._exit, (3,)


@pytest.mark.slow
@pytest.mark.parametrize("threads", [False, True])
def test_however_many_work_the_rows_are_the_same(made_shelf, screened, threads):
    _, wanted = screened(made_shelf, out="alone")
    _, rows = screened(made_shelf, out="many", workers=Workers(2, threads))
    assert rows == wanted


@pytest.mark.slow
def test_a_recording_at_which_a_worker_dies_is_a_row(made_shelf):
    places = places_in([str(made_shelf)], lambda: None)[:5]
    deadly = Deadly("deadly", local=True, key="k")
    lots = [tuple(places[:2]), (places[2], deadly), tuple(places[3:])]
    found = {}
    review_lots(
        lots,
        Asked("a"),
        Workers(2),
        lambda lot, rows: found.update({row["folder"]: row for row in rows.to_pylist()}),
    )
    assert found["deadly"]["reason"].startswith("the program broke off")
    assert found["deadly"]["state"] == "can't be read"
    assert set(found) == {*(one.url for one in places), "deadly"}
    assert all(found[one.url]["outcome"] for one in places[:3])


@pytest.mark.slow
def test_a_cluster_gives_the_same_rows(made_shelf, screened):
    distributed = pytest.importorskip("distributed")
    _, wanted = screened(made_shelf, out="alone")
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None, protocol="tcp"
    ) as cluster:
        said, rows = screened(
            made_shelf, out="far", workers=Workers(cluster=cluster.scheduler_address)
        )
    assert rows == wanted
    assert said.reviewed == 15


def test_without_a_scheduler_it_is_told(made_shelf, screened, monkeypatch):
    pytest.importorskip("distributed")
    monkeypatch.setattr("meterlog.work.screening.cluster._CONNECT_S", 0.5)
    with pytest.raises((LinkNotFound, UsageError), match=r"no Dask scheduler answers there"):
        screened(made_shelf, workers=Workers(cluster="tcp://127.0.0.1:9"))


@pytest.fixture
def cluster(tmp_path):
    """A scheduler and a worker, each a program of its own; its address, and what kills the one."""
    pytest.importorskip("distributed")
    told = tmp_path / "scheduler.json"
    common = ["--scheduler-file", str(told), "--no-dashboard"]
    words = {
        "scheduler": ["--host", "127.0.0.1", "--port", "0", *common],
        "worker": ["--nthreads", "1", "--no-nanny", *common],
    }
    programs = {
        name: subprocess.Popen(
            [sys.executable, "-m", f"distributed.cli.dask_{name}", *more],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        for name, more in words.items()
    }
    try:
        until = time.monotonic() + 60.0
        while not (told.exists() and told.read_text().endswith("}")):
            assert time.monotonic() < until
            time.sleep(0.1)
        address = json.loads(told.read_text())["address"]
        with importlib.import_module("distributed").Client(address, set_as_default=False) as asked:
            asked.wait_for_workers(1, timeout=240)
        yield address, programs["scheduler"].kill
    finally:
        for one in programs.values():
            one.kill()
            one.wait()


@pytest.mark.slow
def test_a_scheduler_that_goes_away_is_told_and_what_was_done_is_kept(
    made_shelf, screened, cluster
):
    address, kill = cluster
    done = []

    def progress(now, _):
        if now and not max(done, default=0):
            kill()
        done.append(now)

    with pytest.raises(LinkNotFound, match="the Dask scheduler went away"):
        screened(made_shelf, workers=Workers(cluster=address), progress=progress)
    said, _ = screened(made_shelf)
    assert said.reviewed == 15 - max(done)
    assert said.recordings == 15


@pytest.mark.parametrize("address", ["nonsense", "tcp://", "host", "tcp://host:port"])
def test_what_is_no_address_is_refused_at_once(made_shelf, screened, address):
    pytest.importorskip("distributed")
    with pytest.raises(UsageError, match="is no address of a Dask scheduler"):
        screened(made_shelf, workers=Workers(cluster=address))


def test_addresses_of_schedulers_are_taken():
    for one in (
        "tcp://127.0.0.1:8786",
        "h-1.local:8786",
        "tls://[::1]:8786",
        "inproc://10.0.0.1/7",
    ):
        assert ADDRESS.fullmatch(one)
