"""What somebody else has put where the tables go is touched by no screening."""

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from meterlog.model.errors import UsageError


@pytest.fixture
def out(tmp_path):
    (tmp_path / "out").mkdir()
    return tmp_path / "out"


def test_other_files_beside_the_parts_stay(make, screened, out):
    make("run", 0)
    others = [out / "parts" / name for name in ("FM-20-label.jpg", "prices.parquet", "sub/a.csv")]
    for one in others:
        one.parent.mkdir(parents=True, exist_ok=True)
        one.write_text("somebody's")
    said, _ = screened(out.parent / "own")
    assert (said.recordings, said.reviewed) == (1, 1)
    assert [one.read_text() for one in others] == ["somebody's"] * 3
    assert sorted(one.name for one in (out / "parts").iterdir()) == [
        "FM-20-label.jpg", "prices.parquet", "sub",
    ]  # fmt: skip


@pytest.mark.parametrize("name", ["findings.parquet", "baselines.parquet"])
@pytest.mark.parametrize("foreign", ["table", "text", "folder", "nothing in it"])
def test_tables_of_others_are_refused_before_any_work(make, screened, out, name, foreign):
    make("run", 0)
    place = out / name
    if foreign == "folder":
        place.mkdir()
    elif foreign == "table":
        pq.write_table(pa.table({"amps": [1.0]}), place)
    else:
        place.write_text("price,1" if foreign == "text" else "")
    before = None if foreign == "folder" else place.read_bytes()
    with pytest.raises(UsageError, match=f"{name}: is no table of a screening"):
        screened(out.parent / "own")
    assert before is None or place.read_bytes() == before
    assert not (out / "parts").exists()


@pytest.mark.parametrize("name", ["findings.parquet", "baselines.parquet"])
def test_a_damaged_table_of_its_own_is_made_anew(make, screened, out, name):
    make("run", 0)
    _, wanted = screened(out.parent / "own")
    whole = (out / name).read_bytes()
    (out / name).write_bytes(whole[: len(whole) // 2])
    _, rows = screened(out.parent / "own")
    assert rows == wanted
    assert (out / name).read_bytes() == whole


def test_a_file_is_no_folder_for_tables(make, screened, tmp_path):
    make("run", 0)
    (tmp_path / "taken").write_text("x")
    with pytest.raises(UsageError, match="taken: is no folder"):
        screened(tmp_path / "own", out="taken")
    assert (tmp_path / "taken").read_text() == "x"
