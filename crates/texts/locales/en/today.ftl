# What a heap needs today: what to do, why, what can hurt, and when to look again.
# $heap is the name that someone gave a heap, or `the-heap`; "it" is that heap. $ago is "3 hours ago",
# "yesterday" or "on 1 May 2026".

# Under everything that is needed.
today-limits = All this is worked out from your journal. It knows nothing of what is not written down, nor of the weather to come. Local rules come first.
nothing-today = Nothing needs you today.
no-heaps = There is no heap that is fed or ripens.
# Heading of the heaps that need nothing.
quiet = Quiet
# Headings: how soon something is to be done.
urgency-now = Today
urgency-soon = In the next days
urgency-whenever = When it suits you
# Names of a calendar of reminders.
calendar = Compost
calendar-of-garden = Compost, { $garden }

# A heap that needs nothing. $day: a date, such as "1 May 2026".
rests-empty = { $heap } is empty. It asks for nothing until it is fed.
works-until-day = { $heap } works by itself. Look again on { $day }.
works = { $heap } works by itself. Look again in two weeks.
ripens-until-day = { $heap } ripens. Look again on { $day }.
ripens = { $heap } ripens. Look again in a month.

# What can hurt while it is done.
caution-fire = If it smokes or smells burnt, do not dig in, for air feeds a fire: keep away and call the fire service.
caution-steam = Steam and hot compost burn skin: open it from the side with a long fork, and keep your face away.
# "It" is what is dusty and is to be moved.
caution-mould-dust = The dust of moulds harms the lungs: wet it first, stand upwind and wear a dust mask. With asthma or weak defences, leave this to others.
caution-animals = What rats and mice leave behind carries disease: wear gloves and wash your hands.
caution-fumes = A heap that smells foul or sharp gives off gases that sting eyes and lungs: stand upwind when you open it.
caution-lifting = Wet compost is heavy: a full barrow can weigh more than you do. Take half loads.

# What to do, in a few words: headlines, names of reminders, lines of a table on paper.
# Stands for $heap where no heap is named.
the-heap = the heap
stand-back = Keep away from { $heap } and watch it
cool-down = Open { $heap } and cool it down
keep-animals-out = Keep animals out of { $heap }
add-browns = Mix browns into { $heap }
cover-with-browns = Cover the top of { $heap } with browns
water = Water { $heap }
turn = Turn { $heap }
read-heat = Take the temperature of { $heap }
add-greens = Mix greens into { $heap }
harvest = Take the compost out of { $heap }
let-ripen = Let { $heap } ripen
test = Test whether { $heap } is ready
cover = Cover { $heap }
look = Look at { $heap }
restock = Fill up the stores
# $material: a material as it stands inside a sentence, such as "dry shredded leaves".
restock-of = Gather more { $material }

# How to do it; lines of a need stand below each other.
how-stand-back = Do not open it or dig in it. Keep children and animals away, and have a hose ready.
how-stand-back-call = Call the fire service if it smokes, smells burnt or gets hotter. Read the probe again from the outside, without digging.
how-cool-down = Open it bit by bit, turn it, and wet dry places as you go.
how-cool-down-after = Leave it lower and wider than it was, and read the probe again tomorrow.
how-keep-animals-out = Turn the heap, so that nothing nests in it, and keep it moist.
# Where a handful felt wet.
how-keep-animals-out-wet = Turn the heap, so that nothing nests in it.
how-keep-animals-out-for-good = Take out cooked and fatty food, bury fresh scraps in the middle, close gaps wider than 12{"\u00A0"}mm with mesh, and keep half a metre around it clear.
# $things: amounts in a list, such as "3 buckets of shredded leaves and 2 L of water".
how-mix-in = Mix in { $things }.
# "This" is that the heap is too wet or too green.
stores-do-not-suffice = Your stores alone do not put this right.
stores-help-and-do-not-suffice = What is in your stores helps, but it is not enough to put this right: more of it is needed, or something else.
how-add-browns = Mix in dry leaves, straw, torn cardboard or sawdust until it feels like a squeezed sponge.
# $amount: such as "2 buckets of shredded leaves".
how-cover-with-browns = Lay { $amount } over the top.
how-cover-with-browns-before = Bury fresh scraps before you do, and close the lid if there is one.
# $water: such as "20 L".
how-water = Pour on { $water } of water, a little at a time, so that it soaks in.
how-water-in-all = It may lack { $water } in all, but what it cannot take up at once runs out below.
how-water-after = Then feel it again the next day: a handful should feel like a squeezed sponge.
how-turn-inside-out = Take it out and put it back, so that the outside comes to the inside.
how-turn = Fork it over in its place, and shake lumps apart.
how-turn-open = Mix in something coarse, such as shredded prunings or straw, to hold it open.
how-read-heat = Put the probe into the middle and wait until it stands still.
how-add-greens = Mix in something green when you have it: grass, kitchen scraps, coffee grounds or manure. Without it, it only works slowly.
how-look = Open it a hand deep: smell it, squeeze a handful, and see what lives there.
how-harvest = Take it out, and sieve it if you like.
how-harvest-ripe = Ripe is not the same as free of germs or seeds.
# "It" is the compost that is to be tested.
how-test-bag = Close a moist handful in a bag for a week, then smell it: that shows whether it has come to rest.
how-test-self-heating = Fill a vacuum flask with it and read how warm it gets: that shows whether it has come to rest.
how-test-seedlings = Sow cress in it, and as much in what you know to be good: that shows whether plants bear it.
how-let-ripen = Feed it no more. Start the next heap, and keep this one covered and just moist.
how-cover = Lay a sheet, sacks or a lid over it, so that rain does not wash out what has ripened.
# $amount: such as "2 buckets"; of what stands in the headline.
how-restock = There are { $amount } left. Put some by before you run out.
how-restock-used-up = Put some by, for wet scraps need it.

