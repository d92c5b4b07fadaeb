"""Names that say which group of a genus is meant: 'Quercus sp. (red oak group)', 'Pinus, hard', 'Quercus (white)'."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.ids import TaxonId
from narrate.model.plants import Taxon

_SAID = re.compile(
    r"(?P<cf>cf\.? )?(?P<genus>[A-Z][a-z]+)(?: spp?\.?)?\s*(?:,\s*|[(\[]\s*)(?P<said>[A-Za-z]+(?:[ -][A-Za-z]+){0,2}?)"
    r"(?:[ -](?:group|gp|grp)\.?)?\s*[)\]]?"
)


def group_of_genus(name: str, taxa: Mapping[TaxonId, Taxon]) -> str:
    """
    The name of the group that the packs know, with its 'cf.'; empty where none of the genus is called so.

    A word for a species is no group: 'Carya (pecan)' stays as it is.
    """
    match = _SAID.fullmatch(name.strip())
    if match is None:
        return ""
    said = match["said"].lower()
    for word in (said, said.split(" ")[0]):
        for id in (f"{match['genus']} ({word} group)", f"{match['genus']} ({word})"):
            taxon = taxa.get(TaxonId(id))
            if taxon is not None and taxon.rank == "group" and said in (word, taxon.name.lower()):
                return f"{match['cf'] or ''}{id}"
    return ""
