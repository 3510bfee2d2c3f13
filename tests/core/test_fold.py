from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.histories import History, at_random, uid
from webapp.core import fold
from webapp.core.entries_kinds import LISTED
from webapp.core.fold_named import NAMELESS


def place(history: History, key: str = "rail"):
    [found] = [p for p in fold.summary_of(history.entries)["places"] if p["key"] == key]
    return found


def thing(history: History):
    [found] = fold.summary_of(history.entries)["sheets"]
    return found


def ids(items):
    return [item["entry"] for item in items]


@pytest.fixture
def history() -> History:
    made = History()
    made.project()
    return made


def test_a_project_is_named_by_the_entry_that_starts_it(history):
    assert fold.summary_of(history.entries) == {
        "id": history.id,
        "name": "Bed in ash",
        "unit": "in",
        "graduation": "1/32",
        "archived": False,
        "started": "2026-11-25T10:17:00.000Z",
        "shop": {},
        "settings": [],
        **{name: [] for name, _keys in LISTED.values()},
    }


def test_nothing_known_is_an_empty_project():
    empty = fold.summary(fold.start())
    assert (empty["id"], empty["name"], empty["places"], empty["sheets"]) == ("", NAMELESS, [], [])
    assert (empty["unit"], empty["graduation"]) == ("in", "1/32")


def test_a_project_whose_start_is_missing_still_shows_its_readings(history):
    history.reading("rail")
    summary = fold.summary_of(history.entries[1:])
    assert (summary["id"], summary["name"], summary["started"]) == (history.id, NAMELESS, "")
    assert [p["place"] for p in summary["places"]] == ["rail"]


def test_a_reading_says_all_that_was_kept_of_it(history):
    reading = history.reading("rail", "58 3/8 strong", note="bowed")
    assert place(history) == {
        "place": "rail",
        "key": "rail",
        "heads": [
            {
                "entry": reading,
                "place": "rail",
                "text": "58 3/8 strong",
                "inches": "7473/128",
                "unit": "in",
                "graduation": "1/32",
                "made_at": "2026-11-25T10:17:01.001Z",
                "by": "a phone",
                "withdrawn": False,
                "why": "",
                "notes": [{"entry": reading, "text": "bowed"}],
                "late": False,
                "sent": True,
                "rank": 2,
                "tips": [reading],
            }
        ],
        "past": [],
    }


def test_a_second_reading_replaces_the_first_which_stays_behind_it(history):
    first = history.reading("rail")
    second = history.reading("rail", replaces=[first])
    assert (ids(place(history)["heads"]), ids(place(history)["past"])) == ([second], [first])


def test_places_are_one_whatever_their_case_and_spaces_and_are_spelt_as_last(history):
    first = history.reading("Left  Rail")
    second = history.reading("left rail ", replaces=[first])
    found = place(history, "left rail")
    assert (found["place"], ids(found["heads"])) == ("left rail ", [second])


def test_two_readings_that_replace_the_same_are_rivals_until_one_is_picked(history):
    first = history.reading("rail")
    one, other = history.reading("rail", replaces=[first]), history.reading("rail", replaces=[first])
    assert ids(place(history)["heads"]) == [one, other]
    pick = history.pick(one, [one, other])
    [head] = place(history)["heads"]
    assert (head["entry"], head["tips"], ids(place(history)["past"])) == (one, [pick], [first, other])


def test_two_picks_of_the_same_reading_show_it_once_and_are_both_replaced_by_what_follows(history):
    one, other = history.reading("rail"), history.reading("rail")
    picks = [history.pick(one, [one, other]), history.pick(one, [one, other])]
    [head] = place(history)["heads"]
    assert (head["entry"], head["tips"]) == (one, picks)


def test_two_picks_of_different_readings_are_rivals_again(history):
    one, other = history.reading("rail"), history.reading("rail")
    history.pick(one, [one, other])
    history.pick(other, [one, other])
    assert ids(place(history)["heads"]) == [one, other]


def test_a_withdrawn_place_has_no_head_and_stays_with_its_past(history):
    reading = history.reading("rail")
    withdrawal = history.withdrawal(reading, why="rule was bent")
    found = place(history)
    assert found["heads"] == []
    [past] = found["past"]
    assert (past["withdrawn"], past["why"], past["tips"]) == (True, "rule was bent", [withdrawal])


def test_withdrawing_one_of_two_rivals_leaves_the_other(history):
    one, other = history.reading("rail"), history.reading("rail")
    history.withdrawal(one)
    found = place(history)
    assert (ids(found["heads"]), ids(found["past"])) == ([other], [one])


