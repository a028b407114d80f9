"""Makes the files of languages: ``.ts`` brought up to the source, ``.qm`` and templates from it.

python tests/languages/make.py            all of them
python tests/languages/make.py --new fr   another language, to be filled in (Qt Linguist)
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as Xml
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from collect import WINDOW, Text, engine_templates, window_texts

FOLDER = WINDOW / "languages"


def calls(texts: list[Text], templates: list[str]) -> str:
    """Write texts as calls that lupdate reads."""
    lines = ["from PySide6.QtCore import QCoreApplication"]
    for one in texts:
        meaning, count = (repr_of(one.meaning), ", 2") if one.counts else (repr_of(one.meaning), "")
        lines.append(
            f'QCoreApplication.translate("window", {repr_of(one.words)}, {meaning}{count})'
        )
    known = {one.words for one in texts}
    lines += [
        f'QCoreApplication.translate("engine", {repr_of(one)})'
        for one in templates
        if one not in known
    ]
    return "\n".join(lines) + "\n"


def repr_of(words: str) -> str:
    """Write a string as lupdate understands it: in double quotes, plain escapes."""
    for plain, escaped in (("\\", "\\\\"), ('"', '\\"'), ("\n", "\\n"), ("\t", "\\t")):
        words = words.replace(plain, escaped)
    return f'"{words}"'


def bring_up(file: Path) -> None:
    """Bring a ``.ts`` up to the source: new texts come in unfinished, those gone go out."""
    with tempfile.TemporaryDirectory() as place:
        source = Path(place) / "texts.py"
        source.write_text(calls(window_texts(), engine_templates()), "utf-8")
        _run("pyside6-lupdate", str(source), "-ts", str(file), "-no-obsolete", "-locations", "none",
             "-disable-heuristic", "similartext", "-disable-heuristic", "sametext",
             "-source-language", "en", "-target-language", file.stem)  # fmt: skip


def compile_words(file: Path, out: Path) -> None:
    """Make ``.qm`` of a ``.ts``, and beside it the texts of the engine that have a translation."""
    # Beside it first: a window that reads the old one as it is written over would crash.
    made = out.with_suffix(".part.qm")
    _run("pyside6-lrelease", "-silent", "-nounfinished", str(file), "-qm", str(made))
    made.replace(out)
    out.with_suffix(".json").write_text(
        json.dumps(finished_texts(file), ensure_ascii=False, indent=0) + "\n", "utf-8"
    )


def finished_texts(file: Path) -> list[str]:
    """Give what a ``.ts`` translates and the engine may say: its templates, and plain words.

    The window's own words are among these, as it says the same of a finding here and there.
    """
    found = []
    for context in Xml.parse(file).getroot().iter("context"):
        engine = context.findtext("name") == "engine"
        for message in context.iter("message"):
            said = message.find("translation")
            source = message.findtext("source") or ""
            plain = engine or "{" not in source
            if said is not None and said.get("type") is None and plain:
                found.append(source)
    return sorted(set(found))


def _run(*words: str) -> None:
    tool = Path(sys.executable).parent / words[0]
    done = subprocess.run([tool, *words[1:]], capture_output=True, text=True, check=False)
    if done.returncode:
        sys.exit(f"{words[0]} failed: {done.stdout}{done.stderr}")


def main() -> None:
    """Do what the command line says."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--new", metavar="LANGUAGE", help="begin another language, such as fr")
    options = parser.parse_args()
    files = sorted(FOLDER.glob("*.ts"))
    if options.new:
        files.append(FOLDER / f"{options.new}.ts")
    for file in files:
        bring_up(file)
        compile_words(file, file.with_suffix(".qm"))
        print(f"{file.name}: {len(finished_texts(file))} texts that the engine may say")


if __name__ == "__main__":
    main()
