"""The side file that remembers what a narrative file was last offered. It belongs into version control beside it."""

from __future__ import annotations

import json
from collections.abc import Mapping

from narrate.drafts.draft_file import Approval
from narrate.drafts.merge import Base, Drafted

FORMAT = "narrate drafts 1"


def base_text(base: Base) -> str:
    """One sentence a line, so that two states compare line by line."""
    rows = [
        json.dumps(
            {
                "key": s.key,
                "text": s.text,
                "refs": list(s.refs),
                "figures": dict(s.figures),
                "heading": s.heading,
                "paragraph": s.paragraph,
            },
            ensure_ascii=False,
        )
        for s in base.sentences.values()
    ]
    latest = {key: dict(behind) for key, behind in base.latest.items() if not _is_same(base, key, behind)}
    approval = {"by": base.approval.by, "on": base.approval.on, "at": base.approved_at} if base.approval else None
    rest = {"told": sorted(base.latest), "latest": latest, "seen": dict(base.seen), "approved": approval}
    lines = [f'"format": {json.dumps(FORMAT)}', '"sentences": [\n  ' + ",\n  ".join(rows) + "\n ]"]
    lines += [
        f"{json.dumps(name)}: {json.dumps(value, ensure_ascii=False, sort_keys=True)}" for name, value in rest.items()
    ]
    return "{" + ",\n ".join(lines) + "}\n"


def read_base(text: str) -> Base | None:
    """The base of a side file; None for anything that is not one: then every line of the narrative is hers."""
    try:
        said = json.loads(text)
        if said["format"] != FORMAT:
            return None
        sentences = {s["key"]: _sentence(s) for s in said["sentences"]}
        latest = {
            key: said["latest"].get(key, sentences[key].figures if key in sentences else {}) for key in said["told"]
        }
        approved = said["approved"]
        return Base(
            sentences=sentences,
            latest=latest,
            seen={str(k): str(v) for k, v in said["seen"].items()},
            approval=Approval(by=approved["by"], on=approved["on"]) if approved else None,
            approved_at=approved["at"] if approved else "",
        )
    except (ValueError, KeyError, TypeError, AttributeError):
        return None


def _is_same(base: Base, key: str, behind: Mapping[str, str]) -> bool:
    offered = base.sentences.get(key)
    return offered is not None and dict(offered.figures) == dict(behind)


def _sentence(said: Mapping[str, object]) -> Drafted:
    figures = said["figures"]
    refs = said["refs"]
    if not isinstance(figures, dict) or not isinstance(refs, list):
        raise TypeError("figures or refs are not of the shape that was written")
    return Drafted(
        key=str(said["key"]),
        text=str(said["text"]),
        refs=tuple(str(ref) for ref in refs),
        figures={str(name): str(value) for name, value in figures.items()},
        heading=str(said["heading"]),
        paragraph=int(str(said["paragraph"])),
    )