def test_withdrawing_what_was_picked_leaves_no_head(history):
    one, other = history.reading("rail"), history.reading("rail")
    pick = history.pick(one, [one, other])
    history.withdrawal(one, [pick])
    assert (place(history)["heads"], ids(place(history)["past"])) == ([], [one, other])


def test_what_was_withdrawn_stands_again_when_it_is_picked(history):
    reading = history.reading("rail")
    pick = history.pick(reading, [history.withdrawal(reading)])
    [head] = place(history)["heads"]
    assert (head["entry"], head["withdrawn"], head["tips"]) == (reading, False, [pick])


def test_what_one_phone_picked_while_another_withdrew_it_stands_and_the_next_word_settles_both(history):
    one, other = history.reading("rail"), history.reading("rail")
    withdrawal = history.withdrawal(one)
    pick = history.pick(one, [one, other])
    [head] = place(history)["heads"]
    assert (head["entry"], head["withdrawn"], head["why"], head["tips"]) == (one, False, "", [pick, withdrawal])


def test_a_reading_made_while_another_phone_withdrew_the_same_one_stands(history):
    first = history.reading("rail")
    history.withdrawal(first)
    second = history.reading("rail", replaces=[first])
    found = place(history)
    assert (ids(found["heads"]), found["past"][0]["withdrawn"]) == ([second], True)


def test_a_reading_moved_to_another_place_leaves_the_first_with_its_past(history):
    first = history.reading("rail")
    second = history.reading("post", replaces=[first])
    assert (place(history)["heads"], ids(place(history, "post")["heads"])) == ([], [second])


def test_a_pick_of_what_is_not_here_is_passed_over(history):
    reading = history.reading("rail")
    history.pick(uid(999), [reading])
    assert ids(place(history)["heads"]) == [reading]


def test_notes_stand_in_their_order_beside_what_they_are_about(history):
    reading = history.reading("rail", note="first")
    history.add("note", {"entry": reading, "text": "second"})
    history.add("note", {"entry": uid(999), "text": "about nothing"})
    assert [note["text"] for note in place(history)["heads"][0]["notes"]] == ["first", "second"]


def test_sheets_that_replace_each_other_are_one_thing_named_by_the_first(history):
    first = history.sheet()
    second = history.sheet("Wider", [first])
    rival = history.sheet("Narrower", [first])
    assert (thing(history)["thing"], ids(thing(history)["heads"])) == (first, [second, rival])
    pick = history.pick(rival, [second, rival])
    third = history.sheet("Last", [pick])
    assert (ids(thing(history)["heads"]), ids(thing(history)["past"])) == ([third], [first, second, rival])


def test_sheets_that_replace_nothing_are_things_of_their_own(history):
    history.sheet("A")
    history.sheet("B")
    assert len(fold.summary_of(history.entries)["sheets"]) == 2


def test_a_sheet_says_what_it_was_worked_from(history):
    sheet = history.sheet()
    [head] = thing(history)["heads"]
    assert (head["entry"], head["tool"], head["called"], head["inputs"]) == (
        sheet,
        "spacing",
        "Headboard",
        {"span": "30"},
    )


def test_the_last_settings_win_by_key_and_all_are_kept(history):
    history.add("settings", {"name": "Settee", "archived": True})
    history.add("settings", {"archived": False})
    summary = fold.summary_of(history.entries)
    assert (summary["name"], summary["archived"]) == ("Settee", False)
    assert [change.get("name") for change in summary["settings"]] == ["Settee", None]


def test_settings_win_by_seq_and_not_by_clock_or_arrival(history):
    history.add("settings", {"name": "First"})
    history.add("settings", {"name": "Second"})
    late = {**history.entries[1], "made_at": "2031-01-01T00:00:00.000Z"}
    assert fold.summary_of([history.entries[2], late, history.entries[0]])["name"] == "Second"


def test_what_is_unsent_comes_after_all_that_has_a_seq(history):
    history.add("settings", {"name": "Unsent"}, sent=False)
    history.add("settings", {"name": "Sent"})
    assert fold.summary_of(history.entries)["name"] == "Unsent"


def test_an_unsent_entry_is_sent_once_it_comes_back_with_its_seq(history):
    history.reading("rail", sent=False)
    state = fold.start()
    for entry in history.entries:
        fold.add(state, entry)
    assert not fold.summary(state)["places"][0]["heads"][0]["sent"]
    fold.add(state, {**history.entries[1], "seq": 9})
    assert fold.summary(state)["places"][0]["heads"][0]["sent"]


