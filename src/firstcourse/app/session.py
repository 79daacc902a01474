"""A job document being worked on, and all that is done with it."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from firstcourse.app.done import marked_done
from firstcourse.app.files import Disk, Files
from firstcourse.app.processes import Processes
from firstcourse.app.store import Memory
from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.job import FieldValue, Job, edited_text, problems_placed, read_job_text
from firstcourse.plan import Plan, Schedule
from firstcourse.reuse import Steps, Store
from firstcourse.rules import RuleSet, load_rules
from firstcourse.share import Share
from firstcourse.steps import Ahead, Explanation, JobJudgement, PlanResult, explain_job, judge_alone, plan_job
from firstcourse.survey import SurveyResult, survey_job

if TYPE_CHECKING:
    from firstcourse.alternatives import Alternative, Change
    from firstcourse.app.compared import Compared
    from firstcourse.app.ticked import Ticked
    from firstcourse.papers.papers import Paper
    from firstcourse.pricing import Offer, PriceBook, Proposal

OnStep = Callable[[str], None]
OnAhead = Callable[[Ahead], None]


def _quietly(_step: str) -> None:
    """Tell nobody."""


def _unasked(_ahead: Ahead) -> None:
    """Tell nobody."""


class Session:
    """One job document, open: survey, judge, plan and explain it, and write its papers.

    Whatever is wrong with the document or its readings is a `JobError` that lists every problem with its line,
    column, field and value; the session stays as it was.
    """

    def __init__(
        self,
        text: str,
        *,
        name: str = "job.yaml",
        files: Files | None = None,
        store: Store | None = None,
        share: Share | None = None,
        tongue: str = "",
    ) -> None:
        """Open a job document given as text.

        Args:
            text: YAML or JSON.
            name: What to call it in messages.
            files: Where papers go; the disk of this machine where not given.
            store: Where steps of planning are kept to be reused; in memory where not given.
            share: How the rooms of a plan are shared out; to this machine's processors where not given.
            tongue: What papers and findings are written in; what the document says where not given.

        Raises:
            JobError: The document says something a job cannot say.
        """
        self._text, self._name, self._tongue = text, name, tongue
        self._job = self._read(text)
        self._surveyed: tuple[Job, SurveyResult] | None = None
        self._files = Disk() if files is None else files
        self._store = Memory() if store is None else store
        self._steps = Steps(self._store)
        self._share = Processes() if share is None else share

    @property
    def name(self) -> str:
        """What the document is called in messages."""
        return self._name

    @property
    def text(self) -> str:
        """The document as it stands."""
        return self._text

    @property
    def job(self) -> Job:
        """What the document says; lengths in ticks of 1/640 mm."""
        return self._job

    @property
    def rules(self) -> RuleSet:
        """The rules in force for this job, nothing asked of them yet."""
        return load_rules(self._job.date, self._job.practice, self._job.overrides())

    @property
    def sources(self) -> dict[str, str]:
        """By the id of each rule in force for this job: its source, as printed."""
        return self.rules.sources()

    def edit(self, field: str, value: FieldValue) -> None:
        """Set one field of the document; comments, order and layout of the rest stay as they are.

        Args:
            field: As messages name it, lists counted from 1, such as `rooms[1].walls[2].openings[1].left`. A
                setting that is not there yet, or the next item of a list, is put after those that are.
            value: What it is to be: a text as it would be typed, such as `5' 3-1/2"`, a number, a list, a mapping.

        Raises:
            JobError: There is no such field, or the document would say something a job cannot say: the problems
                are those of a file that was edited so. The session stays as it was.
        """
        text = edited_text(self._text, field, value, name=self._name)
        self._job = self._read(text)
        self._text = text

    def mark_done(
        self,
        plan: Plan,
        *,
        boards: Iterable[str],
        cut: Iterable[str] = (),
        taken_out: Iterable[str] = (),
        first_courses: Mapping[str, int] | None = None,
    ) -> None:
        """Write into the document what is done of a plan, so that the next plan keeps it; comments stay.

        Args:
            plan: A plan of this job, such as `session.plan().plan`.
            boards: Ids or marks of boards that are up; those that were up in the plan are still.
            cut: Ids or marks of boards whose pieces are cut and not up.
            taken_out: Ids or marks of boards that were up and had to come out again.
            first_courses: By surface id, the height above the floor at which its first course stands [ticks].

        Raises:
            InputValueError: A board or a surface is named that the plan does not have, or one is both up and not.
            JobError: The document would say something a job cannot say. The session stays as it was.
        """
        text = marked_done(
            self._text,
            self._job,
            plan,
            boards=boards,
            cut=cut,
            taken_out=taken_out,
            first_courses=first_courses,
        )
        self._job = self._read(text)
        self._text = text

    def save(self, path: Path | str) -> None:
        """Write the document as it stands to a file, over what stands there.

        Raises:
            OSError: The disk refuses; the file stays as it was.
        """
        self._files.write_over(Path(path), self._text)

    def _read(self, text: str) -> Job:
        job = read_job_text(text, self._name)
        return job.model_copy(update={"tongue": self._tongue}) if self._tongue else job

    def survey(self) -> SurveyResult:
        """Adjust the taped readings: corners, how sure they are, and what the readings prove.

        Raises:
            JobError: The readings do not fix a room.
        """
        if self._surveyed is None or self._surveyed[0] is not self._job:
            with problems_placed(self._text, self._name):
                self._surveyed = self._job, survey_job(self._job, self.rules)
        return self._surveyed[1]

    def judge(self) -> JobJudgement:
        """Judge whether frame, panels and surfaces will carry tile, as far as the job says what they are.

        Raises:
            JobError: The readings do not fix a room, or a rule is changed that does not exist.
        """
        with problems_placed(self._text, self._name):
            return judge_alone(self._job)

    def plan(self, *, effort: int = 1, on_step: OnStep = _quietly, on_ahead: OnAhead = _unasked) -> PlanResult:
        """Plan boards, cuts, fasteners and tile, and verify the plan.

        The same document, rules and effort give the same bytes. Steps whose inputs and rules are as they were
        before are reused: after a new name nothing is planned anew, after a change of one wall that wall is, with
        what it shares sheets and courses with.

        Args:
            effort: How long to look for fewer sheets, 0 to 3; counted in steps, not seconds.
            on_step: Told the name of each step as it begins.
            on_ahead: Told about how much is to be laid out, before that begins; nothing where all is reused.

        Raises:
            JobError: The readings do not fix a room, or something asked for cannot be made.
            PlanRefusedError: The plan does not verify; this is our fault.
        """
        with problems_placed(self._text, self._name):
            return plan_job(
                self._job,
                effort=effort,
                share=self._share,
                steps=self._steps,
                on_step=on_step,
                on_ahead=on_ahead,
            )

    def explain(self, *, effort: int = 1, what_if: bool = True, on_step: OnStep = _quietly) -> Explanation:
        """Say why the plan takes so many sheets, and plan its alternatives, each in full.

        Args:
            effort: As for `plan`.
            what_if: Whether to plan alternatives at all.
            on_step: Told the name of each step as it begins.

        Raises:
            JobError: As for `plan`.
            PlanRefusedError: As for `plan`.
        """
        with problems_placed(self._text, self._name):
            return explain_job(self._job, effort=effort, what_if=what_if, steps=self._steps, on_step=on_step)

    def price(self, plan: PlanResult, book: "PriceBook") -> "Offer":
        """Order and price a plan by a price book, proved again.

        Args:
            plan: A plan of this job.
            book: Prices, see `price_book`.

        Raises:
            InputValueError: The book does not go with the plan: another currency, or a price for another unit.
            PlanRefusedError: The price does not verify; this is our fault.
        """
        from firstcourse.app.pricing import priced

        return priced(plan, book)

    def price_papers(self, plan: PlanResult, offer: "Offer", folder: Path | str) -> tuple[Path, ...]:
        """Write a price.json, its plan.json and the order on both paper sizes; other files there stay.

        Args:
            plan: A plan of this job.
            offer: Its order and price.
            folder: Made where it is not there.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.pricing import order_papers

        return self._files.write_folder(order_papers(plan, offer), Path(folder), record=False)

    def proposal(self, plan: PlanResult, offer: "Offer", words: Path | str | None = None) -> "Proposal":
        """A proposal to a client, proved again.

        Args:
            plan: A plan of this job.
            offer: Its order and price.
            words: The firm's own words, a file; an invented business where not given.

        Raises:
            JobError: The words cannot be used; with line and column.
            InputValueError: Something has no price.
            PlanRefusedError: The proposal does not verify; this is our fault.
        """
        from firstcourse.app.proposing import proposal_words, proposed

        return proposed(plan, offer, proposal_words(words, plan.plan))

    def proposal_papers(
        self, plan: PlanResult, offer: "Offer", made: "Proposal", folder: Path | str
    ) -> tuple[Path, ...]:
        """Write a proposal on both paper sizes, with the values that it rests on; other files there stay.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.proposing import proposal_papers

        return self._files.write_folder(proposal_papers(plan, offer, made), Path(folder), record=False)

    def supply_papers(self, plan: PlanResult, offer: "Offer", folder: Path | str) -> tuple[Path, ...]:
        """Write the order without prices on both paper sizes, and its plan.json; other files there stay.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.pricing import supply_papers

        return self._files.write_folder(supply_papers(plan, offer), Path(folder), record=False)

    def compare(
        self,
        alternatives: "Sequence[Alternative]",
        *,
        book: "PriceBook | None" = None,
        effort: int = 1,
        on_step: OnStep = _quietly,
    ) -> "Compared":
        """Plan, verify and price the job as it stands and its alternatives; the session stays as it is.

        An alternative that cannot be planned is kept with the reason; steps that several share are done once.

        Args:
            alternatives: What is changed for each, see `alternatives`.
            book: Prices; without them hours and cost are left out.
            effort: As for `plan`.
            on_step: Told the name of each step as it begins.

        Raises:
            JobError: The job as it stands cannot be planned.
            InputValueError: The book does not go with the job as it stands.
            PlanRefusedError: A plan, a price or the table does not verify; this is our fault.
        """
        from firstcourse.app.compared import compared

        def planned(changes: "Sequence[Change]") -> PlanResult:
            other = Session(
                self._text,
                name=self._name,
                files=self._files,
                store=self._store,
                share=self._share,
                tongue=self._tongue,
            )
            for change in changes:
                other.edit(change.field, change.to)
            return other.plan(effort=effort, on_step=on_step)

        return compared(planned, alternatives, book)

    def comparison_papers(self, made: "Compared", folder: Path | str) -> tuple[Path, ...]:
        """Write a comparison as data and on both paper sizes, with the plans it is of; other files there stay.

        Args:
            made: A comparison.
            folder: Made where it is not there.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.compared import comparison_papers

        return self._files.write_folder(comparison_papers(made), Path(folder), record=False)

    def papers(
        self, plan: PlanResult, folder: Path | str, *, poles: bool = False, on_step: OnStep = _quietly
    ) -> tuple[Path, ...]:
        """Write a plan and all its papers into a folder, all or none; papers of an older plan there go.

        Args:
            plan: A plan.
            folder: Made where it is not there; files of others in it stay.
            poles: Print story poles at full size too.
            on_step: Told the name of each paper when it is made.

        Returns:
            The files written, plan.json first.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.papers import plan_papers

        def told() -> Iterator["Paper"]:
            for paper in plan_papers(plan, poles=poles):
                on_step(paper.name)
                yield paper

        return self._files.write_folder(told(), Path(folder), record=True)

    def ticked(self, plan: Plan, path: Path | str) -> "Ticked":
        """Read back what was ticked and measured on a phone, see docs/papers.md.

        `mark_done` takes its boards, its cut pieces and its first courses.

        Args:
            plan: The plan whose pack was on that phone.
            path: The file that it saved.

        Raises:
            InputValueError: It cannot be read, is no such file or too large, belongs to another plan, or names
                what the plan does not have; the message begins with the path.
        """
        from firstcourse.app.ticked import MOST_BYTES, read_ticked
        from firstcourse.files import read_file

        try:
            data = read_file(Path(path), most_bytes=MOST_BYTES, what="a file of ticks")
            return read_ticked(data, plan)
        except InputValueError as error:
            raise InputValueError(f"{path}: {error}") from None

    def schedule(self, *, effort: int = 1, on_step: OnStep = _quietly) -> tuple[Schedule, PlanResult]:
        """Plan the job and give its calendar, with the plan that it is of.

        Args:
            effort: As for `plan`.
            on_step: Told the name of each step as it begins.

        Raises:
            JobError: As for `plan`; or the job does not say when work begins.
            PlanRefusedError: As for `plan`.
        """
        if self._job.schedule is None:
            message = "is not given; enter it with starts, the first day on site, such as starts: 2026-03-02"
            problem = InputProblem(file=self._name, line=0, column=0, field="schedule", message=message)
            raise JobError((problem,))
        result = self.plan(effort=effort, on_step=on_step)
        assert result.plan.schedule is not None
        return result.plan.schedule, result

    def schedule_papers(self, plan: PlanResult, folder: Path | str) -> tuple[Path, ...]:
        """Write a plan's calendar into a folder, on both paper sizes and as a file for calendars; others stay.

        Args:
            plan: A plan.
            folder: Made where it is not there.

        Returns:
            The files written; none where the plan has no calendar.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.papers import schedule_papers

        calendar = plan.plan.schedule
        if calendar is None:
            return ()
        return self._files.write_folder(schedule_papers(plan.plan, calendar), Path(folder), record=False)

    def judgement_papers(self, judgement: JobJudgement, folder: Path | str) -> tuple[Path, ...]:
        """Write a judgement's sheets into a folder, on both paper sizes; files that stand there stay.

        Args:
            judgement: What was judged.
            folder: Made where it is not there.

        Returns:
            The files written.

        Raises:
            InputValueError: A name that is needed is taken by a file or a folder.
            OSError: The disk refuses.
        """
        from firstcourse.app.papers import judgement_papers

        return self._files.write_folder(judgement_papers(judgement), Path(folder), record=False)


def open_job(
    path: Path | str,
    *,
    files: Files | None = None,
    store: Store | None = None,
    share: Share | None = None,
    tongue: str = "",
) -> Session:
    """Open a job document to work on it.

    Args:
        path: YAML or JSON, see docs/job-document.md.
        files: Where documents come from and papers go; the disk of this machine where not given.
        store: Where steps of planning are kept to be reused; in memory where not given.
        share: How the rooms of a plan are shared out; to this machine's processors where not given.
        tongue: What papers and findings are written in; what the document says where not given.

    Raises:
        JobError: The file cannot be read, or says something a job cannot say.
    """
    files = Disk() if files is None else files
    text = files.read_job(Path(path))
    return Session(text, name=str(path), files=files, store=store, share=share, tongue=tongue)
