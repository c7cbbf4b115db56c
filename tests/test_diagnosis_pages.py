"""The printed key and the index of symptoms: whole, followable, and true to the records."""

from calculators.core.diagnosis import CAUSES, FINDINGS
from scripts.pages.diagnosis import key_page, symptom_index, symptoms_page
from scripts.pages.diagnosis_key import DEEPEST, key


def follow(section, truth):
    """Walk a section's couplets; ``truth`` says yes or no to a finding."""
    lead, steps = section.first, 0
    by_number = {one.number: one for one in section.couplets}
    while lead.couplet:
        one = by_number[lead.couplet]
        lead, steps = (one.yes if truth(one.finding) else one.no), steps + 1
    return lead.problems, steps


def test_every_problem_stands_at_an_end_of_the_key(library):
    ends = {
        slug
        for section in key(library)
        for lead in (
            section.first,
            *(lead for one in section.couplets for lead in (one.yes, one.no)),
        )
        for slug in lead.problems
    }
    assert ends == set(CAUSES)


def test_couplets_are_numbered_through_and_lead_onwards(library):
    sections = key(library)
    assert sections[0].where == "animals"
    numbers = [one.number for section in sections for one in section.couplets]
    assert numbers == list(range(1, len(numbers) + 1))
    for section in sections:
        for one in section.couplets:
            for lead in (one.yes, one.no):
                assert bool(lead.couplet) != bool(lead.problems)
                assert not lead.couplet or lead.couplet > one.number


def test_a_tank_with_all_strong_signs_of_a_problem_is_led_to_it(library):
    sections = {section.where: section for section in key(library)}
    reached = 0
    for slug, cause in CAUSES.items():
        strong = {name for name, row in cause.rows.items() if row.strength == "strong-for"}
        for where in {FINDINGS[name].where for name in strong}:
            problems, steps = follow(sections[where], lambda name, signs=strong: name in signs)
            assert steps <= DEEPEST
            reached += slug in problems
            if slug in problems:
                break
        else:
            continue
    assert reached / len(CAUSES) >= 0.9


def test_pages_link_every_problem(library):
    for text in (key_page(library), symptoms_page(library)):
        for slug, cause in CAUSES.items():
            assert f'href="../{slug}/"' in text, slug
            assert cause.name in text


def test_the_index_names_what_a_sign_points_to(library):
    index = {one.key: one for _, found in symptom_index(library) for one in found}
    assert index["coat-black-tufts"].strongly == ("black-brush",)
    assert "potassium-starvation" in index["old-leaves-pinholes"].strongly
    assert "snail-grazing" in index["holes-bitten"].strongly
