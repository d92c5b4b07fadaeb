"""Spellings of names made plain: signs between words, shortened genera, the genus of a name."""

from __future__ import annotations

import re
from functools import lru_cache

_OF_NOBODY = re.compile(
    r"^(indet(?:erminate)?|undet(?:ermined)?|un(?:identified|known)|indeterminad[oa]s?|indeterminat[oaie]|"
    r"indéterminée?s?|unbestimmt)[._](?=[A-Z])",
    re.IGNORECASE,
)
"""'Indeterminate_Cereal' is a cereal, and no choice of two names."""


@lru_cache(maxsize=4096)
def tidy(written: str) -> str:
    """
    A name with the signs between its words made plain.

    >>> tidy("cf_Setaria"), tidy("Triticum.dicoccum"), tidy("Chenopodium_Atriplex"), tidy("Avena & Bromus")
    ('cf. Setaria', 'Triticum dicoccum', 'Chenopodium/Atriplex', 'Avena/Bromus')
    >>> tidy("Malva.sp...seed."), tidy("Triticum.dicoccum..glume.base."), tidy("cf..Lathyrus.sativus..seed.")
    ('Malva sp (seed)', 'Triticum dicoccum (glume base)', 'cf. Lathyrus sativus (seed)')
    >>> tidy("Galium.sp."), tidy("Bromus.cf.secalinus"), tidy("Rumex.sp")
    ('Galium sp.', 'Bromus cf. secalinus', 'Rumex sp')
    >>> tidy("Triticum undet."), tidy("Vicia gp."), tidy("Poa cf annua"), tidy("Hordeum, Secale")
    ('Triticum indet.', 'Vicia agg.', 'Poa cf. annua', 'Hordeum/Secale')
    >>> tidy("Bromus secalinus-Typ"), tidy("Vicia spec."), tidy("Galium tipo aparine")
    ('Bromus secalinus-type', 'Vicia sp.', 'Galium type aparine')
    >>> tidy("Hordeum indeterminado"), tidy("Poaceae indét."), tidy("Indeterminados")
    ('Hordeum indet.', 'Poaceae indet.', 'Indeterminados')
    >>> tidy("Indeterminate_Cereal"), tidy("Unknown_Fruit")
    ('indet. Cereal', 'Unknown Fruit')
    """
    name = " ".join(written.replace("\xa0", " ").split())
    if " " not in name and re.search(r"\w\.\.+\w", name):
        # 'Malva.sp...seed.' was 'Malva sp. (seed)' before a program put points for all signs.
        head = re.match(r"(?:cf|aff)\.\.", name)
        body = name[head.end() :] if head else name
        before, _, inside = re.sub(r"\b(sp|spp|cf|agg|indet|type)\.(?=\.\.)", r"\1", body).partition("..")
        words = inside.strip(".").replace(".", " ")
        name = f"{before} ({words})" if words else before.strip()
        name = f"cf. {name}" if head else name
    name = _OF_NOBODY.sub(r"\1 ", name)
    name = re.sub(r"(?<=[A-Z][a-z])([a-z]*)[._](?=[A-Z][a-z]{2})", r"\1/", name)
    name = re.sub(r"(?<=[a-z])\.(?=[a-z]{3})", " ", name)
    name = re.sub(r"(?<=[a-z]{3})\.(?=(?:sp|spp|cf|agg|indet|type)\b)", " ", name)
    name = re.sub(r"(?<=[a-z]{3} sp)\.(?=[a-z])|(?<=[a-z]{3} spp)\.(?=[a-z])", ". ", name)
    name = name.replace("_", " ")
    name = re.sub(r"(?<![\w.])(cf|aff)\.?(?=[\sA-Z])\s*", r"cf. ", name)
    name = (
        re.sub(
            r"\b(?:undet|unident|unid|undiff|undifferentiated|indeterminate|undetermined|ind"
            r"|indét|indéterminée?s?|indeterminad[oa]s?|indeterminat[oie]|unbestimmte?s?|onbepaald)\b\.?",
            "indet.",
            name,
            flags=re.I,
        )
        if len(name.split()) > 1
        else name
    )
    name = re.sub(r"(?<=[a-z])(?P<link>[ -])(?:Typ|typ|Typus|[Tt]ipo)(?![\w-])\.?", r"\g<link>type", name)
    name = re.sub(r"(?<=[a-z]) spec\.(?=\s|$)", " sp.", name)
    name = re.sub(r"\bgp\.?(?=\s|$)|\bgroup$", "agg.", name)
    name = re.sub(r"(?<=[a-z])\s*(?:&|\+)\s*(?=[A-Za-z])", "/", name)
    name = re.sub(r"^([A-Z][a-z]{3,}),\s*([A-Z][a-z]{3,})$", r"\1/\2", name)
    return re.sub(r"^\?\s*", "cf. ", " ".join(name.split()))


def with_words_apart(name: str) -> str:
    """
    Words that are written together, set apart; empty for names that are not.

    >>> with_words_apart("HordeumVulgare"), with_words_apart("Hordeum vulgare"), with_words_apart("McDonald")
    ('Hordeum vulgare', '', '')
    """
    match = re.fullmatch(r"([Cc]f)?([A-Z][a-z]{3,})([A-Z])([a-z]+)\.?", name.strip())
    return f"{'cf. ' if match[1] else ''}{match[2]} {match[3].lower()}{match[4]}" if match else ""


def with_genus(name: str, before: str) -> str:
    """
    A name whose genus is shortened to that of the row above.

    >>> [with_genus(name, "Triticum") for name in ("T. dicoccum", "cf. T. spelta", "R. crispus")]
    ['Triticum dicoccum', 'cf. Triticum spelta', 'R. crispus']
    """
    match = re.match(r"(cf\. )?([A-Z])\.?\s+(?=[a-z(])", name)
    if match and before and before[0] == match[2] and len(match[2]) == 1:
        return f"{match[1] or ''}{before} {name[match.end() :]}"
    if before and re.match(r'(?:"|”|″|–|-)\s+[a-z]{3,}', name):
        return f"{before} {name.split(None, 1)[1]}"
    return name


@lru_cache(maxsize=4096)
def genus_of(name: str) -> str:
    """
    The genus that a name begins with, for names below it that shorten it; empty for none.

    >>> genus_of("cf. Triticum spelta"), genus_of("Poaceae"), genus_of("wild grasses")
    ('Triticum', 'Poaceae', '')
    """
    match = re.match(r"(?:cf\.?\s+)?([A-Z][a-z]{2,})\b", tidy(name))
    return match[1] if match else ""
