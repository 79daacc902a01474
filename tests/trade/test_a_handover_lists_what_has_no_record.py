"""Hidden work cannot be proved later: what the plan asks for and nobody recorded is missing, never done."""

import io
import json
from pathlib import Path

import pypdf
import pytest
from PIL import Image

from example_plans import plan_of
from firstcourse.app import handing_over
from firstcourse.app.handing_over import HandoverFile, handover_papers, make_handover
from firstcourse.errors import InputValueError, JobError
from firstcourse.verify import Verdict, verify_handover


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("plan")
    (made / "plan.json").write_text(plan_of("tiled-shower").model_dump_json(by_alias=True, indent=1) + "\n")
    photo = Image.new("RGB", (80, 60), "white")
    exif = Image.Exif()
    exif[0x010F] = "camera of somebody"
    photo.save(made / "a.jpg", exif=exif)
    return made


@pytest.fixture(autouse=True)
def proved(monkeypatch: pytest.MonkeyPatch) -> None:
    # The plan is an example that is proved elsewhere; here it is about the record alone.
    monkeypatch.setattr(handing_over, "verify_text", lambda _text: Verdict(()))


def made(folder: Path, text: str, tongue: str = "") -> HandoverFile:
    (folder / "proof.yaml").write_text("business: Made up\non: 2026-12-20\ninvented: true\n" + text)
    return make_handover(folder, folder / "proof.yaml", tongue=tongue)


def states(found: HandoverFile) -> dict[tuple[str, str], str]:
    return {(one.what, one.at): one.state for one in found.handover.asked}


def shower_of(folder: Path) -> tuple[str, str, float]:
    plan = json.loads((folder / "plan.json").read_text())
    floor = next(one for one in plan["surfaces"] if one["fall"])
    return floor["id"], floor["room"], floor["fall"]["flood_test"]["hours"]


def test_nothing_recorded_is_all_missing(folder: Path) -> None:
    found = states(made(folder, ""))
    floor, room, _ = shower_of(folder)
    assert set(found.values()) == {"missing"}
    assert {("flood_test", floor), ("membrane", floor), ("framing", room), ("drain_test", room)} <= set(found)
    assert any(what == "fasteners" for what, _ in found)


@pytest.mark.parametrize(
    ("hours", "sinks", "state"), [(0, 0, "held"), (-1, 0, "failed"), (0, 2, "failed"), (1, -1, "held")]
)
def test_a_flood_test_holds_by_hours_and_level(folder: Path, hours: int, sinks: int, state: str) -> None:
    floor, _, asked = shower_of(folder)
    days, rest = divmod(8 + int(asked) + hours, 24)
    times = f"starts: 2026-12-05T08:00, ends: '2026-12-{5 + days:02d}T{rest:02d}:00'"
    levels = f"start_level: 50 mm, end_level: {50 - sinks} mm"
    found = made(folder, f"tests: [{{at: {floor}, {times}, {levels}, who: nobody}}]\n")
    assert states(found)["flood_test", floor] == state


def test_the_last_check_counts(folder: Path) -> None:
    _, room, _ = shower_of(folder)
    rows = [
        f"{{what: framing, at: {room}, on: 2026-12-0{day}, who: x, holds: {so}}}"
        for day, so in ((2, "no"), (1, "yes"))
    ]
    assert states(made(folder, f"checks: [{', '.join(rows)}]\n"))["framing", room] == "failed"


@pytest.mark.parametrize("tongue", ["en", "es"])
def test_the_file_is_for_keeping_and_holds_plan_and_photos(folder: Path, tongue: str) -> None:
    floor, *_ = shower_of(folder)
    found = made(folder, f"photos: [{{file: a.jpg, at: {floor}, stage: membrane, on: 2026-12-04}}]\n", tongue)
    papers = {one.name: one.content for one in handover_papers(found)}
    assert papers == {one.name: one.content for one in handover_papers(found)}
    for size in ("letter", "a4"):
        file = pypdf.PdfReader(io.BytesIO(papers[f"handover-{size}.pdf"]))
        root = file.trailer["/Root"]
        xmp = root["/Metadata"].get_object().get_data()
        assert b"<pdfaid:part>3</pdfaid:part>" in xmp and b"<pdfaid:conformance>B</pdfaid:conformance>" in xmp
        assert len(root["/AF"]) == len(found.files) and root["/OutputIntents"]
        for name, content in found.files.items():
            assert file.attachments[name] == [content]
        assert b"camera of somebody" not in found.files["photo-001.jpg"]
        owner = pypdf.PdfReader(io.BytesIO(papers[f"owner-{size}.pdf"]))
        assert len(owner.pages) <= 2 and not owner.attachments
        said = {"en": "no record", "es": "sin registro"}[tongue]
        assert said in file.pages[0].extract_text() and said in owner.pages[0].extract_text()


def test_what_is_told_otherwise_is_noticed(folder: Path) -> None:
    plan = (folder / "plan.json").read_text()
    text = made(folder, "").files["handover.json"].decode()
    assert verify_handover(plan, text) == ()
    for number in range(len(json.loads(text)["asked"])):
        for change in ({"state": "held"}, {"state": "failed"}, {"hours": 7}, {"at": "x"}, None):
            said = json.loads(text)
            if change is None:
                del said["asked"][number]
            else:
                said["asked"][number] |= change
            assert verify_handover(plan, json.dumps(said)), (number, change)
    assert verify_handover(plan + " ", text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("checks: [{what: tape, at: nowhere, on: 2026-12-01, who: x, holds: yes}]\n",
         r"proof.yaml:4:27: checks\[1\].at: the plan has no place 'nowhere'"),
        ("spares: [{item: tile}]\n", r"proof.yaml:4:10: spares\[1\].amount: 'amount' is missing"),
        ("colours: []\n", "'colours' is not known here; is `colors` meant"),
    ],
)  # fmt: skip
def test_a_wrong_record_is_refused_with_its_line(folder: Path, text: str, said: str) -> None:
    with pytest.raises(JobError, match=said):
        made(folder, text)


@pytest.mark.parametrize(
    ("file", "said"), [("../a.jpg", "lies beside"), ("none.jpg", "No such"), ("plan.json", "no photo")]
)
def test_a_photo_that_cannot_be_kept_is_refused(folder: Path, file: str, said: str) -> None:
    floor, *_ = shower_of(folder)
    with pytest.raises(InputValueError, match=said):
        made(folder, f"photos: [{{file: {file}, at: {floor}, stage: end, on: 2026-12-04}}]\n")
