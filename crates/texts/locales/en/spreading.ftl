# Which bed gets how much compost, what stops it from getting more, and what to know about it.
# $bed is the name that someone gave a bed; $beds are several such names: "North bed and Tomatoes".

# What a plan of beds, nitrogen over the years and the other uses can and cannot tell.
beds-limits = The limits hold at typical figures; compost differs from heap to heap. A soil test, an analysis of your compost and local rules on nutrients and runoff go before this plan. Keep compost off frozen or sodden ground.
nitrogen-limits = Trials differ widely: take the range seriously, and do not drop other feeding on the strength of compost alone.
uses-limits = Sieved and mature compost only where it says so. A conductivity is that of the saturated paste; other methods read lower. Compost that dog or cat waste went into goes into no pot for food and on no lawn, only under trees and ornamental plants, where the local rule allows it.

# What stops a bed, in one or two words of a table's cell.
limit-food-bed = never on food beds
limit-acid = acid soil
limit-waiting = waiting time
limit-immature = immature compost
limit-raw-unknown = raw matter not ruled out
limit-maturity-unknown = maturity not shown
limit-salt = salt
limit-phosphorus = phosphorus
limit-nitrogen = nitrogen
limit-depth = depth
stops-at-supply = no more compost
stops-at-need-met = need met
stops-at-earlier-dressings = earlier dressings

# A share of a need that is met, in a table's cell.
met = { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
met-over = over { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%

# A depth of compost: "5.2 mm".
millimetres = { $number }{"\u00A0"}mm
inches = { $number }{"\u00A0"}in

# What stops a bed from getting more. $depth is "5.2 mm" or the word after this line.
none = none
bound-by-supply = { $bed }: all compost is given out; it could take more.
bound-by-earlier = { $bed }: none, for earlier dressings meet its need.
bound-by-need = { $bed }: with { $depth } its need is met, and more would only build up phosphorus.
bound-by-food-bed = { $bed }: none, for it counts as a food bed, and something went into the compost that never goes on food beds.
bound-by-acid = { $bed }: none, for its crop needs acid soil and home compost is mostly alkaline; give leaf mould.
bound-by-waiting = { $bed }: none, for raw manure or the like went into the compost and the harvest comes before the { $days } days of waiting are over.
bound-by-immature = { $bed }: none yet, for the compost is not mature and seeds or seedlings come soon; give it eight weeks, or let it cure.
bound-by-salt = { $bed }: { $depth }, for more would pass the salt that its crop bears.
bound-by-phosphorus-with-earlier = { $bed }: { $depth }, for with earlier dressings more would bring more phosphorus than its crops take away in three years.
bound-by-phosphorus = { $bed }: { $depth }, for more would bring more phosphorus than its crops take away in three years.
bound-by-nitrogen = { $bed }: { $depth }, for more would bring more nitrogen than its crop can use this year.
bound-by-depth-before = { $bed }: none, for it had as much as is usual in a year already.
bound-by-depth-on-new-ground = { $bed }: { $depth }, the deepest that is usual on new ground in a year.
bound-by-depth = { $bed }: { $depth }, the deepest that is usual on a bed that was fed before in a year.

# Something such as dog waste went into the compost. After each of these may follow sentences that name what it
# was, when, and what to do.
off-food-beds = This compost never goes on food beds, so none goes to { $beds }; a bed without a known crop counts as a food bed. Keep it out of pots for food and off lawns too, and grow nothing to eat in the years to come where it lies.
off-food-beds-anywhere = This compost never goes on food beds, nor into pots for food, nor on lawns; grow nothing to eat in the years to come where it lies.
# Something such as wood ash went in, which may have been dirty.
doubtful-on-food-beds = Before this compost goes on { $beds }, see to what went into it.
# Compost with something such as dog waste in it is, or was, spread on a food bed: said before and after it is written down.
spread-on-food-bed = { $bed } counts as a food bed, and this compost never goes on food beds: do not spread it there. Where it lies already, have that written down, and grow nothing to eat there in the years to come.
# $figures: "salt, phosphorus".
partly-assumed = Usual figures with wide ranges are taken for what was not measured of the compost: { $figures }.
# One figure of the compost, for the list of the message above.
compost-figure = { $figure ->
        [nitrogen] nitrogen
        [phosphorus] phosphorus
        [potassium] potassium
        [salt] salt
       *[moisture] moisture
    }
dilute-extract = The compost's conductivity may be that of a dilute extract, which reads less than the saturation extract and cannot be converted reliably: for salt it counts as { $times } times as much, and may be more.
fed-by-earlier = { $count ->
        [one] { $beds } had as much from earlier dressings as it bears, so it gets none this year: lay leaf mould or another poor mulch there, and keep the compost for pots or give it away.
       *[other] { $beds } had as much from earlier dressings as they bear, so they get none this year: lay leaf mould or another poor mulch there, and keep the compost for pots or give it away.
    }
fed-by-earlier-off-food = { $count ->
        [one] { $beds } had as much from earlier dressings as it bears, so it gets none this year: lay leaf mould or another poor mulch there.
       *[other] { $beds } had as much from earlier dressings as they bear, so they get none this year: lay leaf mould or another poor mulch there.
    }
immature = The compost is not mature: spread it four to eight weeks before anything is sown or planted, or lay it on top as a mulch.
ties-up-nitrogen = As rich in carbon as it is, this compost holds nitrogen back in its first year: feed hungry crops otherwise, or use it as a mulch.
no-crop = No crop is known for { $beds }: taken as medium feeders.
salt-unknown = How much salt the crops bear is not tabulated for { $beds }: salt sets no limit there.
phosphorus-high = The soil of { $beds } holds more phosphorus than crops use: only what one year's crop takes away is given, and leaf mould would be better.
wait = Raw manure or the like went into the compost: on { $beds } wait { $days } days between spreading and harvest, or grow what is cooked or not eaten.
yardstick = As a yardstick, not a rule for gardens: German farms may spread { $depth } of this compost in a year on average.
left-over-off-food = { $volume } are left over: spread them only under trees and ornamental plants, where the local rule allows it.
left-over = { $volume } are left over: keep them under cover for pots or next year.
not-proven = The sharing could not be computed to the end: the plan keeps to every limit, but a fairer one may exist.

# The whole plan in a line: "80 L of 120 L go to 3 beds."
summary = { $beds ->
        [0] None of the { $all } goes to a bed.
        [one] { $given } of { $all } go to { NUMBER($beds) } bed.
       *[other] { $given } of { $all } go to { NUMBER($beds) } beds.
    }
# A layer on an area: "100 L on 20 m² lie 5 mm deep."
covered = { $volume } on { $area }{"\u00A0"}m² lie { $depth } deep.

# A use of compost away from beds: "Sowing: at most 30 % of the mix." The sentences below follow it.
use-none = { $use }: none.
use-share-at-most = { $use }: at most { $high }{"\u00A0"}%.
use-share = { $use }: { $low } to { $high }{"\u00A0"}%.
use-depth-at-most = { $use }: at most { $high }{"\u00A0"}mm.
use-depth = { $use }: { $low } to { $high }{"\u00A0"}mm.
# $most: "30 L".
here-at-most = Here at most { $most }.
sieve = Sieve { $fine } to { $coarse }{"\u00A0"}mm.
mature-only = Mature only.
conductivity-at-most = Conductivity at most { $most }{"\u00A0"}dS/m.
ph-at-most = pH at most { $most }.
