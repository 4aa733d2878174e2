# What the record of a heap's heat shows. Nothing here may say that a heap is free of anything, in any language.
# The probe is the thermometer that is stuck into the heap; a stay is the time between two turnings.

limits = A rule that is met here is met in time and temperature at the probe. No published rule was written for a home heap, most ask more than a thermometer shows, and your local rule comes first.
interpolation = Straight lines between neighbouring points. Of up to 26 hours between two of them 24 are credited; over a longer gap nothing is, and no spell of heat goes on across it. From a turning to the next reading nothing is credited.

# Something went in that asks for care before the compost is used, such as cat litter.
# $name and $advice begin small, as inside an English sentence; $name-as-listed and $advice-as-listed begin as in the catalogue.
# $advice is one sentence or more.
before-use-on-a-day = { $name-as-listed ->
       *[any] { $advice-as-listed ->
           *[any] This heap had { $name } on { $day }: { $advice }
        }
    }
before-use-on-days = { $name-as-listed ->
       *[any] { $advice-as-listed ->
           *[any] This heap had { $name } from { $first } to { $last }, { NUMBER($times) } times: { $advice }
        }
    }

# Several things ask for the same care: $advice is one sentence or more, $fed a row of the two that follow.
before-use-of-several = { $advice } In this heap that goes for { $fed }.
fed-on-a-day = { $name-as-listed ->
       *[any] { $name } on { $day }
    }
fed-on-days = { $name-as-listed ->
       *[any] { $name } from { $first } to { $last }, { NUMBER($times) } times
    }

# The headline. $share is a share and its range, such as "60 % (34 to 80 %)".
headline = { $met ->
        [0] At the probe, none of { NUMBER($count) } published rules is met. Estimated share of the heap that has been through it: { $share }.
        [1] At the probe, 1 of { NUMBER($count) } published rules is met in time and temperature. Estimated share of the heap that has been through it: { $share }.
       *[other] At the probe, { NUMBER($met) } of { NUMBER($count) } published rules are met in time and temperature. Estimated share of the heap that has been through it: { $share }.
    }
headline-time-unknown = The readings tell how hot it was at the probe, not for how long: no published rule is met by them. Estimated share of the heap that has been through the heat: not known.
share-range = { $value } ({ $low } to { $high })
less-than-one-percent = <1{"\u00A0"}%

probe-read = { $points ->
        [1] The probe was read once; the highest that it showed was { $hottest }.
       *[other] The probe was read { NUMBER($points) } times over { $length }; the highest that it showed was { $hottest }.
    }
probe-read-at-depth = { $points ->
        [1] The probe at { $depth }{"\u00A0"}cm was read once; the highest that it showed was { $hottest }.
       *[other] The probe at { $depth }{"\u00A0"}cm was read { NUMBER($points) } times over { $length }; the highest that it showed was { $hottest }.
    }
time-unknown = How long it was at { $limit } or more is not known: read it at least once a day.
# $time, $least and $most are lengths of time, $error is a difference of temperatures.
time-hot = It was at { $limit } or more for { $time }; { $least } to { $most } with an error of the probe of { $error } either way.
time-hot-whatever-the-error = It was at { $limit } or more for { $time }; an error of the probe of { $error } either way changes nothing in that.
dose = Dose { $dose } ({ $least } to { $most }): 1 is what the time and temperature equation of the United States asks, which counts from { $from } on. To add it up while the temperature changes goes beyond that rule.

share-of-middle = { $basis ->
        [assumed] Share of the heap in its hot middle at a time, for a heap of one metre each way, because its size is not known, with a cool outside of 5 to 25{"\u00A0"}cm: { $share }.
        [outline] Share of the heap in its hot middle at a time, from the size of the heap and an estimate of its cool outside: { $share }.
        [depths] Share of the heap in its hot middle at a time, from the size of the heap and probes at more than one depth: { $share }.
       *[simulated] Share of the heap in its hot middle at a time, from a simulation of the heap: { $share }.
    }
