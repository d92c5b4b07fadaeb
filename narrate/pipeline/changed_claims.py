"""Claims that appeared, vanished, or changed their grade, with the reason in figures."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from narrate.drafts.basis import Ground, differences, figures, name_of
from narrate.model.changes import Change
from narrate.model.claims import GRADE_NAMES, Claim


def changed_claims(old: Ground, new: Ground, names: Mapping[str, str]) -> tuple[Change, ...]:
    """
    In the order of the claims; those that do not hold in either state are passed over.

    names:  word before the slash of old claims -> that of new ones, where the subject has another id now.
    """
    before = {_renamed(claim.id, names): claim for claim in old.claims}
    after = dict(new.claims.by_id)
    found = []
    for id in dict.fromkeys((*after, *before)):
        was, is_ = before.get(id), after.get(id)
        grades = _grade(was), _grade(is_)
        if grades[0] == grades[1]:
            continue
        claim = is_ or was
        assert claim is not None
        statement = new.packs.statements.get(claim.statement) or old.packs.statements.get(claim.statement)
        found.append(
            Change(
                kind="changed" if grades[0] and grades[1] else "added" if grades[1] else "removed",
                subject=id,
                what=statement.title if statement else "",
                before=grades[0] or _standing(was),
                after=grades[1] or _standing(is_),
                reasons=_reasons(was, is_, old, new, names),
            )
        )
    return tuple(found)


def _grade(claim: Claim | None) -> str:
    return claim.grade if claim is not None and claim.verdict == "holds" and claim.grade in GRADE_NAMES else ""


def _standing(claim: Claim | None) -> str:
    return "not judged" if claim is None else claim.verdict


def _reasons(
    was: Claim | None, is_: Claim | None, old: Ground, new: Ground, names: Mapping[str, str]
) -> tuple[str, ...]:
    """Arguments and limits that came and went, and figures that moved; the support where nothing else did."""
    one = _held(was), _held(is_)
    told = [f"holds now: {says}" for rule, says in one[1].items() if rule not in one[0]]
    told += [f"holds no more: {says}" for rule, says in one[0].items() if rule not in one[1]]
    then = {_renamed(key, names): value for key, value in (figures([was.id], old) if was else {}).items()}
    now = figures([is_.id], new) if is_ else {}
    shared = then.keys() & now.keys()
    told += differences(
        {key: then[key] for key in shared if "#" in key}, {key: now[key] for key in shared if "#" in key}, _short(new)
    )
    limits = [{limit.says for limit in claim.limits} if claim else set() for claim in (was, is_)]
    told += [f"limit in force: {says}" for says in sorted(limits[1] - limits[0])]
    told += [f"limit lifted: {says}" for says in sorted(limits[0] - limits[1])]
    if not told and was is not None and is_ is not None:
        told.append(f"support: {was.support:.2f}, now {is_.support:.2f}")
    return tuple(told)


def _short(ground: Ground) -> Callable[[str], str]:
    return lambda key: name_of(key, ground).rpartition(", ")[2]


def _held(claim: Claim | None) -> dict[str, str]:
    if claim is None:
        return {}
    return {a.rule: f"{a.says} ({a.direction})" for a in claim.arguments if a.verdict == "holds"}


def _renamed(id: str, names: Mapping[str, str]) -> str:
    key, slash, rest = id.partition("/")
    return names.get(key, key) + slash + rest
