"""What is wrong in YAML that cannot be read, in words that a person can act on."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from narrate.problems import ProblemList
from narrate.reading.source_text import SourceText, tell


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """How one kind of fault is told. The two loaders word the same fault differently: `said` matches both."""

    said: str
    """Pattern over the loader's own words: 'context | problem | character at the fault'."""
    message: str
    help: str
    before: str = ""
    """Pattern over what stands before the fault in its line."""
    points_at_start: bool = False
    """True where the beginning of the thing, not where the loader gave up, is what a person must look at."""


EXPLANATIONS: tuple[Explanation, ...] = (
    Explanation(
        said=r"tab character|'\\t'|\| \t$",
        message="a tab stands here, expected spaces",
        help="replace each tab by two spaces",
    ),
    Explanation(
        said=r"quoted scalar \| found unexpected end of stream|quoted scalar \| found unexpected document",
        message="a quotation mark is opened here and not closed",
        help="close it at the end of the text",
        points_at_start=True,
    ),
    Explanation(
        said=r"unknown escape character|escape|expected escape sequence",
        message="'\\' begins an escape here that stands for no character",
        help="use single quotes, in which '\\' is an ordinary character",
    ),
    Explanation(
        said=r"mapping values are not allowed",
        before=r": ",
        message="a second ': ' stands in this line, expected one",
        help="write a text that holds ': ' in quotes",
    ),
    Explanation(
        said=r"mapping values are not allowed",
        message="this line is indented more than the one before, which has a value of its own already",
        help="give fields of one record the same indent",
    ),
    Explanation(
        said=r"sequence entries are not allowed",
        message="a list begins with '- ' where a value was begun",
        help="begin the list in the next line, or write the text in quotes",
    ),
    Explanation(
        said=r"block scalar",
        message="the text begins with '>' or '|', which YAML keeps for texts of several lines",
        help='write the text in quotes, such as ">2 mm"',
        points_at_start=True,
    ),
    Explanation(
        said=r"could not find expected ':'",
        message="this line has no ': ' after its first word, expected 'name: value'",
        help="add the colon; a text that goes on in the next line must be indented",
        points_at_start=True,
    ),
    Explanation(
        said=r"flow sequence",
        message="a list is opened with '[' here and not closed",
        help="close it with ']', or write the text in quotes",
        points_at_start=True,
    ),
    Explanation(
        said=r"flow mapping",
        message="a mapping is opened with '{' here and not closed",
        help="close it with '}', or write the text in quotes",
        points_at_start=True,
    ),
    Explanation(
        said=r"cannot start any token|node content|anchor|alias|tag",
        message="the text begins with a sign that YAML keeps for itself",
        help="write the text in quotes",
    ),
    Explanation(
        said=r"block (?:mapping|collection) \|",
        before=r"[\"'] *$",
        message="text follows a closed quotation mark",
        help="put quotation marks around the whole text",
    ),
    Explanation(
        said=r"block mapping \||expected <block end>|block collection|'-' indicator|indentation",
        message="the indent of this line fits none of the lines before it, or a list and fields stand in one column",
        help="give fields of one record the same indent, and each record of a list its '- '",
    ),
    Explanation(
        said=r"YAML document|directive|document start",
        message="this line is read as an instruction to YAML, expected 'name: value'",
        help="delete lines that begin with '%' or '...'",
    ),
    Explanation(
        said=r"nesting depth|flow level",
        message="lists or mappings lie too deep in one another, expected a few levels",
        help="close each '[' and '{' where it ends",
    ),
)
_OTHER = Explanation(said="", message="the YAML cannot be read here", help="compare the line with the ones around it")


def explain_fault(source: SourceText, fault: yaml.MarkedYAMLError, problems: ProblemList) -> None:
    """Adds the problem for a fault of either loader."""
    mark = fault.problem_mark or fault.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (0, 0)
    text = source.line(line)
    before, at = text[: max(0, column - 1)], text[column - 1 : column]
    said = f"{fault.context or ''} | {fault.problem or ''} | {at}"
    kind = next((e for e in EXPLANATIONS if re.search(e.said, said) and re.search(e.before, before)), _OTHER)
    start = fault.context_mark
    if kind.points_at_start and start is not None:
        line, column = start.line + 1, start.column + 1
    code = "N107" if "depth" in kind.said else "N103"
    tell(source, problems, code, f"the YAML cannot be read: {kind.message}", line=line, column=column, help=kind.help)
