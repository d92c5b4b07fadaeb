"""What is wrong in what a person wrote: where, what was read, what was expected, how to mend it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

Severity = Literal["error", "warning"]

LONGEST_EXCERPT = 240
"""Signs of a line that are shown with a problem; of a longer one those around the pointer."""

MOST_ALIKE = 10_000
"""Problems with one code in one file that are kept one by one; more of them help nobody and fill the memory."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Place:
    """Where something was written: a file and a line, or a cell of a workbook."""

    path: str
    """Path relative to the project folder, with forward slashes."""
    line: int = 0
    """Line, counted from 1; 0 means the file as a whole."""
    column: int = 0
    """Column, counted from 1; 0 means the line as a whole."""
    sheet: str = ""
    """Name of the sheet in a workbook; empty for text files."""
    cell: str = ""
    """Address of the cell, such as H4, in a workbook or a text file that a layout describes."""

    def __str__(self) -> str:
        if self.cell:
            return f"{self.path}, sheet {self.sheet}, cell {self.cell}" if self.sheet else f"{self.path}, cell {self.cell}"
        if self.sheet:
            return f"{self.path}, sheet {self.sheet}"
        parts = [self.path]
        if self.line:
            parts.append(str(self.line))
            if self.column:
                parts.append(str(self.column))
        return ":".join(parts)

    @property
    def row(self) -> str:
        """The place without its column, as claims and evidence quote it."""
        if self.sheet or self.cell:
            return str(self)
        return f"{self.path}:{self.line}" if self.line else self.path


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing that a person must mend (error) or should look at (warning)."""

    place: Place
    severity: Severity
    code: str
    """Stable code, a key of `CODES`."""
    message: str
    """Whose, what was read, what was expected."""
    excerpt: str = ""
    """The line as written, for the pointer; empty where there is none to show."""
    width: int = 1
    """How many characters the pointer underlines."""
    help: str = ""
    """One way to mend it."""

    def in_order(self) -> tuple[Place, str, str, str]:
        return (self.place, self.severity, self.code, self.message)


@dataclass(slots=True)
class ProblemList:
    """
    Collects problems while a project is read, so that all are told at once.

    Of problems alike, with one code in one file, the first MOST_ALIKE are kept one by one and the rest are counted.
    """

    found: list[Problem] = field(default_factory=list)
    _alike: Counter[tuple[str, str, Severity]] = field(default_factory=Counter)

    def error(
        self, place: Place, code: str, message: str, *, help: str = "", excerpt: str = "", width: int = 1
    ) -> None:
        self._add("error", place, code, message, help, excerpt, width)

    def warning(
        self, place: Place, code: str, message: str, *, help: str = "", excerpt: str = "", width: int = 1
    ) -> None:
        self._add("warning", place, code, message, help, excerpt, width)

    def extend(self, problems: Iterable[Problem]) -> None:
        self.found.extend(problems)

    def sorted(self) -> tuple[Problem, ...]:
        """All problems by place, each once; and where there were too many alike, how many more."""
        further = [
            _further(path, code, severity, number - MOST_ALIKE)
            for (path, code, severity), number in self._alike.items()
            if number > MOST_ALIKE
        ]
        return tuple(sorted({*self.found, *further}, key=Problem.in_order))

    def _add(
        self, severity: Severity, place: Place, code: str, message: str, help: str, excerpt: str, width: int
    ) -> None:
        if code not in CODES:
            raise KeyError(f"problem code {code} has no paragraph in narrate.problems.CODES")
        if place.line or place.cell:  # what is said of a file as a whole is never one of many
            alike = (place.path, code, severity)
            self._alike[alike] += 1
            if self._alike[alike] > MOST_ALIKE:
                return
        self.found.append(
            Problem(place=place, severity=severity, code=code, message=message, help=help, excerpt=excerpt, width=width)
        )


def _further(path: str, code: str, severity: Severity, number: int) -> Problem:
    return Problem(
        place=Place(path=path),
        severity=severity,
        code=code,
        message=f"{number:,} more like those told of this file, of the kind {code}",
        help=f"mend the first {MOST_ALIKE:,}; the others are told then",
    )


def has_errors(problems: Iterable[Problem]) -> bool:
    return any(problem.severity == "error" for problem in problems)


def written(problem: Problem) -> str:
    """
    The problem as a person reads it.

    >>> print(written(Problem(place=Place(path="records/a.yaml", line=5, column=22), severity="error",
    ...     code="N203", message="sample 'S014': volume_l is 'ten', expected a number above 0",
    ...     excerpt="    volume_l: ten", width=3, help="write 10")))
    records/a.yaml:5:22: error N203: sample 'S014': volume_l is 'ten', expected a number above 0
        5 |     volume_l: ten
                                 ^^^
          help: write 10
    """
    lines = [f"{problem.place}: {problem.severity} {problem.code}: {problem.message}"]
    if problem.excerpt:
        number = str(problem.place.line)
        text, at, width = _window(problem)
        lines.append(f"    {number} | {text}")
        if problem.place.column:
            lines.append(" " * (4 + len(number) + 3 + at) + "^" * width)
    if problem.help:
        lines.append(f"      help: {problem.help}")
    return "\n".join(lines)


def _window(problem: Problem) -> tuple[str, int, int]:
    """What is shown of the line, where the pointer begins in it, and how long it is."""
    text = problem.excerpt.replace("\t", " ")
    at = max(0, problem.place.column - 1)
    width = max(1, problem.width)
    if len(text) <= LONGEST_EXCERPT:
        return text, at, width
    start = max(0, min(at - LONGEST_EXCERPT // 4, len(text) - LONGEST_EXCERPT))
    shown = text[start : start + LONGEST_EXCERPT]
    before, after = "…" if start else "", "…" if start + LONGEST_EXCERPT < len(text) else ""
    return before + shown + after, at - start + len(before), max(1, min(width, start + LONGEST_EXCERPT - at))


def as_plain_data(problem: Problem) -> dict[str, object]:
    """The problem for `--json`: keys are stable, missing things are null."""
    place = problem.place
    return {
        "path": place.path,
        "line": place.line or None,
        "column": place.column or None,
        "sheet": place.sheet or None,
        "cell": place.cell or None,
        "severity": problem.severity,
        "code": problem.code,
        "message": problem.message,
        "help": problem.help or None,
    }


CODES: dict[str, str] = {
    # N1: files
    "N101": "The project folder, or a file that a project needs, is not there, or went while it was read. A project has a project.yaml, "
    "at least one records/*.yaml and at least one count sheet in counts/.",
    "N102": "The file cannot be read as text. Records and plain count sheets are UTF-8 text. A file saved by an "
    "office program under another encoding can be saved again as 'CSV UTF-8'.",
    "N103": "The YAML cannot be read: usually a tab used for indenting, a quotation mark that is not closed, or a "
    "second colon on a line whose text needs quotes.",
    "N104": "The same key is given twice in one mapping. Only one can be meant, so both are refused.",
    "N105": "YAML aliases (&name, *name), tags (!name) and merge keys (<<) are not read: a record says what it says.",
    "N106": "The file lies outside the project folder or is a link that leads out of it. Nothing outside the project "
    "is read.",
    "N107": "The file, or something in it, is far larger than a record or count sheet can be, and was not read.",
    "N108": "The output folder could not be written, or holds something that narrate did not make; or a sheet is to be "
    "taken into a project that holds another of the same name.",
    "N109": "A passage that the analyst edited rests on figures or grades that have changed since she wrote it. Her words "
    "are kept. Touch the line again, or approve the file, once it has been looked at.",
    "N110": "A narrative was approved, and figures behind it, or what is claimed of its subject, have changed since: the "
    "approval has lapsed. Sentences behind which nothing changed are approved still. Read it again "
    "and write a new date into 'approved'.",
    "N111": "A number in edited text agrees with none of the figures behind the sentence.",
    "N112": "The side file of a narrative is missing or is not one that narrate wrote. Every line of the narrative is "
    "taken to be the analyst's own, and nothing of it is renewed.",
    "N113": "Something was not checked, because it depends on a file that could not be read, or not wholly. What would "
    "have been told of it may be true or only follow from that file. Mend the file, then check again.",
    "N114": "A narrative file is not UTF-8 text, or holds the marks of an unfinished merge of two versions. It is not "
    "touched, because words could be lost; nothing is built until it is mended.",
    "N115": "A line at the head of a narrative seems to approve it, and does not say who did and when. It counts for "
    "nothing until it reads approved: {by: NAME, on: DATE}.",
    "N116": "Sentences of a narrative are not approved: they were written or drafted after it was approved, or nobody has "
    "approved it. Where a site or report is built from approved words alone they are left out.",
    "N117": "Words of the analyst claim more than the evidence behind the sentence bears, such as 'proves' or 'must have'. "
    "They are kept as they are; only she can know whether something else bears them.",
    "N118": "A narrative file bears the name of no context, phase or site: it was renamed, or its context has another id "
    "now. It is kept and shown nowhere. Side files (.drafted/) go by the same names.",
    "N119": "The section or the archive package cannot be made as asked: the Word template lacks a style that is needed "
    "or is no Word document, a photograph of the records is missing or cannot be read as a picture, or a figure has no "
    "alternative text, without which no tagged PDF is written.",
    "N120": "Another run of narrate is writing into the same project. One at a time may, so that neither sees half of "
    "the other's work.",
    "N121": "A narrative was saved in an editor while narrate was at work. It is kept as it was saved; the next run "
    "takes it up.",
    # N2: records
    "N201": "A field that the record needs is missing.",
    "N202": "The record has a field that is not known here. The near match is offered if there is one.",
    "N203": "The value is not of the kind, or not within the range, that the field holds.",
    "N204": "The same id is used by two records of one kind.",
    "N205": "A record names something that no record describes: an unknown context, phase or region pack.",
    "N206": "A sample has no rows in any count sheet. If nothing was found, say so: add 'sterile: true' to the sample.",
    "N207": "A volume is missing, or so small or so large that it is probably in another unit. Without a volume "
    "there is no density.",
    "N208": "A recovery test reports more seeds recovered than were added.",
    "N209": "An image file that a record lists is missing, or lacks its caption, credit or alt text.",
    "N210": "Text that would be public names a restricted context or sample. It is left out of public outputs.",
    # N3: count sheets
    "N301": "The header of a count sheet lacks a needed column, has one twice, or has one that is not known.",
    "N302": "A row of a count sheet has more or fewer cells than the header.",
    "N303": "A cell holds something that its column cannot hold.",
    "N304": "A row names a sample that no record describes.",
    "N305": "Two rows of one sample say the same thing twice: same taxon, part, condition, completeness, size class "
    "and fraction.",
    "N306": "A row names a size class that its sample does not have.",
    "N307": "A count sheet is empty.",
    # N31: sheets of a laboratory's own, and their layouts
    "N310": "A sheet cannot be read at all or not wholly: it is damaged, protected by a password, of another kind than "
    "its name says, or far larger than a count sheet. Nothing of it is guessed.",
    "N311": "A layout (NAME.layout.yaml) is missing, is not of the shape that layouts have, or does not fit its sheet. "
    "'narrate intake SHEET' works one out; it can be edited by hand.",
    "N312": "A text file is not plain UTF-8 with the usual separator, or holds letters that were broken earlier. What "
    "it was read as is told, so that somebody can look whether the words are right. Columns may be parted by blanks "
    "where they line up; a line that does not stand in them is not counted.",
    "N313": "A cell among the counts cannot be read as a count, or means less than it seems to: a sign without a key, "
    "an estimate, a number with a remark, a date that a spreadsheet made, a formula without a saved value. A layout can "
    "say what a sign means (cells, key) or what was typed (mend).",
    "N314": "A row or column of counts has no sample id or no name, or an id stands there twice.",
    "N315": "Something was set aside or taken for granted on the word of the layout: names without a part, remains that "
    "are no plants, rows that are no samples.",
    "N316": "The same taxon, part and condition stands twice in one sample of a sheet. The two are added together, and "
    "the note of the row says so.",
    "N317": "A stored total, percentage, density or ubiquity is not what the counts give. Both numbers are told with "
    "both places; narrate uses the counts.",
    "N318": "A volume, share or weight of a sample in a sheet cannot be read as a number, or two rows of one sample "
    "say different things.",
    # N4: taxa and words
    "N401": "No taxon pack in use knows this name. It is counted as written, but no rule can speak of it.",
    "N402": "A word that must come from the word lists (part, condition, kind of context, method …) is not there.",
    "N403": "An entry of a taxon or word pack is not of the shape that packs have.",
    "N404": "The same taxon, synonym or word is defined twice with different meanings.",
    "N405": "A source key is used that sources.yaml does not hold.",
    # N5: rules and statements
    "N501": "A rule, a statement or a change of one is not of the shape that packs have.",
    "N502": "A rule names a measure, taxon, part, tag, statement or fact that nothing defines.",
    "N503": "One of the rule's own examples does not come out as the rule says it should.",
    "N504": "The same rule or statement id is defined twice. A project does not define anew what comes with narrate: it "
    "retires it or sets it otherwise in packs/changes.yaml, and may add rules of its own under other ids.",
    "N505": "The criteria of a rule contradict each other, so that it can never hold.",
    # N6: audiences
    "N601": "An audience file is not of the shape that audiences have.",
    "N602": "A language file is not of the shape that languages have.",
    # N7: templates
    "N701": "A page template lacks its header, or its header says something that cannot be done.",
}
"""Every problem code and its paragraph in the manual. Codes are never reused."""
