"""The search index: script files in parts that a page reads from the file system as from a server."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from operator import itemgetter

from narrate.model.claims import Claim
from narrate.web.claim_views import ClaimView
from narrate.web.evidence import Opener
from narrate.web.plants import TaxonView
from narrate.web.views import ContextView, SampleView

PART = 1500
"""Entries in one file, about 150 KB; a page takes in one after the other, and only once somebody searches."""

Entry = tuple[str, str, str, str, str, str, str, str]
"""What it is, title, page, further words, phase, kind of context, question, grade."""


def parts(entries: Iterable[Entry]) -> Mapping[str, bytes]:
    """Files of the index by their path within the site; there is always a first."""
    every = list(entries)
    cut = [every[start : start + PART] for start in range(0, len(every), PART)] or [[]]
    return {f"search/part-{number}.js": _file(number, part) for number, part in enumerate(cut, start=1)}


def entries(
    opener: Opener, contexts: Iterable[ContextView], samples: Iterable[SampleView], taxa: Iterable[TaxonView]
) -> Iterator[Entry]:
    """Contexts, plants and findings of contexts, phases and the dig first, the firmest before others; then samples."""
    of_context: dict[str, tuple[str, str]] = {}
    for context in contexts:
        phase = opener.wording.phase(context.phase)
        of_context[context.id] = (phase, context.kind)
        title = f"{context.id}, {context.kind}"
        yield ("context", title, context.target, str(context.summary.striptags()), phase, context.kind, "", "")
    for taxon in taxa:
        words = " ".join(filter(None, (taxon.name, *taxon.taxon.other_names, taxon.taxon.trade_name)))
        yield ("plant", taxon.title, taxon.target, words, "", "", "", "")
    found, of_samples = _findings(opener, of_context)
    yield from found
    for sample in samples:
        phase, kind = of_context.get(sample.context.id, ("", ""))
        title = f"{sample.id}, sample of {sample.context.id}"
        yield ("sample", title, sample.target, kind, phase, kind, "", "")
    yield from of_samples


def _findings(opener: Opener, of_context: Mapping[str, tuple[str, str]]) -> tuple[list[Entry], list[Entry]]:
    """Findings of contexts, phases and the dig, and those of samples, best supported first; no claim is kept."""
    found: list[tuple[float, Entry]] = []
    of_samples: list[tuple[float, Entry]] = []
    for claim in opener.edition.claims.all_holding():
        if claim.about.level == "sample":
            of_samples.append((-claim.support, _finding(opener, claim, of_context)))
        elif claim.about.level != "feature" or opener.members[claim.about.id] > 1:  # type: ignore[index]
            found.append((-claim.support, _finding(opener, claim, of_context)))
    by_support = itemgetter(0)
    return [one for _, one in sorted(found, key=by_support)], [one for _, one in sorted(of_samples, key=by_support)]


def _finding(opener: Opener, claim: Claim, of_context: Mapping[str, tuple[str, str]]) -> Entry:
    view = ClaimView(opener, claim)
    id = claim.about.id
    if claim.about.level == "sample":
        id = opener.edition.project.sample(id).context  # type: ignore[arg-type]
    phase, kind = of_context.get(id, ("", ""))
    if claim.about.level == "phase":
        phase = view.subject
    title = f"{view.title}: {view.subject}"
    asked = opener.edition.packs.questions.get(claim.question, claim.question)
    return ("finding", title, view.page, "", phase, kind, asked, claim.grade)


def _file(number: int, part: list[Entry]) -> bytes:
    # '<' is written as an escape, so that no entry can close a script that holds the file.
    said = json.dumps(part, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    said = said.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f"narrateFound({number},{said});\n".encode("utf-8", "replace")


def tried(taxa: Sequence[TaxonView], contexts: Sequence[ContextView]) -> tuple[str, ...]:
    """Words that find something, to begin a search with: the commonest plant, a kind of context, a context."""
    counted = {taxon: sum(tally.counted for tally in taxon.tallies) for taxon in taxa}
    plant = max(counted, key=lambda taxon: counted[taxon], default=None)
    first = contexts[0] if contexts else None
    return (
        *((plant.name or plant.id,) if plant is not None else ()),
        *((first.kind, first.id) if first is not None else ()),
    )