# The button that writes down that it is done.
tap-watered = Watered, { $water }
tap-mixed-in = Mixed in
tap-covered = Covered
tap-turned = Turned
tap-left-to-ripen = Left to ripen

# Why it is needed. $temperature is what the probe showed, such as "72 °C".
alarm = The probe showed { $temperature } { $ago }: living things do not make such heat, and it can go on to fire.
hot-and-dry = The probe showed { $temperature } { $ago }, and the heap is high and dry: such a heap can set itself alight.
too-hot = The probe showed { $temperature } { $ago }: that kills most of what works in it, and dries it out.
hot = The probe showed { $temperature } { $ago }: that hot, most of what works in it slows down.
cooling = It was { $from } and had cooled to { $to } when you read it { $ago }: fresh air and mixing may warm it again.
hot-unread = It was hot when you last read it: { $temperature } { $ago }.
fed-too-wet = By its figures, what you fed in the last month is { $water } water: too wet to let air in.
fed-too-dry = By its figures, what you fed in the last month is only { $water } water: too dry to work.
fed-too-rich = By its figures, what you fed in the last month has a C:N of { $ratio }: nitrogen will leave it as ammonia.
fed-too-poor = By its figures, what you fed in the last month has a C:N of { $ratio }: it will hardly get warm.

saw-rats = Rats, or signs of them, were seen { $ago }.
saw-mice = Mice were seen { $ago }.
saw-maggots = Maggots of flies were seen { $ago }.
saw-fruit-flies = Small flies were seen { $ago }.
saw-flies = Flies were seen { $ago }.
# $creature: a word for animals, such as "slugs".
saw-other = There were { $creature } { $ago }.
smelt-of-ammonia = It smelt of ammonia { $ago }: nitrogen is leaving it.
smelt-sour = It smelt sour { $ago }: it lacks air.
smelt-rotten = It smelt rotten { $ago }: it lacks air.
# $smell: a word for a smell, such as "musty".
smelt-other = Its smell { $ago }: { $smell }.
felt-dusty = A handful fell apart as dust { $ago }.
felt-dry = A handful felt dry { $ago }.
felt-dripping = Water ran out of a handful { $ago }.
# $squeeze: how a handful felt, such as "wet".
felt-other = A handful felt { $squeeze } { $ago }.
looked-matted = It lay in mats { $ago }, which shut the air out.
looked-slimy = There were slimy places { $ago }, which lack air.
had-dry-pockets = There were dry pockets { $ago }: wet them as you turn.
# $look: a word for how a heap looks, such as "steaming".
looked-other = It looked so { $ago }: { $look }.

# A published rule of hygiene. $named is "yes" where its place and name are known: "Germany", "the rule of composting plants".
# $raw is "yes" where something went in that calls for heat. $time: "3 days"; $temperature: "55 °C".
rule-time = { $raw ->
        [yes] { $named ->
            [yes] Something in it calls for heat. A published rule ({ $place }: { $rule }) asks for { $time } more at { $temperature } or above, read at least once a day.
           *[no] Something in it calls for heat. A published rule asks for { $time } more at { $temperature } or above, read at least once a day.
        }
       *[no] { $named ->
            [yes] A published rule ({ $place }: { $rule }) asks for { $time } more at { $temperature } or above, read at least once a day, if you want to meet it.
           *[no] A published rule asks for { $time } more at { $temperature } or above, read at least once a day, if you want to meet it.
        }
    }
rule-turns = { $raw ->
        [yes] { $named ->
            [yes] { $turns ->
                [1] Something in it calls for heat. A published rule ({ $place }: { $rule }) asks for one more turning.
               *[other] Something in it calls for heat. A published rule ({ $place }: { $rule }) asks for { NUMBER($turns) } more turnings.
            }
           *[no] { $turns ->
                [1] Something in it calls for heat. A published rule asks for one more turning.
               *[other] Something in it calls for heat. A published rule asks for { NUMBER($turns) } more turnings.
            }
        }
       *[no] { $named ->
            [yes] { $turns ->
                [1] A published rule ({ $place }: { $rule }) asks for one more turning, if you want to meet it.
               *[other] A published rule ({ $place }: { $rule }) asks for { NUMBER($turns) } more turnings, if you want to meet it.
            }
           *[no] { $turns ->
                [1] A published rule asks for one more turning, if you want to meet it.
               *[other] A published rule asks for { NUMBER($turns) } more turnings, if you want to meet it.
            }
        }
    }

# The last look was long ago.
not-looked-at-since = The last look that you wrote down was { $ago }.
not-looked-at = No look at it is written down since it was started.
not-fed = You last fed it { $ago }, and it has come to rest.
looks-done = It looks done.
# $day: a date, such as "1 May 2026".
ripened = It has ripened since { $day }.
ready = Two independent signs say that it is ready: it has come to rest, and plants bear it.
not-covered = Nothing lies over it while it ripens.
# "It" is what is left in a store.
runs-out-at-once = At the pace of the last weeks it lasts for a day or two.
runs-out = { $days ->
        [one] At the pace of the last weeks it lasts for { NUMBER($days) } day.
       *[other] At the pace of the last weeks it lasts for { NUMBER($days) } days.
    }
# The same in what is read on another day. $day: a date, such as "1 May 2026".
runs-out-on = At the pace of the last weeks it lasts until about { $day }.
used-up = You used it in the last weeks, and it is used up.
