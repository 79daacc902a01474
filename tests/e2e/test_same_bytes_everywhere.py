"""The same job gives the same files, byte for byte, in whatever process, place, clock and language."""

import os
import subprocess
import sys
from pathlib import Path

import firstcourse

JOB = """
name: same everywhere
practice: us
date: 2026-11-25
tape: inch
stock: [{id: b, size: [36 in, 60 in], thickness: 1/4 in}]
tiles: [{id: t, size: [12 in, 12 in], thickness: 5/16 in, joint: 1/8 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 40 in, B-C: 50 in, C-D: 40 in, D-A: 50 in}
    diagonals: {B-D: 64 in}
    height: 96 in
    floor:
      tiling: {tile: t}
      openings: [{id: flange, kind: flange, left: 20 in, out: 15 in, diameter: 7 in}]
"""
PLACES = (
    {"PYTHONHASHSEED": "1", "TZ": "UTC", "LC_ALL": "C"},
    {"PYTHONHASHSEED": "4242", "TZ": "Pacific/Kiritimati", "LC_ALL": "de_DE.UTF-8"},
)


def test_plan_and_papers_are_the_same_bytes(tmp_path: Path) -> None:
    found = []
    for number, place in enumerate(PLACES):
        folder = tmp_path / f"folder {number}"
        folder.mkdir()
        job = folder / "job.yaml"
        job.write_text(JOB, encoding="utf-8")
        source = str(Path(firstcourse.__file__).parents[1])
        command = "import sys; from firstcourse.cli import main; sys.exit(main())"
        done = subprocess.run(
            [sys.executable, "-c", command, "plan", "job.yaml", "--out", "plan", "--effort", "0"],
            cwd=folder,
            env={**os.environ, **place, "PYTHONPATH": source},
            capture_output=True,
            text=True,
            check=False,
            timeout=300,
        )
        assert done.returncode in (0, 1), done.stderr
        out = folder / "plan"
        files = {str(file.relative_to(out)): file.read_bytes() for file in out.rglob("*") if file.is_file()}
        found.append((done.stdout, files))
    (said, files), (said_again, again) = found
    assert {Path(name).suffix for name in files} >= {".json", ".pdf", ".xlsx", ".svg", ".dxf"}
    assert sorted(files) == sorted(again)
    assert [name for name in files if files[name] != again[name]] == []
    assert said == said_again
