"""What speaks for and against each claim that holds: bars to the right for it, to the left against it."""

from __future__ import annotations

from narrate.charts.frame import WIDTH, chart, clean
from narrate.charts.lettering import width_of, wrapped
from narrate.charts.marks import Block, Shape, Stroke, Words
from narrate.charts.names import capitalised, several
from narrate.model.claims import Claim
from narrate.model.figures import Chart
from narrate.model.packs import Packs

MOST_ROWS = 12
_ROW, _LINE, _BAR = 26.0, 15.0, 14.0


def draw(claims: tuple[Claim, ...], packs: Packs, chart_id: str, *, is_plain: bool = False) -> Chart | None:
    """
    One row a claim that holds, the firmest first; None where none holds.

    The length of a bar is the sum of the weights (in log-odds) of the arguments of that direction that hold; each
    argument is a piece of its own. `is_plain`: for visitors, who are told no scale of weights.
    """
    holding = sorted((c for c in claims if c.verdict == "holds"), key=lambda c: (-c.support, c.id))
    if not holding:
        return None
    shown = holding[:MOST_ROWS]
    shapes, height = _picture(shown, len(holding) - len(shown), packs)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(holding, packs),
        alt=_alt(shown, packs),
        note=_note(holding, is_plain),
        columns=(
            "Claim",
            "Weight for" if is_plain else "For (log-odds)",
            "Arguments for",
            "Weight against" if is_plain else "Against (log-odds)",
            "Arguments against",
            "Support, from 0 to 1" if is_plain else "Support (0–1)",
            "Grade",
        ),
        rows=tuple(_row(claim, packs) for claim in holding),
    )


def _note(holding: list[Claim], is_plain: bool) -> str:
    scale, before = (
        ("", "How likely a thing was before anybody looked is not drawn.")
        if is_plain
        else (" (in log-odds)", "How likely a claim is before any argument (its prior) is not drawn.")
    )
    return (
        f"n = {several(len(holding), 'claim')} that hold. A piece is one argument that holds, the longer the more "
        f"weight it has{scale}: dark for the claim, hatched against it. {before}"
    )


def _named(claim: Claim, packs: Packs) -> str:
    statement = packs.statements.get(claim.statement)
    return clean(claim.statement if statement is None else statement.title)


def _weights(claim: Claim, direction: str) -> tuple[float, ...]:
    return tuple(argument.weight for argument in claim.held(direction))


def _picture(claims: list[Claim], left_out: int, packs: Packs) -> tuple[list[Shape], float]:
    labels = [wrapped(_named(claim, packs), 13, 200) for claim in claims]
    start = max(width_of(line, 13) for lines in labels for line in lines) + 12
    left = max((sum(_weights(claim, "against")) for claim in claims), default=0.0)
    right = max((sum(_weights(claim, "for")) for claim in claims), default=0.0)
    unit = (WIDTH - start - 10) / max(left + right, 2.0)
    zero = start + left * unit
    drawn: list[Shape] = []
    y = 24.0
    for claim, lines in zip(claims, labels, strict=True):
        height = max(_ROW, _LINE * len(lines) + 8)
        middle = y + height / 2
        first = middle + 4.5 - _LINE * (len(lines) - 1) / 2
        drawn += [Words(x=start - 12, y=first + _LINE * n, text=line, anchor="right") for n, line in enumerate(lines)]
        drawn += _pieces(_weights(claim, "for"), zero, unit, middle, "charcoal", "")
        drawn += _pieces(_weights(claim, "against"), zero, -unit, middle, "clay", "//")
        y += height
    axis: list[Shape] = [
        Words(x=zero + 6, y=14, text="for", ink="soft", size=12),
        *([Words(x=zero - 6, y=14, text="against", ink="soft", size=12, anchor="right")] if left else []),
        Stroke(points=((zero, 20), (zero, y)), ink="ink", width=1.2),
    ]
    if left_out:
        drawn.append(Words(x=0, y=y + 16, text=f"and {left_out} more, all in the table", ink="soft"))
    return [*drawn, *axis], y + (24 if left_out else 6)


def _pieces(weights: tuple[float, ...], zero: float, unit: float, y: float, ink: str, hatch: str) -> list[Shape]:
    drawn: list[Shape] = []
    at = zero
    for weight in weights:
        end = at + weight * unit
        low, width = min(at, end), abs(end - at)
        drawn.append(Block(x=low + 0.5, y=y - _BAR / 2, width=max(width - 1.5, 1), height=_BAR, ink=ink, hatch=hatch))
        at = end
    return drawn


def _title(holding: list[Claim], packs: Packs) -> str:
    first = holding[0]
    against = sum(bool(claim.held("against")) for claim in holding)
    name = capitalised(_named(first, packs))
    if len(holding) == 1:
        return f"{name}: {several(len(first.held('for')), 'argument')} for, {len(first.held('against'))} against"
    spoken = "nothing speaks against any of them" if not against else f"something speaks against {against} of them"
    return f"{name} stands firmest of {len(holding)} claims; {spoken}"


def _alt(claims: list[Claim], packs: Packs) -> str:
    rows = "; ".join(
        f"{_named(c, packs)} {sum(_weights(c, 'for')):.1f} for, {sum(_weights(c, 'against')):.1f} against"
        for c in claims[:5]
    )
    rest = f"; and {len(claims) - 5} more rows" if len(claims) > 5 else ""
    return f"Bars of the weight of arguments for and against each claim, firmest first: {rows}{rest}."


def _row(claim: Claim, packs: Packs) -> tuple[str, ...]:
    for_it, against = _weights(claim, "for"), _weights(claim, "against")
    return (
        _named(claim, packs),
        f"{sum(for_it):.1f}",
        str(len(for_it)),
        f"{sum(against):.1f}",
        str(len(against)),
        f"{claim.support:.2f}",
        claim.grade,
    )
