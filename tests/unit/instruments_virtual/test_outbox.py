from meterlog.instruments.virtual.outbox import Outbox


class Line:
    """A line that takes so many bytes and then no more."""

    def __init__(self, room):
        self.room = room
        self.taken = b""

    def send(self, data):
        if self.room == 0:
            raise BlockingIOError
        part = data[: self.room]
        self.taken += part
        self.room -= len(part)
        return len(part)


def test_a_message_that_went_in_part_is_finished_before_the_next():
    line = Line(5)
    box = Outbox(line.send)
    box.put(b"12345678\n")
    box.put(b"lost\n")
    line.room = 100
    box.put(b"next\n")
    assert line.taken == b"12345678\nnext\n"
    assert box.dropped == 1


def test_a_full_line_costs_whole_messages_only():
    line = Line(4)
    box = Outbox(line.send)
    for message in (b"one\n", b"two\n", b"three\n"):
        box.put(message)
    line.room = 100
    box.put(b"four\n")
    assert line.taken == b"one\nfour\n"
    assert box.dropped == 2


def test_what_a_reader_left_half_read_is_not_finished_for_the_next_one():
    line = Line(2)
    box = Outbox(line.send)
    box.put(b"one\n")
    box.clear()
    line.room = 100
    box.put(b"two\n")
    assert line.taken == b"ontwo\n"
