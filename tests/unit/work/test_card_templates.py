"""Templates: named cards, without anything of the one job they were made from."""

import pytest

from meterlog.model.errors import UsageError
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.profile import settings_folder
from meterlog.work.card_templates import CardTemplates

CARD = JobCard(customer="Jo Invented", claimant="Invented Workshop", new_part=PartIdentity("", "F"))


def test_a_template_is_kept_by_name_without_the_customer(tmp_path):
    store = CardTemplates(tmp_path / "new")
    assert store.names() == ()
    path = store.keep("Fan motor äö", CARD)
    assert "Jo" not in path.read_text("utf-8")
    assert CardTemplates(tmp_path / "new").names() == ("Fan motor äö",)
    assert store.load("Fan motor äö") == JobCard(
        claimant="Invented Workshop", new_part=PartIdentity(number="F")
    )


def test_they_are_in_the_folder_of_the_users_settings():
    assert CardTemplates().folder.parent == settings_folder()


@pytest.mark.parametrize(
    "name", ["", " a", "../a", "a/b", "a\\b", ".a", "a.json", "a\n", "CON", "com1", "x" * 61, "a:b"]
)
def test_a_name_that_no_file_can_have_everywhere_is_refused(tmp_path, name):
    store = CardTemplates(tmp_path / "in")
    for attempt in (lambda: store.keep(name, CARD), lambda: store.load(name)):
        with pytest.raises(UsageError, match="is no name for a template"):
            attempt()
    assert list(tmp_path.iterdir()) == []


def test_none_is_written_over_and_none_is_empty(tmp_path):
    store = CardTemplates(tmp_path)
    store.keep("fan", CARD)
    with pytest.raises(UsageError, match="such a template already"):
        store.keep("fan", JobCard(claimant="Other"))
    assert store.load("fan").claimant == "Invented Workshop"
    with pytest.raises(UsageError, match="nothing on this card fits another job"):
        store.keep("empty", JobCard(customer="Jo"))


def test_an_unknown_one_gets_the_names_there_are(tmp_path):
    store = CardTemplates(tmp_path)
    with pytest.raises(UsageError, match="Make one with --as-template"):
        store.load("fan")
    store.keep("fan", CARD)
    with pytest.raises(UsageError, match="There are: fan"):
        store.load("fun")
