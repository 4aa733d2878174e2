# The sheets of the home tests: a title, what the test tells, what is needed, the steps, what the outcome says.
# What is needed stands after "You need:"; each line but a title ends with a full stop.
# Lines of -says- stand after "What it says"; "no drops, ball holds" is the third of squeeze-says.

# How to take a sample that speaks for the heap.
sample-title = A sample that speaks for the heap
sample-tells = Every other test is only as good as the handful it is done with.
sample-needs = A trowel, a clean sheet or tray, gloves.
sample-step-1 = Choose ten places, at several depths and on all sides.
sample-step-2 = Scrape the outer 5 to 10 cm away at each; it is drier and cooler than the rest.
sample-step-3 = Take a trowel from each place and put all on the sheet.
sample-step-4 = Mix well, pile it into a cone, quarter it, and throw two opposite quarters back.
sample-step-5 = Repeat until one or two litres are left.
sample-says-1 = Use it the same day, or keep it cool and loosely closed.
sample-record = Nothing to write down.

squeeze-title = The squeeze test
squeeze-tells = How moist it is; other tests need it moist.
squeeze-needs = A gloved hand.
squeeze-step-1 = Take a handful from the inside of the heap.
squeeze-step-2 = Squeeze it as hard as you can and watch between the fingers.
squeeze-step-3 = Open the hand and tap the ball.
squeeze-says-1 = Water runs: above 65 % water, too wet.
squeeze-says-2 = A few drops: 55 to 60 %.
squeeze-says-3 = No drops, and the ball holds until it is tapped: 45 to 55 %, right for ripening.
squeeze-says-4 = It crumbles or dusts: below 40 %, too dry to work.

bag-title = The closed bag or jar
bag-tells = Whether it is at rest. What still rots uses up the air in there and turns foul.
bag-needs = A zip bag or a jar that closes tightly, a litre of compost, three to seven days.
bag-step-1 = Take a sample (see the sheet "sample") and bring it to "no drops, ball holds".
bag-step-2 = Fill the bag, press most of the air out and close it; fill a jar two thirds and leave its lid a quarter turn short of tight, so that it cannot burst.
bag-step-3 = Leave it at room temperature, out of the sun, for three days at least; a week tells more.
bag-step-4 = See whether the bag has swollen.
bag-step-5 = Open it outdoors, at arm's length, and fan the smell towards you; do not put your nose in.
bag-says-1 = Earthy or hardly any smell, bag flat: a sign of rest.
bag-says-2 = Ammonia, sour or rotten, or a swollen bag: not finished.

reheating-title = Does it heat again after turning?
reheating-tells = Whether it is at rest; for heaps of half a cubic metre or more.
reheating-needs = A probe thermometer, a fork, five days.
reheating-step-1 = See that it is moist; water it while you turn where it is dry.
reheating-step-2 = Turn it, the outside to the inside, and write the turning down.
reheating-step-3 = From the next day on put the probe into the middle once a day, at the same hour, wait two or three minutes, and read the air in the shade as well.
reheating-step-4 = Go on for five days.
reheating-says-1 = Less than 8 °C over the air all the time: a sign of rest.
reheating-says-2 = 8 to 10 °C: nearly.
reheating-says-3 = More: it still works.
reheating-says-4 = A small or a dry heap stays cool whatever it is, and then this says nothing.

self-heating-title = Self-heating in a flask
self-heating-tells = How far it is from rest, in five classes.
self-heating-needs = A wide vacuum flask of a litre or more, a thermometer that reaches its lower third, up to ten days.
self-heating-step-1 = Take a sample, pick stones and wood larger than a thumbnail out, and bring it to "no drops, ball holds".
self-heating-step-2 = Let it come to the temperature of the room, spread on a tray for some hours.
self-heating-step-3 = Fill the flask loosely, put the thermometer into the lower third, and lay a cloth on top: air must get in.
self-heating-step-4 = Read flask and room twice a day until it has fallen for two days, at most ten days.
self-heating-step-5 = Take the largest difference between flask and room.
self-heating-says-1 = Up to 10 °C over the room: class V, very stable.
self-heating-says-2 = 10 to 20 °C: class IV. 20 to 30 °C: class III. 30 to 40 °C: class II. More: class I, raw.
self-heating-says-3 = A home flask is smaller than the one the classes were made with and flatters, so the program counts one class rawer.

seedlings-title = Seedlings in compost
seedlings-tells = Whether plants bear it.
seedlings-needs = Cress or radish seed, six small pots, clean potting mix or washed sand, ten days.
seedlings-step-1 = Sieve the compost and mix it half and half with the clean mix; that fills three pots. The other three get the mix alone: they are the control.
seedlings-step-2 = Sow ten seeds in each pot, at the same depth, and water all alike.
seedlings-step-3 = Keep them light and at room temperature, and moist.
seedlings-step-4 = When the control is up, after five to ten days, count the seedlings of both.
seedlings-step-5 = Look at the leaves too: yellow or curled ones tell of salt, ammonia or weedkiller.
seedlings-says-1 = As many as 80 % of the control or more: a sign of maturity; above 90 % a better one.
seedlings-says-2 = Fewer: not mature.
seedlings-says-3 = Cress forgives much, so a pass is weak and a failure is not; Chinese cabbage is the better judge.

germination-title = Germination index
germination-tells = Whether it holds what harms roots: number and length of roots in one figure.
germination-needs = Cress seed, six saucers, filter or kitchen paper, clean water, scales, a ruler, three days.
germination-step-1 = Stir one part of dry matter into ten parts of water by weight: about 20 g of moist compost into 100 g of water. Let it stand for an hour and pour it through a cloth.
germination-step-2 = Lay paper into each saucer; wet three with the extract and three with water, all with the same amount.
germination-step-3 = Put ten seeds on each, cover, and keep them dark at about 25 °C; cress needs one to three days, radish three to five.
germination-step-4 = Count the seeds that have sprouted and measure their roots.
germination-step-5 = Index = sprouted here over sprouted in water, times mean root here over mean root in water.
germination-says-1 = 80 % or more: a sign of maturity.
germination-says-2 = 50 to 80 %: nearly.
germination-says-3 = Less than 50 %: harmful to plants.

oven-title = Moisture by oven
oven-tells = How much of it is water, better than a squeeze does.
oven-needs = Kitchen scales, a baking tray, an oven, a day; open the window.
oven-step-1 = Weigh the empty tray, then the tray with about 200 g of a mixed sample.
oven-step-2 = Dry it at 100 °C for twelve to twenty-four hours with the door a finger open.
oven-step-3 = Weigh it, dry for an hour more, weigh again; stop when the weight stays.
oven-step-4 = Moisture = what was lost over the wet weight without the tray.
oven-says-1 = 45 to 55 % suits ripening; 40 to 50 % suits storing and sieving.
