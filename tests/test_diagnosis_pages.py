"""The printed key and the index of symptoms: whole, followable, and true to the records."""

from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from scripts.pages.problems.key_grower import AFTER_YES, DEEPEST
from scripts.pages.problems.on_paper import key_page, symptom_index, symptoms_page
from scripts.pages.problems.printed_key import key, steps


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
    assert [(one.where, one.danger) for one in sections[:2]] == [
        ("animals", True),
        ("animals", False),
    ]
    numbers = [one.number for section in sections for one in section.couplets]
    assert numbers == list(range(1, len(numbers) + 1))
    for section in sections:
        for one in section.couplets:
            assert bool(one.yes.couplet) != bool(one.yes.problems)  # a yes always leads somewhere
            for lead in (one.yes, one.no):
                assert not (lead.couplet and lead.problems)
                assert not lead.couplet or lead.couplet > one.number


def test_a_sign_leads_on_within_a_few_questions_to_what_it_speaks_for(library):
    for section in key(library):
        for one in section.walked:
            assert FINDINGS[one.finding].where == section.where
            ends = ends_below(section, one.yes)
            assert max(depth for depth, _ in ends) <= AFTER_YES
            for _, problems in ends:
                assert problems
                for slug in problems:
                    strength = CAUSES[slug].rows[one.finding].strength
                    assert strength in ("for", "strong-for"), (one.finding, slug)


def ends_below(section, lead, depth=0):
    """Every end below a lead, with how many questions further on it stands."""
    if lead.couplet is None:
        return [(depth, lead.problems)]
    one = next(one for one in section.couplets if one.number == lead.couplet)
    return [*ends_below(section, one.yes, depth + 1), *ends_below(section, one.no, depth + 1)]


def test_no_plant_is_ill_for_its_name_alone(library):
    """What kind of plant it is may be asked only after something was seen to be wrong with it."""
    for section in key(library):
        assert not any(question_of(one.finding).startswith("plant.") for one in section.walked)


def test_no_question_is_asked_for_nothing(library):
    for section in key(library):
        for one in section.couplets:
            assert one.yes != one.no, one.question


def test_most_ways_through_the_key_are_short(library):
    depths = [depth for section in key(library) for depth in steps(section)]
    assert sum(depth <= 7 for depth in depths) / len(depths) > 0.55
    assert max(depths) <= DEEPEST + AFTER_YES


def test_a_tank_with_all_strong_signs_of_a_problem_is_led_to_it(library):
    sections, reached = key(library), 0
    for slug, cause in CAUSES.items():
        strong = {name for name, row in cause.rows.items() if row.strength == "strong-for"}
        places = {FINDINGS[name].where for name in strong}
        reached += any(
            slug in follow(section, lambda name, signs=strong: name in signs)[0]
            for section in sections
            if section.where in places
        )
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
