"""Shapes in which published tables give no counts by sample, and lists without samples. All sheets are invented."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

_LIST = """"Table 4. Taxa, part, condition and quantity of specimens in flotation samples",,,,
Taxon,Common Name,Part,Condition,Quantity
Acer-type,maple,wood,C,1
Amelanchier-type,serviceberry,wood,C,16
Chenopodium berlandieri,goosefoot,seed,C,34
Chenopodium berlandieri,goosefoot,seed,U,1
Zea mays,maize,cupule,C,7
Quercus-type,oak,wood,C,5
"""
_PRESENT = """Table 9. Presence of plant remains in flotation samples,,
,Early contexts,Late contexts
Number of Samples Analyzed,8,12
Taxon,N,N
Zea mays (cupule),8,2
Quercus-type,7,8
Iva annua achene,0,4
Portulaca-type seed,1,3
"N = the number of flotation samples in which specimens were identified.",,
"""
_UNDER_A_BANNER = """Taxon,Number of Samples in Which Specimens Were Identified,,,,% of Total Samples
,Roof Fall,Hearths,Middens,Total,
Zea mays,20,14,29,63,52.5
Quercus-type,13,13,24,50,41.7
Iva annua,1,9,8,18,15.0
Pinus-type,9,5,19,33,27.5
"""
_BY_TITLE = """Table 14. Ubiquity of plant parts in flotation samples,,,,
Taxon,Early (15 samples),,Late (38 samples),
,N,%,N,%
Zea mays,5,33,6,16
Quercus sp.,3,20,2,5
Iva annua,1,7,4,11
Pinus sp.,15,100,16,42
"""
_BESIDE_COUNTS = """Taxon,S1,S2,S3,No. of samples in which present
Zea mays,5,33,6,3
Quercus sp.,3,,2,2
Iva annua,1,,,1
Pinus sp.,15,10,16,3
"""
_LEAST = """;Ensemble 1;;Ensemble 2;;Ensemble 3;
;NMI;%;NMI;%;NMI;%
Plantes cultivées;30;100,0;46;100,0;58;100,0
Céréales (grains);22;73,3;36;78,3;43;74,1
Hordeum vulgare;12;40,0;20;43,5;21;36,2
Panicum miliaceum;6;20,0;10;21,7;13;22,4
Triticum dicoccum;4;13,3;6;13,0;9;15,5
Céréales (vannes);8;26,7;10;21,7;15;25,9
Triticum dicoccum, base de glume;5;16,7;6;13,0;8;13,8
Triticum sp., base d'épillet;3;10,0;4;8,7;7;12,1
"""


def _taken(folder: Path, text: str) -> TakenIn:
    sheet = folder / "feature_12.csv"
    sheet.write_text(text, encoding="utf-8")
    return take_in(sheet, packs())


def _sums(found: TakenIn) -> Counter[str]:
    """Items counted in each sample."""
    sums: Counter[str] = Counter()
    for row in found.rows:
        sums[row.sample] += row.count.number or 0
    return sums


def _told(found: TakenIn) -> str:
    return " ".join([*found.doubts, *(problem.message for problem in found.problems)])


def test_a_list_without_samples_is_one_sample_and_doubtful(tmp_path: Path) -> None:
    """Every line is a find, the first one with it; the id is the name of the file, and the reader hears so."""
    found = _taken(tmp_path, _LIST)

    assert [row.count.number for row in found.rows] == [1, 16, 34, 1, 7, 5]
    assert {row.sample for row in found.rows} == {"feature_12"}
    assert [row.condition for row in found.rows if row.count.number == 1] == ["charred", "uncharred"]
    assert found.rows[0].identification.written == "Acer-type"
    assert "DOUBTFUL: no heading names samples; the whole list is taken as one sample, 'feature_12'" in _told(found)


def test_numbers_of_samples_are_no_counts(tmp_path: Path) -> None:
    """Whether a note, a heading over all columns or the title says it: nothing is read, and the cell is named."""
    for text, cell in ((_PRESENT, "A9"), (_UNDER_A_BANNER, "B1"), (_BY_TITLE, "A1")):
        found = _taken(tmp_path, text)

        assert found.rows == ()
        assert "give in how many samples each taxon was found" in _told(found)
        assert f" in {cell})" in _told(found)


def test_numbers_of_samples_beside_counts_leave_the_counts(tmp_path: Path) -> None:
    """A column of ubiquity behind the samples is worked out, and the counts are read."""
    found = _taken(tmp_path, _BESIDE_COUNTS)

    assert _sums(found) == {"S1": 24, "S2": 43, "S3": 24}


def test_least_numbers_that_stand_alone_are_the_counts(tmp_path: Path) -> None:
    """Sums by hand, 22 + 8, 36 + 10, 43 + 15; the lines of groups, and of a group of groups, are no finds."""
    found = _taken(tmp_path, _LEAST)

    assert _sums(found) == {"Ensemble 1": 30, "Ensemble 2": 46, "Ensemble 3": 58}
    assert not any(problem.code == "N317" for problem in found.problems)


_LISTED = """PHASE,TAXON,FAMILY,CONTAM
Ab,Triticum dicoccum grain,Gramineae,No
Ab,Hordeum vulgare grain,Gramineae,No
Ab,Lens culinaris,Leguminosae,No
Ad,Lens culinaris,Leguminosae,No
Ad,Corylus avellana nutshell,Betulaceae,No
Ad,Avena sp.,Gramineae,Yes
Ad,Galium aparine,Rubiaceae,No
"""
_LISTED_BY_PLACE = """"Table 11. Taxa in two rodent caches",,,
Taxon,Part(s),Structure,Sample Type
Reproductive Plant Parts,,,
Chenopodium berlandieri,seed,House 4,"F, M"
Zea mays,kernel,House 4,F
Rubus sp.,seed,"House 4, House 9",M
Iva annua,achene,House 9,F
Other Parts,,,
Quercus sp.,wood,House 4,M
Zea mays,cob,House 9,M
"NOTES: All specimens listed in this table are charred.",,,
"F = flotation sample; M = macrofossil sample.",,,
"""
_CODED = """PHASE,TAXON
Ab,ARCTLAP
Ab,AVENSPE
Ab,BROMSPE
Ad,AVENSPE
Ad,CICEARI
Ad,COROSPE
"""
_CODES = """"TAXON_NAME","TAXON","FAMILY","GENUS"
"Arctium lappa","ARCTLAP","Compositae","Arctium"
"Avena spp.","AVENSPE","Gramineae","Avena"
"Bromus spp.","BROMSPE","Gramineae","Bromus"
"Cicer arietinum","CICEARI","Leguminosae","Cicer"
"Coronilla spp.","COROSPE","Leguminosae","Coronilla"
"""
_SITES = """taxon,period,site_name,phase_code,plant_part,age,count
Hordeum vulgare,Early,Oakton,OAK E2,grain,12984–12055 BP,6
Hordeum vulgare,Early,Oakton,OAK E3,grain,12055–11770 BP,15
Hordeum vulgare,Early,Elmby,ELM,grain,13250–12250 BP,32
Hordeum vulgare,Late,Oakton,OAK L1,grain,9250–8350 BP,136
Lens culinaris,Late,Oakton,OAK L1,seed,9250–8350 BP,4
Lens culinaris,Late,Ashford,ASH,seed,8250–7250 BP,11
"""
_REMARKS = """Site,Period,Hordeum vulgare,Lens,Vicia ervilia,grains,unburnt Olea,unburnt Ficus,Impressions
Oakton,E,x,x,,x,,,
Elmby,E,,x,x,,,,rice husk impression
Ashford,L,x,x,x,x,,,
"""
_UNKNOWN_HEAD = """"Table 4. Finds",,,,
Taxon,Common Name,Part,Condition,Specimens
Acer-type,maple,wood,C,1
Amelanchier-type,serviceberry,wood,C,16
Zea mays,maize,cupule,C,7
Quercus-type,oak,wood,C,5
"""


def test_a_list_of_names_by_phase_is_of_presences(tmp_path: Path) -> None:
    """Yes and No under a head that nobody knows are no amounts; each line is a taxon that was there."""
    found = _taken(tmp_path, _LISTED)

    assert Counter(row.sample for row in found.rows) == {"Ab": 3, "Ad": 4}
    assert {row.count.amount for row in found.rows} == {"noted as present"}
    assert {row.identification.taxon for row in found.rows if row.sample == "Ab"} == {
        "Triticum dicoccum", "Hordeum vulgare", "Lens culinaris",
    }  # fmt: skip
    assert "the list gives no amounts: each line is taken as a taxon that was present" in _told(found)
    assert "CONTAM" in _told(found)


def test_titles_sections_and_notes_are_no_presences(tmp_path: Path) -> None:
    """Six lines name a taxon and a place; an id that names two places is told."""
    found = _taken(tmp_path, _LISTED_BY_PLACE)

    assert [(row.identification.taxon, row.part) for row in found.rows if row.sample == "House 4"] == [
        ("Chenopodium berlandieri", "seed"), ("Zea mays", "kernel"), ("Quercus", "wood"),
    ]  # fmt: skip
    assert len(found.rows) == 6
    assert "DOUBTFUL: 'House 4, House 9' names several" in _told(found)


def test_a_list_of_presences_is_read_again_by_its_own_layout(tmp_path: Path) -> None:
    """The layout as written gives the same finds."""
    first = _taken(tmp_path, _LISTED)
    (tmp_path / "feature_12.csv.layout.yaml").write_text(first.text, encoding="utf-8")

    assert take_in(tmp_path / "feature_12.csv", packs()).rows == first.rows


def test_codes_stand_for_names_and_not_for_their_families(tmp_path: Path) -> None:
    """A list of codes with families and genera beside the names explains each code by its name."""
    (tmp_path / "taxa.csv").write_text(_CODES, encoding="utf-8")
    sheet = tmp_path / "list.csv"
    sheet.write_text(_CODED, encoding="utf-8")
    found = take_in(sheet, packs(), codes=tmp_path / "taxa.csv")

    assert found.layout is not None
    assert found.layout.names["ARCTLAP"] == "Arctium lappa"
    assert found.layout.names["CICEARI"] == "Cicer arietinum"
    assert len(found.rows) == 6


def test_phases_of_one_site_are_samples_of_their_own(tmp_path: Path) -> None:
    """The finest phase joins the id, the coarser one stays the phase, and nothing is added over phases."""
    found = _taken(tmp_path, _SITES)

    assert Counter(row.sample for row in found.rows) == {
        "Oakton/OAK E2": 1, "Oakton/OAK E3": 1, "Elmby/ELM": 1, "Oakton/OAK L1": 2, "Ashford/ASH": 1,
    }  # fmt: skip
    assert [one.text for one in found.facts["Oakton/OAK L1"]["phase"]] == ["Late", "Late"]
    assert not any(problem.code in ("N316", "N318") for problem in found.problems)


def test_words_under_a_head_of_their_own_are_told(tmp_path: Path) -> None:
    """A column of remarks behind the counts is in no table, and its words stand in what is left out."""
    found = _taken(tmp_path, _REMARKS)

    assert len(found.rows) == 9
    assert any("rice husk impression" in line for line in found.left_out)


def test_the_first_find_is_never_the_row_of_ids(tmp_path: Path) -> None:
    """Under a head that nobody knows nothing is read, and the reader hears so."""
    found = _taken(tmp_path, _UNKNOWN_HEAD)

    assert found.rows == ()
    assert [problem.code for problem in found.problems] == ["N311"]


_NO_NUMBER = """Table 18: Waterlogged plant remains,,
CONTEXT NO.,115,SK2
SAMPLE NO.,1,
SAMPLE VOLUME (litres),1,3
Rubus sp.,++,+
Chenopodium sp.,-,
Rumex sp.,-,+
"*Key - = < 10 + = 11 - 50 ++ = 51 - 100",,
"""


def test_a_context_without_a_sample_number_gives_its_own_id(tmp_path: Path) -> None:
    """Its finds are read under the id of the context, and the cell of the missing number is named."""
    found = _taken(tmp_path, _NO_NUMBER)

    assert Counter(row.sample for row in found.rows) == {"1": 3, "SK2": 2}
    told = [problem for problem in found.problems if problem.code == "N314"]
    assert [problem.place.cell for problem in told] == ["C3"]
    assert "the counts of context 'SK2' have no sample id; the context is taken for it" in told[0].message


def test_a_dash_that_the_key_calls_few_is_present(tmp_path: Path) -> None:
    """'- = < 10' in the key: a dash is a find, and a blank is none."""
    found = _taken(tmp_path, _NO_NUMBER)

    dashes = [row for row in found.rows if row.count.written == "-"]
    assert len(dashes) == 2
    assert {row.count.amount for row in dashes} == {"noted as present"}


_REGISTER = """SampleNo,CtxtNo,SampleType,FlotMeshSize,TotalVolume,FlotVolume,Grain,Chaff,Flot Charcoal,Weeds,Charred
5000,126002,Bulk,250,20,100,2,0,4,0,2
5001,126002,Bulk,250,20,90,2,0,4,0,2
5003,126010,Bulk,250,10,40,1,1,3,1,1
5007,126014,Bulk,250,40,150,4,3,4,3,4
5008,126020,Bulk,250,8,10,0,0,1,0,0
5011,126021,Bulk,250,9,12,1,0,2,1,1
"""
"""Invented, in the shape of a register of assessed samples: scores from 0 to 4, the mesh in micrometres."""


def test_scores_of_classes_are_presence_and_doubtful(tmp_path: Path) -> None:
    """No name is of a plant and no number above 4: nothing is counted, and the reader hears why."""
    found = _taken(tmp_path, _REGISTER)

    assert {row.count.amount for row in found.rows} == {"noted as present", "looked for and absent"}
    assert "DOUBTFUL: no name is of a plant and no amount above 4: scores for classes of remains" in _told(found)


def test_a_mesh_is_no_volume_and_a_short_word_is_the_context(tmp_path: Path) -> None:
    """'FlotMeshSize' beside 'FlotVolume' contradicts nothing; 'CtxtNo' holds the contexts."""
    found = _taken(tmp_path, _REGISTER)

    facts = found.facts["5003"]
    assert [one.text for one in facts["context"]] == ["126010"]
    assert [one.text for one in facts["flot volume"]] == ["40"]
    assert not any(problem.code == "N318" for problem in found.problems)


def test_small_counts_of_plants_stay_counts(tmp_path: Path) -> None:
    """The same small numbers under names of plants, or of classes with a larger one among them, are counted."""
    names = "Iva annua,Zea mays,Quercus sp.,Avena sp.,Rumex sp."
    plants = _REGISTER.replace("Grain,Chaff,Flot Charcoal,Weeds,Charred", names)
    larger = _REGISTER.replace("2,0,4,0,2", "2,0,14,0,2", 1)

    for text in (plants, larger):
        assert any(row.count.amount == "counted" for row in _taken(tmp_path, text).rows)
