"""YAML as text that knows its place, by both loaders."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from narrate.problems import ProblemList
from narrate.reading.source_text import SourceText
from narrate.reading.yaml_nodes import (
    FAST_LOADER,
    PURE_LOADER,
    Mapping,
    Node,
    Scalar,
    Sequence,
    read_nodes,
    value_of,
)
from tests.reading.folders import told_by


def bare(node: Node | None) -> object:
    """The texts of nodes alone: the loaders put values that were left empty in different places."""
    if isinstance(node, Sequence):
        return [bare(item) for item in node.items]
    if isinstance(node, Mapping):
        return [(key.text, bare(value)) for key, value in node.entries]
    return node.text if isinstance(node, Scalar) else None


LOADERS = pytest.mark.parametrize("loader", [FAST_LOADER, PURE_LOADER], ids=["fast", "pure"])


def read(text: str, loader: type = FAST_LOADER) -> tuple[Node | None, str]:
    problems = ProblemList()
    return read_nodes(SourceText("a.yaml", text), problems, loader), told_by(problems)


@LOADERS
@pytest.mark.parametrize("id", ["012", "no", "2107.10", "12:30", "1e3", "2024-05-01", "~", "0x1F", "yes", "1_000", "="])
def test_ids_stay_text(loader: type, id: str) -> None:
    """What looks like a number, a time, a date or a yes stays the text that was written."""
    node, told = read(f"id: {id}\n", loader)

    assert (node, told) == (Mapping(((Scalar("id", 1, 1, 2, False), Scalar(id, 1, 5, len(id), False)),), 1, 1), "")


@LOADERS
def test_every_value_knows_its_line_and_column(loader: type) -> None:
    """Lists, mappings and quoted texts know where they begin and how wide they are."""
    node, _ = read('samples:\n  - {id: "S 1"}\n', loader)
    samples = value_of(node, "samples") if node else None

    assert isinstance(samples, Sequence)
    assert (samples.line, samples.column) == (2, 3)
    assert samples.items == (Mapping(((Scalar("id", 2, 6, 2, False), Scalar("S 1", 2, 10, 5, True)),), 2, 5),)


MESSAGES = [
    (
        "a: 1\n\tb: 2\n",
        "a.yaml:2:1: error N103: the YAML cannot be read: a tab stands here, expected spaces\n"
        "    2 |  b: 2\n"
        "        ^\n"
        "      help: replace each tab by two spaces",
    ),
    (
        'a: "x\nb: 1\n',
        "a.yaml:1:4: error N103: the YAML cannot be read: a quotation mark is opened here and not closed\n"
        '    1 | a: "x\n'
        "           ^\n"
        "      help: close it at the end of the text",
    ),
    (
        "a: pit 3: fill\n",
        "a.yaml:1:9: error N103: the YAML cannot be read: a second ': ' stands in this line, expected one\n"
        "    1 | a: pit 3: fill\n"
        "                ^\n"
        "      help: write a text that holds ': ' in quotes",
    ),
    (
        "a: 1\n  stage: 2\n",
        "a.yaml:2:8: error N103: the YAML cannot be read: this line is indented more than the one before, which has a "
        "value of its own already\n"
        "    2 |   stage: 2\n"
        "               ^\n"
        "      help: give fields of one record the same indent",
    ),
    (
        'a: "Pit" 3\n',
        "a.yaml:1:10: error N103: the YAML cannot be read: text follows a closed quotation mark\n"
        '    1 | a: "Pit" 3\n'
        "                 ^\n"
        "      help: put quotation marks around the whole text",
    ),
    (
        "name: >2 mm\n",
        "a.yaml:1:7: error N103: the YAML cannot be read: the text begins with '>' or '|', which YAML keeps for texts "
        "of several lines\n"
        "    1 | name: >2 mm\n"
        "              ^\n"
        '      help: write the text in quotes, such as ">2 mm"',
    ),
    (
        "a: [1, 2\nb: 3\n",
        "a.yaml:1:4: error N103: the YAML cannot be read: a list is opened with '[' here and not closed\n"
        "    1 | a: [1, 2\n"
        "           ^\n"
        "      help: close it with ']', or write the text in quotes",
    ),
    (
        "a: 1\nb\nc: 2\n",
        "a.yaml:2:1: error N103: the YAML cannot be read: this line has no ': ' after its first word, expected "
        "'name: value'\n"
        "    2 | b\n"
        "        ^\n"
        "      help: add the colon; a text that goes on in the next line must be indented",
    ),
    (
        "a:\n  b: 1\n c: 2\n",
        "a.yaml:3:2: error N103: the YAML cannot be read: the indent of this line fits none of the lines before it, "
        "or a "
        "list and fields stand in one column\n"
        "    3 |  c: 2\n"
        "         ^\n"
        "      help: give fields of one record the same indent, and each record of a list its '- '",
    ),
    (
        "id: S1\nvolume_l: 4\nid: S2\n",
        "a.yaml:3:1: error N104: 'id' is given twice in one mapping, first in line 1, expected it once\n"
        "    3 | id: S2\n"
        "        ^^\n"
        "      help: delete one of the two",
    ),
    (
        "a: *rich\n",
        "a.yaml:1:4: error N105: '*rich' stands for a value elsewhere in the file, expected the value itself\n"
        "    1 | a: *rich\n"
        "           ^\n"
        "      help: write the value out; if the star belongs to the text, write the text in quotes",
    ),
    (
        "a: &rich 3\n",
        "a.yaml:1:4: error N105: '&rich' names a place in the file, expected plain values\n"
        "    1 | a: &rich 3\n"
        "           ^\n"
        "      help: if it belongs to the text, write the text in quotes; else delete '&rich'",
    ),
    (
        "a: !!python/object x\n",
        "a.yaml:1:4: error N105: a tag that begins with '!' stands before the value, expected plain values\n"
        "    1 | a: !!python/object x\n"
        "           ^\n"
        "      help: if it belongs to the text, write the text in quotes; else delete the tag",
    ),
    (
        "<<: {a: 1}\n",
        "a.yaml:1:1: error N105: '<<' merges another mapping in, expected the fields written out\n"
        "    1 | <<: {a: 1}\n"
        "        ^^",
    ),
    (
        "a: 1\n---\nb: 2\n",
        "a.yaml:2:1: error N103: a second document begins with '---', expected one document a file\n"
        "    2 | ---\n"
        "        ^\n"
        "      help: delete the '---', or move what follows to a file of its own",
    ),
    (
        'a: "\\0"\n',
        "a.yaml:1:4: error N103: the text holds an escape for a character that cannot be seen, expected plain text\n"
        '    1 | a: "\\0"\n'
        "           ^^^^\n"
        "      help: use single quotes, in which '\\' is an ordinary character",
    ),
    (
        "? [a]\n: b\n",
        "a.yaml:1:3: error N103: the name of a field is a list, expected a word\n"
        "    1 | ? [a]\n"
        "          ^\n"
        "      help: write 'name: value'",
    ),
]


@LOADERS
@pytest.mark.parametrize(("text", "expected"), MESSAGES, ids=[m[0][:12] for m in MESSAGES])
def test_each_fault_is_explained_alike_by_both_loaders(loader: type, text: str, expected: str) -> None:
    """The two loaders word faults differently; a person reads one message, with a pointer and a way to mend it."""
    assert read(text, loader)[1] == expected


@LOADERS
def test_a_windows_path_in_double_quotes_is_explained(loader: type) -> None:
    """The two loaders differ only in the column of a faulty escape."""
    _, told = read('a: "C:\\dig"\n', loader)

    assert "'\\' begins an escape here that stands for no character" in told
    assert "help: use single quotes" in told


@LOADERS
def test_depth_is_bounded(loader: type) -> None:
    """Sixty lists in one another are refused, not followed."""
    node, told = read("a: " + "[" * 60, loader)

    assert node is None
    assert told.startswith("a.yaml:1:43: error N107: lists or mappings lie more than 40 deep in one another")


def test_a_repeated_key_does_not_hide_other_faults() -> None:
    """Both values of the file's other faults are told, because reading goes on."""
    _, told = read("a: 1\na: 2\nb: *c\n")

    assert "error N104" in told
    assert "error N105" in told


def test_a_billion_laughs_are_refused() -> None:
    """Aliases that would grow without end are never followed."""
    text = "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\n"
    _, told = read(text)

    assert told.count("error N105") == 7


@settings(max_examples=300, deadline=None)
@given(text=st.text(alphabet=st.sampled_from("abc012:- \n\t[]{},'\"&*!|>%@`#?\\~.<é\u2028\ufeff\0"), max_size=60))
def test_no_text_raises_and_both_loaders_agree_on_what_they_take(text: str) -> None:
    """Whatever stands in a YAML file gives nodes or problems; what both loaders take, they read alike."""
    (fast, fast_told), (pure, pure_told) = read(text, FAST_LOADER), read(text, PURE_LOADER)

    assert bare(fast) == bare(pure) or fast_told or pure_told
