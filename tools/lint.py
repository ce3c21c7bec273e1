#!/usr/bin/python3
"""What the compilers don't say: include directions (src/layers.txt), words that must not be committed, files that have
grown too long, and the format. Prints file:line: reason, and fails if it printed any."""
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
LONGEST = 400  # lines; a file is one thing

# The libraries of src/layers.txt, by the headers that give them away. What matches none is the standard library.
LIBRARIES = {
    "expected": r"tl/",
    "clipper": r"polyclipping/",
    "json": r"nlohmann/",
    "cli11": r"CLI/",
    "imgui": r"imgui",
    "glad": r"(glad|GLES3)/",
    "glfw": r"GLFW/",
    "stb": r"stb_",
    "alsa": r"alsa/",
    "cairo": r"cairo|ft2build",
    "posix": r"(sys/|(unistd|fcntl|poll|signal|time|stdlib|string|pthread|pwd|dlfcn)\.h)",
    "a library that src/layers.txt does not know": r".*[/.]",
}
# The first character of each stands in brackets so that this file may be linted like any other.
FORBIDDEN = {
    r"\b[T]ODO\b|\b[F]IXME\b|\b[X]XX\b": "unfinished work goes to the issues",
    r"\b(deb|registry|pypi|archive|ftp|security)\.[a-z]+\.(org|com)\b": "a package host: take it from the machine's own configuration",
    r"(^|[^a-z0-9_.])/(work|farm|home|root)/": "a path of somebody's machine",
    r"(CHECK|REQUIRE)\([t]rue\)": "a test that cannot fail",
}


def read_layers(text):
    """folder -> (the folders it may include, the libraries it may include)"""
    layers = {}
    for line in text.splitlines():
        if row := re.match(r"([a-z]+):([^|]*)\|(.*)", line):
            layers[row[1]] = set(row[2].split()), set(row[3].split())
    return layers


def library_of(header):
    return next((name for name, pattern in LIBRARIES.items() if re.match(pattern, header)), None)


def check_includes(layers, folder, text):
    """Yields (line, reason) for each include in a file of src/<folder> that layers does not allow."""
    inner, outer = layers[folder]
    for number, line in enumerate(text.splitlines(), 1):
        if include := re.match(r'\s*#\s*include\s*"([^"]+)"', line):
            other, slash, _ = include[1].partition("/")
            if not slash or other not in layers:
                yield number, f'"{include[1]}": includes are written from src, as "folder/file.h"'
            elif other != folder and other not in inner:
                yield number, f"{folder} may not include {other}: see src/layers.txt"
        elif include := re.match(r"\s*#\s*include\s*<([^>]+)>", line):
            library = library_of(include[1])
            if library and library not in outer:
                yield number, f"{folder} may not include <{include[1]}> ({library}): see src/layers.txt"


def check_words(text):
    for number, line in enumerate(text.splitlines(), 1):
        for pattern, reason in FORBIDDEN.items():
            if word := re.search(pattern, line):
                yield number, f"'{word[0].strip()}': {reason}"


def check_table(layers):
    """A folder may only include folders above it, so that no two can include each other."""
    above = set()
    for folder, (inner, outer) in layers.items():
        for name in sorted(inner - above):
            yield 1, f"{folder} includes {name}, which does not stand above it"
        for name in sorted(outer - LIBRARIES.keys()):
            yield 1, f"{folder}: tools/lint.py does not know the library {name}"
        above.add(folder)


def check_self():
    """A lint that can't fail is worth nothing: each rule is shown a line that breaks it, and one that does not."""
    layers = read_layers("low: | expected\nhigh: low | expected json\n")
    assert not list(check_table(layers))
    assert list(check_table(read_layers("low: high |\nhigh: |\n")))
    for line in ('#include "high/x.h"', '#include "x.h"', "#include <nlohmann/json.hpp>", "#include <other/x.h>"):
        assert list(check_includes(layers, "low", line)), line
    for line in ('#include "low/x.h"', "#include <nlohmann/json.hpp>", "#include <vector>", "#include <tl/expected.hpp>"):
        assert not list(check_includes(layers, "high", line)), line
    for line in ("// TO" + "DO later", "CHECK(" + "true);", "from deb" + ".example.org", "at /ho" + "me/me/x"):
        assert list(check_words(line)), line
    table = read_words('# words\na.b = "the {0} "\na.c.one = one\na.c.many = many\n')
    assert not list(check_words_tables(table, dict(table)))
    for key, text in (("a.b", "das"), ("a.b", "{0} {1}"), ("a.b", ""), ("a.x", "mehr")):
        assert list(check_words_tables(table, {**table, key: text})), key
    assert list(check_words_tables({"a.one": ""}, {"a.one": ""}))
    assert told_twice("a = b\nc = d\na = e\n") == ["a"] and not told_twice("a = b\nc = d\n")
    used = [("x.cpp", 'words("a.b", 3) + words.counted("a.c", 1)')]
    assert not list(check_words_used(table, used))
    assert list(check_words_used(table, used[:0])) and list(check_words_used(table, used + [("y.cpp", 'Message::say("a.d")')]))
    assert not list(check_words("CHECK(true_length == 3); // a/home/b"))


def read_words(text):
    """key -> text of a table of words (src/words)"""
    rows = (line.split(" = ", 1) for line in text.splitlines() if line.strip() and not line.startswith("#"))
    return {row[0].strip(): row[1] if len(row) > 1 else "" for row in rows}


