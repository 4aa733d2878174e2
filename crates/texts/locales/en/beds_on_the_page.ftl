# What the page says of beds and stores, without the words of commands.

# Headings.
beds = Beds
stores = Stores
no-beds = No bed yet. Describe one by its area and what grows there; then compost can be shared out among the beds.
# Where the last dressing of a bed would stand.
never-spread = No compost written down yet.

# What is wrong with a field of a form.
bed-needs-name = Give the bed a name, such as North bed.
bed-name-taken = A bed of this name is there already: give another name.
bed-unchanged = Nothing is changed yet: change a field, or leave it with "Not now".
no-area = Enter the area, such as 12, or two sides, such as 3 m x 1.2 m.
no-bed-ticked = Tick at least one bed.
no-compost-said = Enter how much compost there is: the journal does not tell for this one.
no-days = Enter the days until the harvest, from 0 to 3660, or leave it empty.
no-material = Choose a material first.
often-put-by = Often put by

no-stores = Nothing is put by yet. Dry leaves, straw or torn cardboard kept under cover are what a wet heap asks for: write down what you gather.
all-used = All that was put by is used up. Time to gather more.
# What opens the list of uses away from beds.
other-uses = Other uses: pots, sowing, lawn, mulch, trees, tea

# What stops a bed from getting more; "About the compost" is a part of the same form.
bound-by-maturity-unknown = { $bed }: none yet, for seeds or seedlings come soon and the compost was not tested for maturity; test it, or say under "About the compost" that it is mature.
bound-by-raw-unknown = { $bed }: none, for nobody said whether raw manure or the like went into the compost, and the harvest comes before the { $days } days of waiting are over; say under "About the compost" if none did.

# What to know about a plan.
compost-assumed = The compost was never analysed: usual figures with wide ranges are taken.
maturity-unknown = No tests show that the compost is mature: as with immature compost, let eight weeks pass before anything is sown or planted in it; the heap's own place tells what is missing.
volume-estimated = How much compost there is was estimated from what went in; enter it once you have measured it.
raw-unknown = Nobody said whether manure, droppings or meat went in: what touches the soil waits { $days } days between spreading and harvest, unless you say under "About the compost" that none did.
crop-unknown = { $bed }: "{ $crop }" is not in the table of crops, so it is taken as a medium feeder; describe the bed with how much it feeds.
