# Die Wörter für alles, was sich wählen lässt; sie stehen für sich, als Beschriftung und in Listen.

of-a-newer-version = etwas aus einer neueren Version

feeding-light = schwach
feeding-medium = mittel
feeding-heavy = stark

squeeze-dusty = staubig
squeeze-dry = trocken
squeeze-moist = feucht
squeeze-wet = nass
squeeze-dripping = tropfnass

smell-faint = kaum Geruch
smell-earthy = erdig
smell-fresh = frisch
smell-ammonia = Ammoniak
smell-sour = sauer
smell-rotten = faulig
smell-musty = muffig

look-steam = dampft
look-white-threads = weiße Fäden
look-mould = Schimmel
look-matted = verfilzt
look-slimy = schleimig
look-dry-pockets = trockene Nester
look-sunk = eingesunken
look-crumbly = krümelig
look-unrecognisable = nichts mehr zu erkennen
look-sprouting = bewachsen

creature-worms = Würmer
creature-woodlice = Asseln
creature-millipedes = Tausendfüßer
creature-ants = Ameisen
creature-fruit-flies = Fruchtfliegen
creature-flies = Fliegen
creature-maggots = Maden
creature-beetle-grubs = Engerlinge
creature-slugs = Nacktschnecken
creature-mice = Mäuse
creature-rats = Ratten

place-core = Kern
place-halfway = auf halbem Weg
place-edge = Rand
place-top = oben
place-bottom = unten

shape-box = Kasten
shape-cylinder = Zylinder
shape-cone = frei aufgesetzt
shape-drum = Trommel

wall-open = ohne Wand
wall-mesh = Drahtgitter
wall-slatted = Latten
wall-wood = Holz
wall-plastic = Kunststoff
wall-metal = Metall
wall-insulated = gedämmt

cover-none = ohne Abdeckung
cover-sheet = Plane
cover-lid = Deckel
cover-roof = Dach

ground-soil = Erde
ground-paving = Pflaster

sun-shade = Schatten
sun-part = Halbschatten
sun-full = volle Sonne

stage-active = aktiv
stage-curing = in Nachreife
stage-finished = fertig

turned-loosened = gelockert
turned-forked-over = umgeschichtet
turned-inside-out = außen nach innen

spread-mulch = obenauf
spread-dug-in = eingearbeitet
spread-planting-hole = in Pflanzlöcher
