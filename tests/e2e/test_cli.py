"""The command line as a newcomer uses it: every command, every exit code, nothing lost on wrong input."""

import json
from pathlib import Path

import pytest

import firstcourse
from firstcourse.cli import run

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted(path.parent.name for path in (ROOT / "examples").glob("*/job.yaml"))
STOPPED = {"limber-floor", "out-of-true"}
"""Examples in which a finding stops the work; they are planned and written all the same."""


def test_help_names_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["--help"]) == 0
    shown = capsys.readouterr().out
    for command in ("demo", "new", "plan", "explain", "survey", "judge", "verify", "rules", "schema"):
        assert command in shown


def test_new_writes_a_job_that_surveys_and_never_overwrites(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "my-job.yaml"
    assert run(["new", str(job)]) == 0
    assert run(["survey", str(job)]) == 0
    capsys.readouterr()
    assert run(["survey", str(job), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["rooms"]
    before = job.read_text()
    assert run(["new", str(job)]) == 2
    assert job.read_text() == before
    assert "already" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("corners:", "cornrs:", "did you mean 'corners'"),
        ("practice: us", "practice: mars", "practice"),
        ("8 in,", "8,", "no unit"),
        ("left: 50 in", "left: 500 in", "from the left corner on a wall"),
    ],
)
def test_wrong_input_is_placed(
    old: str, new: str, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.yaml"
    run(["new", str(job)])
    text = job.read_text()
    assert old in text
    job.write_text(text.replace(old, new))
    assert run(["survey", str(job)]) == 2
    shown = capsys.readouterr().err
    assert said in shown
    assert "job.yaml:" in shown


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        (["survey"], 2),
        (["survey", "no-such-file.yaml"], 2),
        (["verify", "no-such-plan.json"], 2),
        (["verify", "README.md"], 2),
        (["rules", "no.such.rule"], 2),
        (["schema", "house"], 2),
        (["fly"], 2),
    ],
)
def test_wrong_words_end_without_a_traceback(
    arguments: list[str], code: int, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    assert run(arguments) == code
    shown = capsys.readouterr()
    assert "Traceback" not in shown.err + shown.out


def test_rules_show_their_source(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules"]) == 0
    assert "boards.gap.between" in capsys.readouterr().out
    assert run(["rules", "boards.gap.between"]) == 0
    assert "common" in capsys.readouterr().out
    assert run(["rules", "boards.stagger.end_joints", "--json"]) == 0
    assert "A108.11" in json.dumps(json.loads(capsys.readouterr().out))


def test_rules_of_a_metric_practice_stand_in_millimetres_and_say_what_is_borrowed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["rules", "framing", "--practice", "uk"]) == 0
    shown = capsys.readouterr().out
    assert "38 mm  [common practice]  <- US practice: check" in shown
    assert "values are not of UK practice" in shown
    assert run(["rules", "framing.stud_width", "--practice", "uk"]) == 0
    assert "taken from   US practice: check" in capsys.readouterr().out
    assert run(["rules", "framing"]) == 0
    assert "check" not in capsys.readouterr().out


@pytest.mark.parametrize("of", ["job", "plan"])
def test_schemas_are_json(of: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["schema", of]) == 0
    assert json.loads(capsys.readouterr().out)["properties"]


def test_the_demo_says_where_to_look(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["demo", str(tmp_path / "demo")]) == 0
    shown = capsys.readouterr().out
    assert "the plan is consistent" in shown
    assert str(tmp_path / "demo" / "site-pack-letter.pdf") in shown
    assert (tmp_path / "demo" / "site-pack-letter.pdf").is_file()
    assert run(["verify", str(tmp_path / "demo")]) == 0


def written(folder: Path) -> dict[str, bytes]:
    files = (file for file in folder.rglob("*") if file.is_file())
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in files}


@pytest.mark.parametrize("name", EXAMPLES)
def test_examples_plan_to_the_same_bytes_match_the_schema_and_verify(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    import jsonschema

    job = str(ROOT / "examples" / name / "job.yaml")
    # Every plan is made twice; papers are written again of the example that has every kind of page.
    folders = ("one", "two") if name == "tiled-shower" else ("one",)
    for folder in folders:
        assert run(["plan", job, "--out", str(tmp_path / folder), "--json"]) == (name in STOPPED)
    assert json.loads(capsys.readouterr().out.split("\n}\n")[0] + "}")["boards"] > 0
    one = written(tmp_path / "one")
    assert {
        "plan.json",
        "pieces-and-cuts.xlsx",
        "site-pack-letter.pdf",
        "site-pack-a4.pdf",
        "site-pack.html",
        "office-pack-a4.pdf",
    } <= one.keys()
    if len(folders) == 2:
        assert one == written(tmp_path / "two")
    else:
        assert one["plan.json"] == firstcourse.open(job).plan().document.encode()
    assert run(["verify", str(tmp_path / "one")]) == 0
    capsys.readouterr()
    assert run(["schema", "plan"]) == 0
    schema = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(schema).validate(json.loads(one["plan.json"]))


def test_wrong_input_writes_nothing_and_is_placed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = tmp_path / "job.yaml"
    run(["new", str(job)])
    job.write_text(job.read_text().replace("diagonals: {A-C: 9' 5-5/16\", B-D: 9' 5-1/4\"}", "diagonals: {}"))
    assert run(["plan", str(job), "--out", str(tmp_path / "plan")]) == 2
    assert not (tmp_path / "plan").exists()
    line = 1 + job.read_text().splitlines().index("    diagonals: {}")
    shown = capsys.readouterr().err
    assert f"job.yaml:{line}:" in shown
    assert "A-C" in shown


def test_a_file_in_the_way_is_not_lost(tmp_path: Path) -> None:
    taken = tmp_path / "plan"
    taken.write_text("keep me")
    assert run(["plan", str(ROOT / "examples" / EXAMPLES[0] / "job.yaml"), "--out", str(taken)]) == 2
    assert taken.read_text() == "keep me"
