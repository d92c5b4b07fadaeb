"""The side file that remembers what a narrative file was last offered. It belongs into version control beside it."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from narrate.drafts.basis import Figures
from narrate.drafts.draft_file import Approval
from narrate.drafts.offered import Base, Drafted, Signed

FORMAT = "narrate drafts 2"
_FIRST = "narrate drafts 1"


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
    rest = {
        "told": sorted(base.latest),
        "latest": latest,
        "texts": {key: text for key, text in base.texts.items() if not _is_same_text(base, key, text)},
        "seen": {marks: list(texts) for marks, texts in base.seen.items()},
        "claims": dict(base.claims),
        "approved": _plain_signed(base.signed) if base.signed else None,
    }
    lines = [f'"format": {json.dumps(FORMAT)}', '"sentences": [\n  ' + ",\n  ".join(rows) + "\n ]"]
    lines += [
        f"{json.dumps(name)}: {json.dumps(value, ensure_ascii=False, sort_keys=True)}" for name, value in rest.items()
    ]
    return "{" + ",\n ".join(lines) + "}\n"


def read_base(text: str, figures_of: Callable[[Iterable[str]], Figures] | None = None) -> Base | None:
    """
    The base of a side file; None for anything that is not one: then every line of the narrative is hers.

    figures_of:  figures behind references now. Side files of the first form named figures in words, which cannot be
                 followed; they are read as if nothing had changed since.
    """
    try:
        said = json.loads(text)
        if said["format"] == _FIRST and figures_of is not None:
            return _first_form(said, figures_of)
        if said["format"] != FORMAT:
            return None
        sentences = {s["key"]: _sentence(s) for s in said["sentences"]}
        latest = {
            key: said["latest"].get(key, sentences[key].figures if key in sentences else {}) for key in said["told"]
        }
        return Base(
            sentences=sentences,
            latest=latest,
            texts={key: said["texts"].get(key, sentences[key].text) for key in said["told"] if key in sentences}
            | _texts(said["texts"]),
            seen={str(k): tuple(str(text) for text in texts) for k, texts in said["seen"].items()},
            claims=_texts(said["claims"]),
            signed=_signed(said["approved"]) if said["approved"] else None,
        )
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def _first_form(said: Mapping[str, object], figures_of: Callable[[Iterable[str]], Figures]) -> Base:
    found = [_sentence(s) for s in said["sentences"]]  # type: ignore[attr-defined]
    sentences = {s.key: replace(s, figures=figures_of(s.refs)) for s in found}
    told = [str(key) for key in said["told"]]  # type: ignore[attr-defined]
    return Base(
        sentences=sentences,
        latest={key: sentences[key].figures for key in told if key in sentences},
        texts={key: sentences[key].text for key in told if key in sentences},
        seen={str(k): (str(v),) for k, v in said["seen"].items()},  # type: ignore[attr-defined]
    )


def _plain_signed(signed: Signed) -> dict[str, object]:
    return {
        "by": signed.approval.by,
        "on": signed.approval.on,
        "lines": {text: dict(behind) for text, behind in signed.lines.items()},
        "ground": dict(signed.ground),
        "claims": dict(signed.claims),
    }


def _signed(said: Mapping[str, object]) -> Signed:
    lines = said["lines"]
    if not isinstance(lines, dict):
        raise TypeError("approved lines are not of the shape that was written")
    return Signed(
        approval=Approval(by=str(said["by"]), on=str(said["on"])),
        lines={str(text): _texts(behind) for text, behind in lines.items()},
        ground=_texts(said["ground"]),
        claims=_texts(said["claims"]),
    )


def _texts(said: object) -> dict[str, str]:
    if not isinstance(said, dict):
        raise TypeError("figures are not of the shape that was written")
    return {str(name): str(value) for name, value in said.items()}


def _is_same(base: Base, key: str, behind: Mapping[str, str]) -> bool:
    offered = base.sentences.get(key)
    return offered is not None and dict(offered.figures) == dict(behind)


def _is_same_text(base: Base, key: str, text: str) -> bool:
    return key in base.sentences and base.sentences[key].text == text


def _sentence(said: Mapping[str, object]) -> Drafted:
    refs = said["refs"]
    if not isinstance(refs, list):
        raise TypeError("references are not of the shape that was written")
    return Drafted(
        key=str(said["key"]),
        text=str(said["text"]),
        refs=tuple(str(ref) for ref in refs),
        figures=_texts(said["figures"]),
        heading=str(said["heading"]),
        paragraph=int(str(said["paragraph"])),
    )
