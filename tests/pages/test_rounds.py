"""A round of dry fit without script: laid out, measured place by place, an odd reading asked again."""

from urllib.parse import parse_qs, urlparse

from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project
from webapp.core.links import read_links

PLACES = "Upper rail, left\nUpper rail, right\nLower rail, left\nLower rail, right"


def lay_out(client: FlaskClient, **typed: str) -> str:
    answer = send(client, start_project(client), "round", **{"places": PLACES, **typed})
    assert answer.status_code == 303, answer.text
    return answer.headers["Location"]


def measure(client: FlaskClient, at: str, reading: str) -> str:
    """Keep a reading at the place that a round asks for, and return where it goes on."""
    answer = send(client, at, "reading", reading=reading)
    assert answer.status_code == 303, answer.text
    return answer.headers["Location"]


def asked(client: FlaskClient, at: str) -> str:
    return forms(client.get(at, headers=OWN))["reading"]["fields"]["place"]


def test_one_place_comes_after_the_other(client):
    at = lay_out(client)
    places = []
    for reading in ("13 1/16", "13 1/16 strong", "13 1/32", "13 1/16 scant"):
        places.append(asked(client, at))
        at = measure(client, at, reading)
    assert places == PLACES.split("\n")
    page = client.get(at, headers=OWN).text
    assert "Openings 13 1/32 to 13 1/16 strong" in page
    assert "Gauge sheet of this round" in page


def test_a_misread_inch_is_asked_again_and_stands_when_it_is_said_again(client):
    at = measure(client, lay_out(client), "13 1/16")
    at = measure(client, at, "14 1/16")
    assert asked(client, at) == "Upper rail, right"
    assert "Read it again: 1 in over its fellows." in client.get(at, headers=OWN).text
    at = measure(client, at, "14 1/16")
    assert asked(client, at) == "Lower rail, left"


def test_what_is_wrong_with_a_reading_comes_back_with_it_at_its_place(client):
    at = measure(client, lay_out(client), "13")
    answer = send(client, at, "reading", reading="13 3/0")
    assert answer.status_code == 400
    form = forms(answer)["reading"]["fields"]
    assert (form["place"], form["reading"]) == ("Upper rail, right", "13 3/0")


def test_a_reading_at_the_wrong_place_is_withdrawn_and_put_back(client):
    at = lay_out(client)
    root = at.split("?")[0]
    measure(client, at, "13")
    page = client.get(root, headers=OWN).text
    entry = page.split('form="withdrawal" name="entry" value="')[1].split('"')[0]
    answer = send(client, root, "withdrawal", entry=entry)
    assert answer.headers["Location"] == root
    assert asked(client, root) == "Upper rail, left"
    assert "withdrawn: 13" in client.get(root, headers=OWN).text
    assert send(client, root, "pick", entry=entry).headers["Location"] == root
    assert asked(client, root) == "Upper rail, right"


def test_a_second_round_is_compared_and_its_gauge_sheet_takes_the_place_of_the_first_ones(client):
    at = lay_out(client, stick="13 1/16")
    for reading in ("fits", "lacks 1/16", "loose 1/32", "fits"):
        at = measure(client, at, reading)
    first = at.split("?")[0]
    sheet = keep_gauge(client, first)
    answer = send(client, first, "round", stick="")
    assert answer.status_code == 303
    second = answer.headers["Location"]
    at = second
    for reading in ("fits", "fits", "loose 1/32", "fits"):
        at = measure(client, at, reading)
    page = client.get(second, headers=OWN).text
    assert "compared with Dry fit 1" in page
    assert "1/16 in more" in page
    assert page.count("as before") == 3
    assert way(page)["replaces"] == [sheet]


def way(page: str) -> dict[str, list[str]]:
    href = page.split('class="button main" href="')[-1].split('"')[0].replace("&amp;", "&")
    return parse_qs(urlparse(href).query)


def keep_gauge(client: FlaskClient, at: str) -> str:
    """Keep the gauge sheet of a round; return its entry. Every opening of it is linked."""
    page = client.get(at, headers=OWN).text
    query = way(page)
    assert len(read_links(query["links"][0])) == 4
    assert query["keep"] == ["209/16 in"]
    address = page.split('class="button main" href="')[-1].split('"')[0].replace("&amp;", "&")
    project = at.split("/rounds/")[0]
    form = forms(client.get(address, headers=OWN))["sheet"]
    fields = form["fields"] | {"links": query["links"][0]}
    answer = client.post(form["action"], data=fields, headers=OWN)
    assert answer.status_code == 303, answer.text
    entry = answer.headers["Location"].rsplit("/", 1)[1]
    kept = client.get(f"{project}/sheets/{entry}.json", headers=OWN).json
    assert kept and len(kept["heads"][0]["links"]) == 4
    return entry


def test_a_project_keeps_numbers_that_are_no_lengths(client):
    at = start_project(client)
    answer = send(client, at, "condition", place="Upper rail", quantity="moisture", text="8,5")
    assert answer.status_code == 400
    assert "Write it with a point: 8.5." in answer.text
    assert send(client, at, "condition", place="Upper rail", quantity="moisture", text="8.5").status_code == 303
    assert send(client, at, "condition", place="upper  rail", quantity="moisture", text="8 %").status_code == 303
    page = client.get(at, headers=OWN).text
    assert "8 %" in page
    assert "8.5 %" not in page


def test_a_round_as_json(client):
    at = lay_out(client)
    measure(client, at, "13")
    found = client.get(f"{at}.json", headers=OWN).json
    assert found and [found["called"], len(found["places"]), found["readings"][0]["text"]] == ["Dry fit 1", 4, "13"]
    assert client.get(f"{at}x.json", headers=OWN).status_code == 404
