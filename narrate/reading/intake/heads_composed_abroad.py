"""Heads in other languages put together of two words: 'Nazwa łacińska', 'Druh zbytku', 'Liczba całych okazów'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache

# Common practice, no source: the words of which such heads are made.
_WORDS: dict[str, str] = {
    "name": "name naam namn navn nome nom nombre nazwa název názov név naziv ime neve adı ad isim",
    "latin": (
        "latin lateinischer lateinisch latino latina łacińska łaciński latinský latinské latinski latinsko latinskt latinsk latijnse latijns latince "
        "scientifique científico cientifico scientifico científic wissenschaftlicher wissenschaftliche wetenschappelijke wetenschappelijk vetenskapligt "
        "vetenskaplig vitenskapelig videnskabelig videnskabeligt naukowa naukowy vědecký vedecký tudományos znanstveni znanstveno bilimsel botanisch "
        "botanischer botanische botanique botánico botanico botánica botaniczna botanický botanički taksonu taxonu gatunku druhu gatunkowa"
    ),
    "everyday": (
        "deutscher deutsch deutsche français française francais castellano español espanol italiano italiana português portugues català nederlandse nederlands "
        "nederlandstalige polska polski český česky české slovenský magyar hrvatski slovenski slovensko srpski svenskt svensk dansk danske norsk norske türkçe "
        "engelse englischer anglais inglés inglese angielska anglický angol vernaculaire commun común comun comú comum comune vulgar volgare popular popolare "
        "populaire trivialer umgangssprachlicher usuel usual zwyczajowa potoczna ludowa lidový közhasznú narodni volks gebruikelijke"
    ),
    "sort": "rodzaj typ typy druh druhy vrsta tip tipo type art typus soort kategoria kategória",
    "of remains": (
        "szczątków szczątka szczątku makroszczątków makroszczątka zbytku zbytků nálezu makrozbytku makrozbytků zvyšku zvyškov ostatka ostataka ostanka ostankov "
        "nalaza rest rester reste resten restes resto restos resti vestige vestiges planterest växtrest plantenrest pflanzenrest pflanzenrestes makrorest "
        "makroresten"
    ),
    "remains": "maradvány maradványok lelet",
    "its type": "típus típusa típusai fajtája jellege",
    "count": (
        "no nr nb n° nº n num núm numer number numero número nombre anzahl aantal count liczba ilość szt sztuk počet pocet broj število szám száma antal stk "
        "darab db adet"
    ),
    "of": "of de di der d' d’ van do",
    "fragments": (
        "frag frags fragm fgm frg fragment fragments fragmente fragmenten fragmenty fragmentów fragmentu fragmenti fragmenata fragmentov fragmentů fragmento "
        "fragmentos frammento frammenti bruchstück bruchstücke bruchstücken zlomky zlomek zlomků zlomkov úlomky úlomek úlomků úlomkov ulomci ulomaka ulomak "
        "odlomci odlomaka odlomki töredék töredékek töredékes kırık kırıklar parça parçalar ułamki ułamków połamane połamanych uszkodzone uszkodzonych "
        "brottstycken brudstykker brokstukken bruddstykker framm fragmenter úlomek rotti rotte partidos quebrados θραύσματα "
        "trozos pedazos partidas rotos rotas fraccionados brisés brisées cassés gebroken zerbrochen trasiga broken фрагменты обломки осколки фрагменти уламки"
    ),
    "whole": (
        "whole wholes complete intact całe całych cały cała kompletne kompletnych zachowane celé celých celá celý cijeli cijelih cijele cijela celi celih cele "
        "ép épek egész teljes tüm tam bütün sağlam hel hela hele helt ganz ganze ganzer ganzen vollständig vollständige entero enteros entera enteras entier "
        "entiers entière entières complet complets completo completos completi completa intero interi integro integri íntegros íntegras inteiro inteiros "
        "inteira inteiras heel gaaf gave completas compleet целые целых цілі ολόκληρα ακέραια întregi"
    ),
    "things": (
        "okazów okazy okaz egzemplarzy szczątków szczątki makroszczątków makroszczątki nasion nasiona ziarniaków ziarniaki ziaren owoców kusů kusov kusy zbytků "
        "semen plodů obilek primjeraka komada ostataka nalaza sjemenki zrna példány példányok mag magok darab restes graines pièces individus reste exemplare "
        "exemplar stücke stück körner samen restos semillas granos piezas ejemplares sementes resti semi pezzi cariossidi resten zaden korrels exemplaren stuks "
        "rester frön frø seeds grains remains items specimens pieces"
    ),
}  # fmt: skip
_ONE_OF = {sort: frozenset(words.split()) for sort, words in _WORDS.items()}
_EASTERN = frozenset(
    {"liczba", "ilość", "sztuk", "počet", "pocet", "broj", "število", "szám", "száma", "darab", "db", "adet"}
)
"""The words for a count before things that are counted; those of other languages stand in the phrases of heads."""


@cache
def composed_abroad(flat: str) -> str:
    """
    The role of a head made of two words of one sort: a name, the type of remains; empty for others.

    >>> composed_abroad("nazwa łacińska"), composed_abroad("český název"), composed_abroad("rodzaj szczątków")
    ('taxon', 'common name', 'part')
    >>> composed_abroad("maradvány típusa"), composed_abroad("liczba okazów"), composed_abroad("nombre de la rose")
    ('part', 'total', '')
    """
    words = [word for word in re.split(r"[\s/-]+|(?<=d['’])", flat) if word and word not in _ONE_OF["of"]]
    if len(words) != 2:
        return ""
    if (words[0] in _ONE_OF["sort"] and words[1] in _ONE_OF["of remains"]) or (
        words[0] in _ONE_OF["remains"] and words[1] in _ONE_OF["its type"]
    ):
        return "part"
    if words[0] in _EASTERN and words[1] in _ONE_OF["things"]:
        return "total"
    name = next((n for n, word in enumerate(words) if word in _ONE_OF["name"]), None)
    if name is None:
        return ""
    other = words[1 - name]
    return "taxon" if other in _ONE_OF["latin"] else "common name" if other in _ONE_OF["everyday"] else ""


@cache
def pieces_in_head(flat: str) -> str:
    """
    Whether a head counts whole things or fragments of them: 'count, whole', 'count, fragment', or empty.

    >>> pieces_in_head("liczba całych"), pieces_in_head("počet zlomků"), pieces_in_head("töredék db")
    ('count, whole', 'count, fragment', 'count, fragment')
    >>> pieces_in_head("anzahl ganze körner"), pieces_in_head("liczba okazów"), pieces_in_head("fragmento de raquis")
    ('count, whole', '', '')
    """
    words = [word for word in re.split(r"\s+|(?<=d['’])", flat) if word]
    rest = [word for word in words if word not in _ONE_OF["of"] and word not in _ONE_OF["count"]]
    said = [word for word in rest if word not in _ONE_OF["things"]]
    if len(said) != 1 or len(rest) > 2 or len(words) > 5:
        return ""
    return (
        "count, fragment" if said[0] in _ONE_OF["fragments"] else "count, whole" if said[0] in _ONE_OF["whole"] else ""
    )