def test_a_unit_and_a_graduation_changed_on_two_phones_still_go_together(history):
    history.add("settings", {"unit": "mm"})
    history.add("settings", {"graduation": "1/16"})
    summary = fold.summary_of(history.entries)
    assert (summary["unit"], summary["graduation"]) == ("mm", "0.5 mm")


def test_a_ring_has_no_head_and_the_fold_ends(history):
    one, other = uid(2), uid(3)
    history.reading("rail", replaces=[other])
    history.reading("rail", replaces=[one])
    history.sheet("A", [uid(5)])
    history.sheet("B", [uid(4)])
    assert (place(history)["heads"], ids(place(history)["past"])) == ([], [one, other])
    assert (thing(history)["heads"], thing(history)["thing"]) == ([], uid(4))


def test_an_entry_that_replaces_itself_still_shows(history):
    history.reading("rail", replaces=[uid(2)])
    assert ids(place(history)["heads"]) == [uid(2)]


def test_what_is_replaced_and_not_here_makes_no_difference(history):
    reading = history.reading("rail", replaces=[uid(999)])
    assert ids(place(history)["heads"]) == [reading]


def test_unknown_kinds_and_their_replacing_are_passed_over(history):
    reading = history.reading("rail")
    history.add("later", {"entry": reading}, [reading])
    assert ids(place(history)["heads"]) == [reading]


@pytest.mark.parametrize("inches", ["", "x", "1/0", "2/4", "1e9", "+1", "1_0", "٣", "-", "1/", "/2", "1/2/3", "01"])
def test_a_reading_whose_exact_value_is_none_is_passed_over(history, inches):
    reading = history.reading("rail")
    history.add("reading", {**history.entries[1]["body"], "inches": inches}, [reading])
    assert ids(place(history)["heads"]) == [reading]


def test_entries_of_several_projects_fold_each_by_itself():
    one, other = History(1), History(100)
    one.project("One")
    other.project("Other")
    assert [s["name"] for s in fold.summaries(other.entries + one.entries)] == ["Other", "One"]
    assert fold.summary_of(one.entries + other.entries)["name"] == "One"


@given(st.randoms(use_true_random=False), st.data())
def test_the_fold_does_not_depend_on_order_batches_or_repeats(random: Random, data):
    entries = at_random(random)
    expected = fold.summary_of(entries)
    arrived = data.draw(st.permutations(entries + [e for e in entries if random.random() < 0.3]))
    state = fold.start()
    for entry in arrived:
        fold.add(state, entry)
        if random.random() < 0.1:
            fold.summary(state)  # looking in between changes nothing
    assert fold.summary(state) == expected


@given(st.randoms(use_true_random=False))
def test_every_reading_and_sheet_that_can_be_read_is_shown_exactly_once(random: Random):
    history = History()
    history.project()
    entries = history.entries + at_random(random)
    summary = fold.summary_of(entries)
    shown = [i["entry"] for t in summary["places"] + summary["sheets"] for i in t["heads"] + t["past"]]
    assert len(shown) == len(set(shown))
    assert set(shown) <= {e["id"] for e in entries}
    assert all(t["heads"] or t["past"] for t in summary["places"] + summary["sheets"])


@given(st.randoms(use_true_random=False))
def test_the_fold_changes_no_entry(random: Random):
    entries = at_random(random)
    before = repr(entries)
    fold.summary_of(entries)
    assert repr(entries) == before


def test_random_histories_meet_heads_rivals_withdrawals_and_chains():
    met = {"rivals": 0, "withdrawn": 0, "picked": 0, "chains": 0, "passed over": 0}
    for seed in range(300):
        entries = at_random(Random(seed))
        summary = fold.summary_of(entries)
        things = summary["places"] + summary["sheets"]
        heads = [h for t in things for h in t["heads"]]
        past = [p for t in things for p in t["past"]]
        met["rivals"] += any(len(t["heads"]) > 1 for t in things)
        met["withdrawn"] += any(p["withdrawn"] for p in past)
        met["picked"] += any(h["entry"] not in h["tips"] for h in heads)
        met["chains"] += any(len(t["past"]) > 1 for t in summary["sheets"])
        met["passed over"] += len(heads) + len(past) < sum(e["kind"] in ("reading", "sheet") for e in entries)
    assert all(count > 20 for count in met.values()), met
