"""The README's pictures are there, are real pictures of the window, and none lies about unused."""

import re
from pathlib import Path

from PIL import Image

ROOT = Path(__file__).parents[2]
PLACE = ROOT / "tests" / "pictures"


def test_every_picture_of_the_readme_is_there_with_words_for_who_can_not_see_it():
    shown = re.findall(r"!\[([^\]]*)\]\(([^)]+)\)", (ROOT / "README.md").read_text("utf-8"))
    assert {ROOT / path for _, path in shown} == set(PLACE.glob("*.png"))
    assert all(len(words) > 20 for words, _ in shown)


def test_pictures_have_the_size_of_the_window_and_are_not_empty():
    for path in PLACE.glob("*.png"):
        with Image.open(path) as picture:
            assert picture.size == (1280, 800)
            assert len(picture.convert("RGB").getcolors(2**24)) > 20
        assert path.stat().st_size < 150_000
