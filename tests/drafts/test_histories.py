"""
The merge against a model: what an analyst, the data and new versions of narrate may do, in any order.

The model keeps beside the merge what must be true: which words are hers, what she deleted and on which figures, what
she approved and on which figures.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from narrate.drafts.base_file import base_text, read_base
from narrate.drafts.draft_file import DraftFile, Line, draft_text, read_draft
from narrate.drafts.merge import Merged, merged
from narrate.drafts.offered import Base, Drafted


@dataclass(slots=True)
class Model:
    base: Base | None = None
    text: str = ""
    """The file."""
    draft: dict[str, int] = field(default_factory=dict)
    """Mark -> its figure."""
    manner: int = 0
    """Version of narrate: it words drafts in its own way."""
    own_words: set[str] = field(default_factory=set)
    """Words that only she wrote; they may vanish only by her hand."""
    deleted: dict[str, int] = field(default_factory=dict)
    """Mark of a deleted draft -> the figure at which she deleted it."""
    signed: dict[str, dict[str, int]] = field(default_factory=dict)
    """Approved words that she has not touched since -> the figures that they were approved on."""
    is_signed: bool = False
    turn: int = 0

    def sentences(self) -> tuple[Drafted, ...]:
        order = sorted(self.draft.items(), key=lambda item: (int(item[0], 16) % 3, item[0]))
        return tuple(
            Drafted(
                key=key,
                text=f"Draft {key} says {n} in manner {self.manner}.",
                refs=(f"C1/{key}",),
                figures={f"C1/{key}": str(n)},
                heading="ABC"[int(key, 16) % 3],
                paragraph=int(key, 16) % 3,
            )
            for key, n in order
        )

    def file(self) -> DraftFile:
        return read_draft(self.text)

    def line(self, pick: int) -> Line | None:
        lines = self.file().lines()
        return lines[pick % len(lines)] if lines else None

    def touched(self, *lines: Line) -> None:
        for line in lines:
            self.signed.pop(line.text, None)

    def word(self) -> str:
        self.turn += 1
        word = f"hers{self.turn}"
        self.own_words.add(word)
        return word


def with_row(text: str, row: str, new: str | None) -> str:
    """The file with another row in place of the first such, or without it."""
    whole = f"\n{text}\n"
    assert f"\n{row}\n" in whole
    return whole.replace(f"\n{row}\n", "\n" if new is None else f"\n{new}\n", 1)[1:-1]


def words_in(text: str) -> set[str]:
    return set(text.replace(".", " ").split())


def marked(text: str, *lines: Line) -> str:
    keys = [key for line in lines for key in line.keys]
    return f"{text} <!-- {' '.join(keys)} -->" if keys else text


def reword(model: Model, pick: int) -> None:
    line = model.line(pick)
    if line is None:
        return
    model.own_words -= words_in(line.text)
    model.touched(line)
    model.text = with_row(model.text, line.row, line.lead + marked(f"Now {model.word()}.", line))


def extend(model: Model, pick: int) -> None:
    line = model.line(pick)
    if line is not None:
        model.touched(line)
        model.text = with_row(model.text, line.row, line.lead + marked(f"{line.text} And {model.word()}.", line))


def delete(model: Model, pick: int) -> None:
    line = model.line(pick)
    if line is None:
        return
    others = [key for other in model.file().lines() if other.row != line.row for key in other.keys]
    model.own_words -= words_in(line.text)
    model.touched(line)
    for key in line.keys:
        if model.base is not None and key in model.base.latest and key not in others:
            model.deleted[key] = int(model.base.latest[key].get(f"C1/{key}", "0"))
    model.text = with_row(model.text, line.row, None)


def add(model: Model, pick: int) -> None:
    line = model.line(pick)
    new = f"Here is {model.word()}."
    if line is not None and pick % 2:
        model.text = with_row(model.text, line.row, f"{line.row}\n{new}")
    else:
        model.text += f"\n{new}\n"


def join(model: Model, pick: int) -> None:
    """Two neighbours in one line."""
    lines = model.file().lines()
    if len(lines) < 2:
        return
    at = pick % (len(lines) - 1)
    one, other = lines[at], lines[at + 1]
    if one.row == other.row:
        return
    model.touched(one, other)
    both = marked(f"{one.text} {other.text}", one, other)
    model.text = with_row(with_row(model.text, other.row, None), one.row, both)


def split(model: Model, pick: int) -> None:
    """One line in two, its marks on the first or on both."""
    line = model.line(pick)
    if line is None:
        return
    model.touched(line)
    first, second = marked(line.text, line), f"Besides, {model.word()}."
    model.text = with_row(model.text, line.row, f"{first}\n{marked(second, line) if pick % 2 else second}")


def itemise(model: Model, pick: int) -> None:
    line = model.line(pick)
    if line is not None:
        model.text = with_row(model.text, line.row, f"- {line.row.lstrip('- ')}")


def shuffle(model: Model, pick: int) -> None:
    head, dashes, body = model.text.rpartition("---\n")
    blocks = body.strip().split("\n\n")
    at = pick % len(blocks)
    model.text = head + dashes + "\n\n".join(blocks[at:] + blocks[:at]) + "\n"


def wrap(model: Model, pick: int) -> None:
    """Her editor breaks a line."""
    line = model.line(pick)
    if line is not None and " " in line.text and "\n" not in line.row:
        model.text = with_row(model.text, line.row, line.row.replace(" ", "\n", 1) if not line.lead else line.row)


def approve(model: Model, pick: int) -> None:
    retract(model, pick)
    model.turn += 1
    model.is_signed = True
    model.text = f"---\napproved: {{by: A. Analyst, on: {model.turn}}}\n---\n{model.text.lstrip()}"
    latest = model.base.latest if model.base is not None else {}
    model.signed = {
        line.text: {key: int(latest[key][f"C1/{key}"]) for key in line.keys if f"C1/{key}" in latest.get(key, {})}
        for line in model.file().lines()
    }


def retract(model: Model, pick: int) -> None:
    if model.text.startswith("---\n"):
        model.text = model.text.split("---\n", 2)[2]
    model.signed, model.is_signed = {}, False


def change(model: Model, pick: int) -> None:
    if model.draft:
        model.draft[sorted(model.draft)[pick % len(model.draft)]] += 1


def correct(model: Model, pick: int) -> None:
    """A figure goes back to what it was at first."""
    if model.draft:
        model.draft[sorted(model.draft)[pick % len(model.draft)]] = 1


def withdraw(model: Model, pick: int) -> None:
    if model.draft:
        del model.draft[sorted(model.draft)[pick % len(model.draft)]]


def bring(model: Model, pick: int) -> None:
    model.draft.setdefault(f"{pick % 16**4:04x}", 1)


def new_version(model: Model, pick: int) -> None:
    model.manner += 1


def tell(model: Model, pick: int = 0) -> None:
    before = model.text
    result = merged(model.base, read_draft(before) if before else None, model.sentences())
    model.base = read_base(base_text(result.base))
    assert model.base == result.base, "the side file does not read back"
    model.text = draft_text(result.file)
    check(model, result)
    # What is told again at once is told the same.
    twice = merged(model.base, model.file(), model.sentences())
    assert draft_text(twice.file) == model.text, "a second run changed the file"
    assert twice.lapses == result.lapses and twice.approved == result.approved
    assert twice.stale.keys() == result.stale.keys(), "a second run forgot what is stale"


def check(model: Model, result: Merged) -> None:
    lines = result.file.lines()
    words = {word for line in lines for word in words_in(line.text)}
    assert model.own_words <= words, "a word of hers was lost"
    present = result.file.keys()
    for key, figure in list(model.deleted.items()):
        if key in model.draft and model.draft[key] == figure:
            assert key not in present, "a deleted sentence came back while its claim stood"
        else:
            del model.deleted[key]
    texts = {line.text for line in lines}
    for text, then in list(model.signed.items()):
        if all(model.draft.get(key) == figure for key, figure in then.items()):
            assert text in texts, "approved words went while nothing behind them changed"
        else:
            del model.signed[text]
    if not model.is_signed:
        assert result.approved == frozenset() and not result.lapses


ACTS: tuple[Callable[[Model, int], None], ...] = (
    *(reword, extend, delete, add, join, split, itemise, shuffle, wrap, approve, retract),
    *(change, correct, withdraw, bring, new_version, tell, tell, tell),
)


@settings(max_examples=1000, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(
    marks=st.sets(st.integers(0, 16**4 - 1), min_size=2, max_size=6),
    acts=st.lists(st.tuples(st.sampled_from(ACTS), st.integers(0, 16**4 - 1)), min_size=8, max_size=30),
)
def test_no_history_loses_a_word_or_brings_a_deleted_sentence_back(
    marks: set[int], acts: list[tuple[Callable[[Model, int], None], int]]
) -> None:
    """A thousand histories: her words stay, what she deleted stays away, what she approved stays as it was."""
    model = Model(draft={f"{mark:04x}": 1 for mark in marks})
    tell(model)
    for act, pick in acts:
        act(model, pick)
    tell(model)
