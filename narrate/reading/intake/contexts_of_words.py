"""Contexts that a sheet calls by a word alone, such as 'refuse': of two areas or two phases they are two contexts."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace

from narrate.reading.intake.said import Said
from narrate.reading.intake.told import Told

Facts = dict[str, dict[str, list[Said]]]


def apart_by_words(facts: Mapping[str, Mapping[str, list[Said]]], as_they_are: Iterable[str], told: Told) -> Facts:
    """
    The facts with a name of its own for each context that a word alone names and that area, feature or phase part.

    'floor' of Room 4 is another than 'floor' of Kiva 2; 'Locus 12' is left as it is, and so are those in `as_they_are`.
    """
    kept = set(as_they_are)
    result = {id: dict(said) for id, said in facts.items()}
    groups: dict[tuple[str, str], list[str]] = {}
    for id, said in result.items():
        role = "context" if said.get("context") else "feature"
        name = said[role][0].text if said.get(role) else ""
        if not id.startswith("\x00") and name not in kept and _is_of_words(name):
            groups.setdefault((role, name), []).append(id)
    for (role, name), ids in groups.items():
        names = _names(role, name, {id: result[id] for id in ids})
        for id in ids:
            one = result[id][role][0]
            if names[id] == name:
                continue
            others = sorted(set(names.values()) - {names[id]})[:2]
            told.warning(
                "N314", f"words {name}", one.place,
                f"the context is called '{name}', which is no name of one context: it stands with what parts it, and "
                f"is drafted as '{names[id]}' beside {' and '.join(map(repr, others))}, expected a number or name of "
                "its own",
                "if they are one context, give their samples the same one in the drafted records",
            )  # fmt: skip
            result[id]["context"] = [replace(one, text=names[id])]
            if role == "feature":
                result[id].setdefault("kind", [one])
                result[id].pop("feature")
    return result


def _is_of_words(name: str) -> bool:
    """Whether a name is made of words, without a number, a code or a letter that tells it from others of its kind."""
    return bool(re.fullmatch(r"[^\W\d_]{3,}(?:[ /,-]+[^\W\d_]{2,})*", name)) and not name.isupper()


def _names(role: str, name: str, facts: Mapping[str, Mapping[str, list[Said]]]) -> dict[str, str]:
    """Sample -> the name of its context, with the area and the phase that part it from others of its word."""
    before = ("site", "feature") if role == "context" else ("site",)
    several = [part for part in (*before, "phase") if len({_text(said, part) for said in facts.values()} - {""}) > 1]
    found = {}
    for id, said in facts.items():
        areas = [text for part in several if part in before and (text := _text(said, part))]
        phase = _text(said, "phase") if "phase" in several and not areas else ""
        found[id] = " ".join([*areas, name, *([f"({phase})"] if phase else [])])
    return found


def _text(said: Mapping[str, list[Said]], role: str) -> str:
    return said[role][0].text if said.get(role) else ""