def told_twice(text):
    """Keys that stand in a table twice: it can't be read then."""
    keys = [line.split(" = ", 1)[0].strip() for line in text.splitlines() if " = " in line and not line.startswith("#")]
    return sorted({key for key in keys if keys.count(key) > 1})


def places(text):
    return set(re.findall(r"\{\d\}", text))


def check_words_tables(english, other):
    """Every language says everything, with the same places to fill in."""
    for key in sorted(english.keys() ^ other.keys()):
        yield f"`{key}` stands in one table only"
    for key in sorted(english.keys() & other.keys()):
        if places(english[key]) != places(other[key]):
            yield f"`{key}` has other places to fill in than in English"
        if not other[key].strip():
            yield f"`{key}` says nothing"
    for key in english:
        stem, _, end = key.rpartition(".")
        if end in ("one", "many") and not {stem + ".one", stem + ".many"} <= english.keys():
            yield f"`{key}` has no twin for the other counts"


# A key as the sources look it up, and any literal that may be one or the beginning of one.
LOOKED_UP = re.compile(r'\b(?:words(?:\(\))?|t|say|text|list|counted)\(\s*(?:std::string\()?"([a-z_0-9]+(?:\.[a-z_0-9]+)+)"')
LITERAL = re.compile(r'"([a-z_0-9]+\.[a-z_0-9.]*)"')


def check_words_used(english, sources):
    """Keys that are asked for are there, and keys that are there are asked for. sources: (name, text)"""
    literals = set()
    for name, text in sources:
        literals |= set(LITERAL.findall(text))
        for key in LOOKED_UP.findall(text):
            if not {key, key + ".one"} & english.keys() and not any(known.startswith(key + ".") for known in english):
                yield f"{name}:1: `{key}` is in no table of words"
    for key in sorted(english):
        stem = re.sub(r"\.(one|many)$", "", key)
        begins = {key[: at + 1] for at, letter in enumerate(key) if letter in "._"}
        if not literals & ({key, stem} | begins):
            yield f"src/words/english.txt:1: nothing says `{key}`"


def check_all_words():
    folder = ROOT / "src/words"
    english = read_words((folder / "english.txt").read_text(encoding="utf-8"))
    for path in sorted(folder.glob("*.txt")):
        text = path.read_text(encoding="utf-8")
        yield from (f"{path.relative_to(ROOT)}:1: `{key}` is told twice" for key in told_twice(text))
        other = read_words(text)
        if path.stem == "british":  # changes to English: words, and texts by their keys
            found = (f"`{key}` changes a text that is not there" for key in other if "." in key and key not in english)
        else:
            found = check_words_tables(english, other)
        yield from (f"{path.relative_to(ROOT)}:1: {reason}" for reason in found)
    sources = [(path.relative_to(ROOT), path.read_text(encoding="utf-8")) for path in sorted((ROOT / "src").rglob("*.[ch]*"))]
    yield from check_words_used(english, sources)


def git_files(*arguments):
    listed = subprocess.run(["git", "ls-files", *arguments], cwd=ROOT, capture_output=True, text=True, check=True)
    return listed.stdout.splitlines()


def check_format(paths):
    arguments = ["clang-format", "--dry-run", *map(str, paths)]
    for line in subprocess.run(arguments, cwd=ROOT, capture_output=True, text=True).stderr.splitlines():
        if found := re.match(r"(.+?):(\d+):\d+: warning: code should be clang-formatted", line):
            yield f"{pathlib.Path(found[1]).relative_to(ROOT)}:{found[2]}: not in the project's format: run ./dev format"


def check_file(layers, path):
    text = path.read_text(encoding="utf-8", errors="replace")  # some test files are broken on purpose
    parts = path.relative_to(ROOT).parts
    yield from check_words(text)
    if path.suffix in (".cpp", ".h"):
        if (lines := text.count("\n")) > LONGEST:
            yield lines, f"over {LONGEST} lines: split it"
        if parts[0] == "src" and len(parts) > 2:
            if parts[1] in layers:
                yield from check_includes(layers, parts[1], text)
            else:
                yield 1, f"src/{parts[1]} is not in src/layers.txt"
        if parts[:2] == ("tests", "checker") and (shared := re.search(r'#include "(?!checker/).*', text)):
            yield text[: shared.start()].count("\n") + 1, "the checker shares nothing with the program"


def main():
    check_self()
    layers = read_layers((ROOT / "src/layers.txt").read_text())
    found = [f"src/layers.txt:{line}: {reason}" for line, reason in check_table(layers)]
    sources = []
    ignored = set(git_files("--cached", "--ignored", "--exclude-standard"))
    found += [f"{name}:1: is committed although .gitignore lists it: git rm --cached" for name in sorted(ignored)]
    # what is in the repository or about to be
    for name in git_files("--cached", "--others", "--exclude-standard"):
        path = ROOT / name
        if name in ignored or not path.is_file():
            continue
        if path.suffix in (".cpp", ".h"):
            sources.append(path)
        found += [f"{name}:{line}: {reason}" for line, reason in check_file(layers, path)]
    found += check_all_words()
    found += check_format(sources)
    print("\n".join(found), end="\n" if found else "")
    return 1 if found else 0


sys.exit(main())