# $before counts turnings before the first reading, $since those after it; $hot of $stays stays were hot.
stays = { $before ->
        [0] { $since ->
            [0] It was not turned; in { NUMBER($hot) } of { NUMBER($stays) } stays between turnings the probe was at { $limit } or more for a day, or the dose came to 1.
            [1] It was turned once; in { NUMBER($hot) } of { NUMBER($stays) } stays between turnings the probe was at { $limit } or more for a day, or the dose came to 1.
            [2] It was turned twice; in { NUMBER($hot) } of { NUMBER($stays) } stays between turnings the probe was at { $limit } or more for a day, or the dose came to 1.
           *[other] It was turned { NUMBER($since) } times; in { NUMBER($hot) } of { NUMBER($stays) } stays between turnings the probe was at { $limit } or more for a day, or the dose came to 1.
        }
       *[other] It was turned { $before ->
            [1] once
            [2] twice
           *[other] { NUMBER($before) } times
        } before the first reading and { $since ->
            [0] not since
            [1] once since
            [2] twice since
           *[other] { NUMBER($since) } times since
        }; in { NUMBER($hot) } of { NUMBER($stays) } stays between turnings the probe was at { $limit } or more for a day, or the dose came to 1.
    }
never-hot = About { $share } is likely never to have been in the heat: however hot the core, germs in the whole heap can fall to one part in { $parts } at best.

# Lengths of time. They stand in other sentences: "missing: 12 days", "over 5 days".
minutes = { $minutes ->
        [one] { NUMBER($minutes, maximumFractionDigits: 9) }{"\u00A0"}minute
       *[other] { NUMBER($minutes, maximumFractionDigits: 9) }{"\u00A0"}minutes
    }
hours = { $hours ->
        [one] { NUMBER($hours) }{"\u00A0"}hour
       *[other] { NUMBER($hours) }{"\u00A0"}hours
    }
days = { $days ->
        [one] { NUMBER($days) }{"\u00A0"}day
       *[other] { NUMBER($days) }{"\u00A0"}days
    }

# How the heap is judged: as one that is turned or one that is not ($method), because the keeper said so or because that was found ($why).
judged = { $method ->
        [turned] { $why ->
            [said] Judged as a heap that is turned, as you said: rules for heaps that are not turned do not apply.
           *[found] Judged as a heap that is turned, because turnings are known: rules for heaps that are not turned do not apply.
        }
       *[static] { $why ->
            [said] Judged as a heap that is not turned, as you said: rules for heaps that are turned do not apply.
           *[found] Judged as a heap that is not turned, because no turning is known: rules for heaps that are turned do not apply.
        }
    }

# How a rule stands, in a cell of a table.
met = met
not-met = not met
does-not-apply = does not apply

# What is missing to meet a rule, in the cell beside it: $parts is such as "12 days and 3 turnings".
missing = missing: { $parts }
missing-and-too-hot = missing: { $parts }; time above { $most } was too hot to count
missing-nothing-unless-probe-errs = but not when the probe shows too much
part-time-above-55 = { $time } above { $limit }
part-turnings = { $turns ->
        [one] { NUMBER($turns) }{"\u00A0"}turning
       *[other] { NUMBER($turns) }{"\u00A0"}turnings
    }
part-closed-vessel = a closed vessel
part-closed-or-covered = a closed vessel or insulation all over

# A rule: its id, name, year, and what it asks.
rule = { $id } ({ $name }, { $year }): { $asks }
recalled = From memory: check it before you rely on it.
rules-more = For what each rule was written, and its source: see the answer as JSON.

# Heads of a table: how long the probe was at or above some temperature, as it showed and with its error either way.
hours-head-threshold = At or above
hours-head-shown = as shown
hours-head-least = at least
hours-head-most = at most

# What heat does to seeds, diseases and larvae; $reach says whether the probe reached what was enough in trials. $warm and $hot: temperatures, such as "50 °C" and "55 °C".
soft-seeds = { $reach ->
        [reached] Seeds of grasses, sowthistle and chickweed, when moist: enough in trials was 12 hours at { $warm } or 3 hours at { $hot }; at the probe that was reached, in the cooler rest of the heap it may not have been.
       *[not-reached] Seeds of grasses, sowthistle and chickweed, when moist: enough in trials was 12 hours at { $warm } or 3 hours at { $hot }; at the probe that was not reached.
    }
