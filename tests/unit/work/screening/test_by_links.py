"""A recording is one recording, by whatever link its folder was given."""

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.work.amendments import add_amendment
from meterlog.work.screening.places import places_in

_EDIT = Amendment(AmendmentKind.LIMIT, "open_current_a", None, "0.3", "0.4", "A. B.", "so")


def test_an_edit_made_through_a_link_is_seen(make, screened, of, tmp_path):
    folder = make("run", 0)
    link = tmp_path / "link"
    link.symlink_to(folder)
    screened(link)
    add_amendment(link, _EDIT)
    said, rows = screened(link)
    assert said.reviewed == 1
    assert [row["edits"] for row in of(rows)] == [1]


def test_given_twice_it_is_found_once(make, tmp_path):
    folder = make("run", 0)
    (tmp_path / "link").symlink_to(folder)
    (tmp_path / "shelf").symlink_to(folder.parent)
    given = [str(tmp_path / "link"), str(tmp_path / "shelf"), f"file://{tmp_path}/link"]
    found = places_in([str(folder.parent), *given], lambda: None)
    assert [one.url for one in found] == [str(folder)]
    assert places_in(given, lambda: None) == found
