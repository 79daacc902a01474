"""Every field of a job spoilt in every way: a placed message in words, never a crash, and nothing written."""

import copy
import os
import re
import signal
import subprocess
import sys
import time
from functools import cache
from pathlib import Path

import pytest
import yaml

from firstcourse.cli import run
from firstcourse.errors import JobError
from firstcourse.job import read_job_text

EXAMPLES = Path(__file__).parents[2] / "examples"
WRONG = {
    "a list": ["1", "2"],
    "a group": {"a": "1"},
    "nothing": None,
    "empty": "",
    "not a number": ".nan",
    "endless": "-.inf",
    "bare": "12",
    "zero": "0 in",
    "negative": "-3 in",
    "huge": "9e99 mm",
    "another unit": "3 parsecs",
    "two meanings": "5' 14\"",
    "a comma": "1,5 m",
    "odd signs": "½\u202e\x1b[2J",
    "long": "x" * 5000,
    "many digits": "1" + "0" * 400,
}
JARGON = re.compile(r"tuple|dict|instance of|\bNone\b|\bparse\b|unable to|_type|pydantic|\x1b|\u202e")


@cache
def example(name):
    return yaml.load((EXAMPLES / name / "job.yaml").read_text(encoding="utf-8"), Loader=yaml.CBaseLoader)


def places(value, path=()):
    """Paths of all values, each kind of place once: the second item of a list is like the first."""
    if path:
        yield path
    if isinstance(value, dict):
        for key in value:
            yield from places(value[key], (*path, key))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from places(item, (*path, index))


def kinds_of_place(document):
    found = {}
    for path in places(document):
        found.setdefault(tuple(0 if isinstance(part, int) else part for part in path), path)
    return tuple(found.values())


def changed(document, path, change):
    """A copy in which the container at the end of the path is changed; the rest is shared."""
    result = copy.copy(document)
    here = result
    for part in path[:-1]:
        here[part] = copy.copy(here[part])
        here = here[part]
    change(here, path[-1])
    return result


def put(value):
    return lambda here, key: here.__setitem__(key, value)


def drop(here, key):
    del here[key]


def misspell(here, key):
    if isinstance(here, dict):
        here[f"{key}x"] = here.pop(key)
    else:
        here.insert(key, here[key])


def problems(document):
    """What the reader says of it, or nothing where it is still a job."""
    try:
        read_job_text(yaml.dump(document, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True))
    except JobError as error:
        return error.problems
    return ()


CHANGES = {**{name: put(value) for name, value in WRONG.items()}, "left out": drop, "misspelt or twice": misspell}


@pytest.mark.parametrize("change", CHANGES)
@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower", "limber-floor"])
def test_a_spoilt_field_is_placed_and_said_in_words(name, change):
    document = example(name)
    # Each example meets every change on a third of its places: together they cover what jobs say.
    turn = (tuple(CHANGES).index(change) + len(name)) % 3
    for path in kinds_of_place(document)[turn::3]:
        for problem in problems(changed(document, path, CHANGES[change])):
            assert problem.line >= 1, (path, problem)
            assert problem.message, path
            assert not JARGON.search(problem.message), (path, str(problem))


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\n\n# nothing but a note\n",
        b"\x00\x01\x02\xff",
        b"\xff\xfen\x00a\x00",
        b"name: x\n\trooms: 3\n",
        b"- a\n- b\n",
        b"just a text",
        b"name: [",
        b"name: {a: &x [1], b: *x}",
        b"a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b]\nname: [*c,*c]\n",
        b"<<: {name: x}\n",
        b"name: !!python/object/apply:os.system [ls]\n",
        b"name: x\nname: y\n",
        b"[" * 5000,
        b"--- \nname: x\n---\nname: y\n",
        b"? [a, b]\n: c\n",
    ],
)
def test_a_file_that_is_no_job_ends_with_one_clear_answer(content, tmp_path, capsys):
    job = tmp_path / "job.yaml"
    job.write_bytes(content)
    assert run(["plan", str(job), "--out", str(tmp_path / "out")]) == 2
    said = capsys.readouterr()
    assert str(job) in said.err
    assert "Traceback" not in said.err
    assert not said.out
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("command", ["survey", "judge", "plan", "explain", "verify"])
@pytest.mark.parametrize("path", ["missing.yaml", ".", "a\nb.yaml", "x" * 300])
def test_a_path_that_cannot_be_read_is_named(command, path, tmp_path, capsys):
    words = [command, str(tmp_path / path)] + (["--out", str(tmp_path / "out")] if command == "plan" else [])
    assert run(words) == 2
    said = capsys.readouterr().err
    assert str(tmp_path) in said
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("command", ["plan", "judge"])
@pytest.mark.parametrize("below", ["", "deeper/still"])
def test_a_file_where_the_folder_should_be_is_told_before_any_work(command, below, tmp_path, capsys):
    taken = tmp_path / "notes"
    taken.write_text("mine", encoding="utf-8")
    # A job that would be refused were it read: the folder is looked at first.
    job = tmp_path / "job.yaml"
    job.write_text("", encoding="utf-8")
    assert run([command, str(job), "--out", str(taken / below)]) == 2
    assert capsys.readouterr().err.strip() == (
        f"{taken} is a file; name a folder to write into, or move that file away"
    )
    assert taken.read_text(encoding="utf-8") == "mine"


@pytest.mark.skipif(os.name != "posix", reason="signals and modes of POSIX systems")
def test_stopped_by_hand_it_says_so_and_writes_nothing(tmp_path):
    out = tmp_path / "out"
    job = EXAMPLES / "tub-bathroom" / "job.yaml"
    program = (
        "import sys; from firstcourse.cli import run; print('begun', flush=True); sys.exit(run(sys.argv[1:]))"
    )
    words = [sys.executable, "-c", program, "plan", str(job), "--out", str(out), "--effort", "3"]
    with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as started:
        assert started.stdout is not None
        started.stdout.readline()
        time.sleep(0.3)
        started.send_signal(signal.SIGINT)
        _, said = started.communicate(timeout=60)
    assert started.returncode == 2, said
    assert said.strip() == "stopped; nothing was written"
    assert not out.exists()