hardy-seeds = { $reach ->
        [reached] Seeds of nightshade, purslane, pigweed, fat hen and tomato, when moist: enough in trials was 5 days at { $warm } or 20 hours at { $hot }; at the probe that was reached, in the cooler rest of the heap it may not have been.
       *[not-reached] Seeds of nightshade, purslane, pigweed, fat hen and tomato, when moist: enough in trials was 5 days at { $warm } or 20 hours at { $hot }; at the probe that was not reached.
    }
common-diseases = { $reach ->
        [reached] Most fungi, bacteria and nematodes that make plants sick: enough in trials was a peak of { $hot } and 21 days; at the probe that was reached, in the cooler rest of the heap it may not have been.
       *[not-reached] Most fungi, bacteria and nematodes that make plants sick: enough in trials was a peak of { $hot } and 21 days; at the probe that was not reached.
    }
white-rot = { $reach ->
        [reached] White rot of onions, in moist waste: enough in trials was 3 days at { $warm }; at the probe that was reached, in the cooler rest of the heap it may not have been.
       *[not-reached] White rot of onions, in moist waste: enough in trials was 3 days at { $warm }; at the probe that was not reached.
    }
larvae = { $reach ->
        [reached] Larvae of flies: enough in trials was an hour at { $warm }; at the probe that was reached, in the cooler rest of the heap it may not have been. Larvae leave the heat: only turning everything into it at least every { NUMBER($days) } days breaks their breeding.
       *[not-reached] Larvae of flies: enough in trials was an hour at { $warm }; at the probe that was not reached. Larvae leave the heat: only turning everything into it at least every { NUMBER($days) } days breaks their breeding.
    }
hard-coated-seeds = Hard-coated seeds (bindweed, velvetleaf, mallow, woody legumes): heat cannot be trusted with them; some grew after days above { $hot }.
roots = Roots of couch, bindweed and ground elder, bulbils and knotweed: heat cannot be trusted with them; dry them to a crisp or drown them for a month first, and keep to local rules on invasive plants.
clubroot = Clubroot: heat cannot be trusted with it; it outlived peaks above { $hot }. Keep sick plants out.
mosaic-viruses = Tomato and tobacco mosaic: heat cannot be trusted with them; they need more than { $hot } and 20 days. Keep sick plants out.
wilts = Fusarium and Verticillium wilts: heat cannot be trusted with them. Keep sick plants out.

# Notices on the answer.
fed-since = { $feeds ->
        [1] Something went in on { $last }, after the core was hot: what came later has had less heat than this says.
       *[other] Something went in { NUMBER($feeds) } times, the last on { $last }, after the core was hot: what came later has had less heat than this says.
    }
loosened = { $turns ->
        [1] One turning only let air in, and is not counted.
       *[other] { NUMBER($turns) } turnings only let air in, and are not counted.
    }
not-credited = { $gaps ->
        [1] One gap between readings of more than a day, { $time } together: nothing is credited for that time.
       *[other] { NUMBER($gaps) } gaps between readings of more than a day, { $time } together: nothing is credited for that time.
    }
after-turns = How warm it was from a turning to the next reading was not measured: { $time } are taken as warm as the cooler of the readings before and after, and the low end of each figure leaves them out. Read soon after turning.
no-depth = { $readings ->
        [1] One reading without a depth is left out, because the others have one: say how deep the probe was.
       *[other] { NUMBER($readings) } readings without a depth are left out, because the others have one: say how deep the probe was.
    }
# Probes stood at several depths in one heap; $depths counts those that are not judged.
deepest-judged = { $depths ->
        [1] The deepest probe is judged; one other depth is used for the cool outside alone.
       *[other] The deepest probe is judged; { NUMBER($depths) } other depths are used for the cool outside alone.
    }
moved-in = Something came from another heap: what heat it had there is not counted.

# The days on which a record begins and ends.
record-days = { $first } to { $last }

# A country or union that has rules: $place is a key, $as-listed the name in English.
place-with-rules = { $place ->
       *[any] { $as-listed }
    }
