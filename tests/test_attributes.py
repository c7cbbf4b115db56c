"""The values of attributes in a page."""

from scripts.site.attributes import values_of

PAGE = '<p id="one" class="a b"><a name="two" data-id="three"></a><i grid="no" class=""></i></p>'


def test_values_are_those_of_the_whole_name():
    assert list(values_of("id", PAGE)) == ["one", "three"]
    assert list(values_of("class", PAGE)) == ["a b", ""]
    assert list(values_of("name", PAGE)) == ["two"]
    assert list(values_of("href", PAGE)) == []


def test_a_page_may_begin_with_one():
    assert list(values_of("id", 'id="first"')) == ["first"]
