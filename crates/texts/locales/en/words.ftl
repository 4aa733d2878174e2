# The words for what can be chosen; they stand by themselves, as labels and in lists.

# Stands for a choice of a newer version of this program.
of-a-newer-version = something a newer version knows

# How much the plants of a bed feed on.
feeding-light = light
feeding-medium = medium
feeding-heavy = heavy

# How a handful feels when it is squeezed.
squeeze-dusty = dusty
squeeze-dry = dry
squeeze-moist = moist
squeeze-wet = wet
squeeze-dripping = dripping

# How a heap smells.
smell-faint = hardly any smell
smell-earthy = earthy
# Of what went in.
smell-fresh = fresh
smell-ammonia = ammonia
smell-sour = sour
smell-rotten = rotten
smell-musty = musty

# How a heap looks.
look-steam = steaming
look-white-threads = white threads
look-mould = mould
# Grass or leaves lie in mats.
look-matted = matted
look-slimy = slimy
look-dry-pockets = dry pockets
look-sunk = sunk
look-crumbly = crumbly
# What went in is hardly to be told.
look-unrecognisable = nothing to be told apart
# Things grow on it.
look-sprouting = sprouting

# What lives in a heap.
creature-worms = worms
creature-woodlice = woodlice
creature-millipedes = millipedes
creature-ants = ants
creature-fruit-flies = fruit flies
creature-flies = flies
creature-maggots = maggots
creature-beetle-grubs = beetle grubs
creature-slugs = slugs
creature-mice = mice
creature-rats = rats

# Where in a heap a probe was; halfway lies between middle and wall.
place-core = core
place-halfway = halfway
place-edge = edge
place-top = top
place-bottom = bottom

# Shape of a heap: upright with corners, upright and round, without walls, a drum that is turned.
shape-box = box
shape-cylinder = cylinder
shape-cone = free-standing
shape-drum = drum

# Wall of a heap; slats are boards or pallets with gaps.
wall-open = no wall
wall-mesh = wire mesh
wall-slatted = slats
wall-wood = wood
wall-plastic = plastic
wall-metal = metal
wall-insulated = insulated

# What covers a heap; a sheet, sack or carpet lies on it, a lid closes, a roof keeps the rain off.
cover-none = no cover
cover-sheet = sheet
cover-lid = lid
cover-roof = roof

# On what a heap stands.
ground-soil = soil
ground-paving = paving

# How much sun a heap has.
sun-shade = shade
sun-part = half sun
sun-full = full sun

# What a heap is: fed and working, left to ripen, ready to use. Also as in "Bin is now active".
stage-active = active
stage-curing = curing
stage-finished = finished

# How a heap was turned: air let in; forked over in its place; the outside put to the inside.
turned-loosened = loosened
turned-forked-over = forked over
turned-inside-out = inside out

# How compost was spread on a bed.
spread-mulch = left on top
spread-dug-in = worked in
spread-planting-hole = into planting holes
