"""packs/names.yaml: names as a project's sheets write them, accepted by its analyst, each with its taxon."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from narrate.model.ids import TaxonId
from narrate.problems import ProblemList
from narrate.reading.asking import offered
from narrate.reading.pack_files import PackFolder, read_pack_file
from narrate.reading.yaml_nodes import Scalar

FILE = "names.yaml"


def with_accepted_names(
    lookup: Mapping[str, TaxonId], folders: Iterable[PackFolder], problems: ProblemList
) -> dict[str, TaxonId]:
    """
    Names of taxa in lower case -> id, with those that the project accepted.

    An entry that means no taxon of the packs, or gives another meaning to one of their names, is told and not used.
    """
    found = dict(lookup)
    for folder in folders:
        if not folder.is_local or not (folder.root / folder.base / FILE).is_file():
            continue
        file = read_pack_file(folder, f"{folder.base}/{FILE}", problems, "N403")
        for key, value in file.node.entries if file is not None else ():
            assert file is not None
            if not isinstance(value, Scalar) or not value.text.strip():
                message = f"name '{key.text}' has no taxon beside it, expected one"
                file.asking.tell(key, "N403", message, help="write it")
                continue
            meant = lookup.get(_flat(value.text))
            known = lookup.get(_flat(key.text))
            if meant is None:
                near = file.asking.near(value.text, lookup, 0.8)
                file.asking.tell(
                    value, "N401",
                    f"name '{key.text}' stands for '{value.text.strip()}', which is no taxon of the packs in use"
                    + offered(str(lookup[near]) if near else ""),
                    help=f"write '{lookup[near]}'" if near else "write a taxon of the packs",
                )  # fmt: skip
            elif known is not None and known != meant:
                file.asking.tell(
                    value, "N404",
                    f"name '{key.text}' stands for '{meant}' here, and the packs know it as '{known}', expected a name "
                    "that they do not know",
                    help="take the entry out; a single sheet may say otherwise under names in its layout",
                )  # fmt: skip
            else:
                found[_flat(key.text)] = meant
    return found


def _flat(name: str) -> str:
    return " ".join(name.lower().split())
