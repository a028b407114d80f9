"""Pages are filled: what needs a page of its own waits, and words go on in the meantime."""

from meterlog.evidence.claim_pdf.page_look import BODY


def _pages_with(words, drawn, sheets):
    return [at for at, page in enumerate(drawn(sheets)) if any(one[2] == words for one in page)]


def test_a_block_goes_where_there_is_room(sheets, drawn):
    rooms = []
    sheets.block(100.0, rooms.append)
    assert rooms == [sheets.bottom - sheets.top]
    assert len(sheets.pages) == 1


def test_a_block_without_room_waits_while_words_fill_the_page(sheets, drawn):
    sheets.y = sheets.bottom - 100.0

    def lay(room):
        assert room == sheets.bottom - sheets.top
        sheets.words("picture")
        sheets.y += 400.0

    sheets.words("before")
    sheets.block(400.0, lay)
    for number in range(12):
        sheets.words(f"after {number}")
    assert _pages_with("after 0", drawn, sheets) == [0]
    assert _pages_with("picture", drawn, sheets) == [1]
    (last,) = _pages_with("after 11", drawn, sheets)
    assert last == 1
    # The picture stands at the top: words go on below it.
    page = drawn(sheets)[1]
    assert page[0][2] == "picture"


def test_blocks_wait_in_turn_and_none_is_lost(sheets, drawn):
    sheets.y = sheets.bottom - 50.0
    sheets.words("first")

    def lay(name):
        def one(_room):
            sheets.words(name)
            sheets.y += 600.0

        return one

    for name in ("one", "two", "three"):
        sheets.block(600.0, lay(name))
    sheets.heading("Next chapter", chapter=True)
    places = [_pages_with(name, drawn, sheets) for name in ("one", "two", "three")]
    assert places == [[1], [2], [3]]
    assert _pages_with("Next chapter", drawn, sheets) == [3]


def test_short_paragraphs_are_not_parted(sheets, drawn):
    sheets.words("zero")
    sheets.y = sheets.bottom - 1.5 * sheets.line_height(BODY)
    sheets.words("one\ntwo\nthree")
    assert _pages_with("one", drawn, sheets) == _pages_with("three", drawn, sheets) == [1]


def test_a_waiting_block_does_not_come_to_lie_within_a_paragraph(sheets, drawn):
    sheets.words("before")
    sheets.y = sheets.bottom - 3.5 * sheets.line_height(BODY)

    def lay(_room):
        sheets.words("picture")

    sheets.block(400.0, lay)
    sheets.words("\n".join(f"line {number}" for number in range(8)))
    assert [one[2] for one in drawn(sheets)[1]] == ["picture", *(f"line {k}" for k in range(8))]


def test_a_paragraph_longer_than_a_page_is_parted_all_the_same(sheets, drawn):
    sheets.words("before")
    sheets.y = sheets.bottom - 100.0
    sheets.block(400.0, lambda _room: sheets.words("picture"))
    lines = [f"line {number}" for number in range(120)]
    sheets.words("\n".join(lines))
    sheets.settle()
    said = [one[2] for page in drawn(sheets) for one in page]
    assert [one for one in said if one != "picture"] == ["before", *lines]
    assert said.count("picture") == 1
