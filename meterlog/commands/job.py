"""``meterlog job``: show and fill in a job card, and say what is still missing."""

from __future__ import annotations

import argparse
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json, line_width, remark, short

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from meterlog.model.job_card import JobCard

_WORDS = """\
FILE is the card: one JSON file, saved at every change so that a crash loses nothing. Nothing on it
is mandatory. Shows what is stated, what a reviewer will ask for and is not stated, and what looks
wrong, such as a VIN whose check digit does not fit; that is a warning only.

KEY is one of: work_order, claim_number, claimant, customer, vehicle, plate, vin, in_service,
odometer, odometer_out, hours, complaint, cause, correction, fault_codes, failed_on, repaired_on,
old_part.name, old_part.number, old_part.serial, old_part.date_code, old_part_fitted, old_part_kept,
new_part.name, new_part.number, new_part.serial, new_part.date_code, invoice, fitted_by, technician,
labour, ambient, battery, filter, flap, maintenance, notes, photos.

A template fills what is empty. --as-template leaves out what belongs to one job only, such as
customer, complaint, serial numbers, dates and photos."""

_EXAMPLES = """\
meterlog job job-4711/card.json --set work_order=4711 --set "complaint=dead until I hit it"
meterlog job job-4711/card.json --set old_part.number=FM-20 --photo label.jpg
meterlog job job-4711/card.json --from-template "fan motor" --json"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "job", _WORDS, _EXAMPLES)
    parser.add_argument(
        "file", metavar="FILE", type=Path, help="the card; begun when something is stated"
    )
    parser.add_argument(
        "--set",
        metavar="KEY=VALUE",
        action="append",
        default=[],
        help="state something, or with an empty VALUE take it back; repeat for each",
    )
    parser.add_argument(
        "--photo",
        metavar="PICTURE",
        type=Path,
        action="append",
        default=[],
        help="add a picture file, copied beside the card if need be; repeat for each",
    )
    parser.add_argument("--from-template", metavar="NAME", help="fill what is empty from it")
    parser.add_argument("--as-template", metavar="NAME", help="keep the card for other jobs")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Change the card as asked, then show it."""
    from meterlog.model.card_doubts import doubt_words
    from meterlog.model.job_card import card_to_dict, missing_words
    from meterlog.work.card_photos import photo_words, taking_photos
    from meterlog.work.card_templates import CardTemplates
    from meterlog.work.job_cards import change_card, load_card

    path: Path = options.file
    change = _change(options)
    if change is None:
        card = load_card(path)
    else:
        with taking_photos(path) as taken:
            card = change_card(path, partial(change, taken))
    if options.as_template is not None:
        kept = CardTemplates().keep(options.as_template, card)
        remark(f"kept as template {options.as_template!r}: {kept}")
    missing = missing_words(card)
    warnings = (*doubt_words(card), *photo_words(card, path))
    if options.json:
        answer_json(
            {
                "file": str(path),
                "card": card_to_dict(card),
                "missing": list(missing),
                "warnings": list(warnings),
            }
        )
        return 0
    answer("\n".join(_lines(path, card, missing, warnings)))
    return 0


def _change(
    options: argparse.Namespace,
) -> Callable[[Callable[[Path], str], JobCard], JobCard] | None:
    """Give what the options do to a card, by what takes a photo; None where they only show it."""
    from meterlog.model.job_card import filled, with_value
    from meterlog.work.card_templates import CardTemplates

    stated = _stated(options.set)
    pictures = [_picture(one) for one in options.photo]
    name = options.from_template
    template = None if name is None else CardTemplates().load(name)
    if not stated and not pictures and template is None:
        return None

    def change(taken: Callable[[Path], str], card: JobCard) -> JobCard:
        for key, text in stated.items():
            card = with_value(card, key, text)
        # Last: a picture is copied only where nothing else is wrong.
        photos = [taken(one) for one in pictures]
        new = [one for one in dict.fromkeys(photos) if one not in card.photos]
        card = with_value(card, "photos", "\n".join((*card.photos, *new)))
        return card if template is None else filled(card, template)

    return change


def _picture(path: Path) -> Path:
    from meterlog.model.errors import UsageError
    from meterlog.profile.full_path import full_path
    from meterlog.work.claim_photos import FORMS, why_not_taken

    if not path.is_file():
        raise UsageError(
            "there is no such file.",
            subject=f"--photo {path}",
            remedy="Give the path of a picture file.",
        )
    # By what it is, not by what leads to it; and now, not when the pack is made and sent.
    why = why_not_taken(full_path(path))
    if why:
        raise UsageError(
            f"no claim takes it: {why}.",
            subject=f"--photo {path}",
            remedy=f"Give a whole picture ({', '.join(FORMS)}), or leave it out; nothing was"
            " changed on the card.",
        )
    return path


def _stated(entries: Sequence[str]) -> dict[str, str]:
    from meterlog.model.errors import UsageError

    stated: dict[str, str] = {}
    for entry in entries:
        key, equals, text = entry.partition("=")
        if not equals:
            raise UsageError(
                "does not say what to state.",
                subject=f"--set {entry}",
                remedy="Give KEY=VALUE, such as work_order=4711.",
            )
        key = key.strip().lower().replace("-", "_")
        if key in stated:
            raise UsageError("is given twice.", subject=f"--set {key}", remedy="Give it once.")
        stated[key] = text
    return stated


def _lines(path: Path, card: JobCard, missing: Sequence[str], warnings: Sequence[str]) -> list[str]:
    lines = [f"Job card {short(path)}", *_values(card)]
    for head, sentences in (
        ("A reviewer will ask, and the card does not say:", missing),
        ("Look again:", warnings),
    ):
        if sentences:
            lines += ["", head]
        for sentence in sentences:
            lines += _wrapped(sentence, "  ", "    ")
    return lines


def _values(card: JobCard) -> list[str]:
    from meterlog.model.card_fields import FIELDS
    from meterlog.model.job_card import value_of

    said = [(field.words, value_of(card, field.key)) for field in FIELDS]
    said = [(words, text) for words, text in said if text]
    if not said:
        return ["  nothing is stated yet"]
    width = max(len(words) for words, _ in said) + 2
    lines: list[str] = []
    for words, text in said:
        first, *rest = text.splitlines()
        lines += _wrapped(first, f"  {words:<{width}}", " " * (width + 2))
        for line in rest:
            lines += _wrapped(line, " " * (width + 2), " " * (width + 2))
    return lines


def _wrapped(text: str, lead: str, further: str) -> list[str]:
    import textwrap

    return textwrap.wrap(
        text,
        line_width(),
        initial_indent=lead,
        subsequent_indent=further,
        break_long_words=False,
        break_on_hyphens=False,
    ) or [lead.rstrip()]
