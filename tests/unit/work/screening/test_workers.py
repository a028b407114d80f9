"""Work side by side: processes, threads, a cluster; a worker that dies costs one recording."""

import os

import pytest

from meterlog.model.errors import LinkNotFound, UsageError
from meterlog.work.screening import Workers
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
    monkeypatch.setattr("meterlog.work.screening.workers._CONNECT_S", 0.5)
    with pytest.raises((LinkNotFound, UsageError), match=r"no Dask scheduler answers there"):
        screened(made_shelf, workers=Workers(cluster="tcp://127.0.0.1:9"))
