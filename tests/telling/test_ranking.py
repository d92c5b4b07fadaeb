"""The ranking in a terminal."""

from __future__ import annotations

from narrate.model.ids import Subject
from narrate.model.next_steps import NextStep
from narrate.model.strength import Part, PartMeant, Ranking, Strength
from narrate.telling.ranking import ranking_text


def test_the_table_is_aligned_and_says_what_it_means() -> None:
    """Words to the left, figures to the right, marks below each other, the step last; then what marks mean."""
    step = NextStep(
        id="sort.heavy",
        about=Subject(level="context", id="C12"),
        says="sort the heavy fraction of S4",
        cost=2,
        questions=("fuel", "food"),
    )
    many = (Part(id="items", value=1204, text="1,204", points=3), Part(id="density", value=4.0, text="4", points=1))
    few = (Part(id="items", value=9, text="9", points=0), Part(id="density", value=None, text="none", points=0))
    ranking = Ranking(
        meant=(
            PartMeant(id="items", title="items", explained="Items counted."),
            PartMeant(id="density", title="density", explained="Items per litre."),
        ),
        by_level=(
            (
                "context",
                (
                    Strength(
                        subject=Subject(level="context", id="C12"), kind="storage pit", parts=many, next_step=step
                    ),
                    Strength(subject=Subject(level="context", id="C3"), kind="pit", parts=few),
                ),
            ),
        ),
        of_dig=(step,),
    )

    assert ranking_text(ranking).splitlines() == [
        "context  kind             items   density     sum  next step",
        "C12      storage pit  1,204 ●●●     4 ●··  4 of 6  sort the heavy fraction of S4 (an hour; fuel, food)",
        "C3       pit              9 ···  none ···  0 of 6  leave it",
        "",
        "The sum is that of the marks; what each part gives them for:",
        "  items    Items counted.",
        "  density  Items per litre.",
        "",
        "The next step is what serves most questions for its cost; in brackets the rough cost and the questions. "
        "'Leave it': no work that is known here would firm up or settle anything.",
        "",
        "For the whole dig",
        "  sort the heavy fraction of S4 (an hour)",
    ]
