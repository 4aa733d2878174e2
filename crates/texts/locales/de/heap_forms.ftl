# Die Formulare eines Haufens: ihn beginnen, befüllen, messen, bewegen, testen.

not-now = Jetzt nicht
not-said = keine Angabe
centimetres = cm
inches = Zoll

start-a-heap = Einen Haufen beginnen
start-this-heap = Diesen Haufen beginnen
name = Name
name-hint = Zum Beispiel Komposter 1 oder Am Schuppen.
stands-in = Worin er steht (kann wegbleiben)
shape = Form
width-or-diameter = Breite oder Durchmesser, { $unit }
depth = Tiefe, { $unit }
height = Höhe, { $unit }
wall = Wand
cover = Abdeckung
ground = Untergrund
sun = Sonne
filled = Befüllt
filled-little-by-little = nach und nach
filled-at-once = auf einmal

log = Eintragen
act-feed = Befüllt
act-turned = Umgesetzt
act-watered = Gewässert
act-read = Messung
act-note = Notiz
act-harvest = Entnahme
act-more = Mehr

with-what-answer-adds = Mit dem, was die Antwort dazugibt
change-in-balance = In „Mischen“ ändern
feed-is-example = Das ist das Beispiel, mit dem „Mischen“ beginnt, nicht das, was du hast: Ändere es zuerst.
log-feed = Diese Zugabe eintragen
caution-of = { $material }: { $caution }

amount-water = Wasser
log-water = Wasser eintragen

note = Notiz
picture = Bild (kann wegbleiben)
log-note = Notiz eintragen

how-much-compost = Wie viel Kompost herauskam
amount-harvested = entnommener Kompost
share-of-heap = Wie viel vom Haufen, %
share-of-heap-hint = Bleibt es leer, gilt: alles.
log-harvest = Entnahme eintragen

turned = Umgesetzt
log-turning = Umsetzen eintragen
log-cover = Abdeckung eintragen
stage = Stufe
log-stage = Stufe eintragen

log-reading = Messung eintragen
squeezed = Faustprobe
smell = Geruch
looks = Aussehen
creatures = Tiere
probe-place = Wo
how-deep = Wie tief, { $unit }
temperature = Temperatur, { $unit }
one-degree-less = Ein Grad weniger
one-degree-more = Ein Grad mehr

bag-days = Wie viele Tage verschlossen
bag-was = Der Beutel war
bag-flat = flach
bag-swollen = aufgebläht
bag-smell = Geruch beim Öffnen
nobody-smelt = niemand hat daran gerochen
flask-highest = Höchste Temperatur im Gefäß, { $unit }
flask-room = Temperatur des Raums, { $unit }
seeds-sown = Im Kompost gesäte Samen
seeds-sprouted = Davon gekeimt
seeds-control-sown = In der Kontrolle gesäte Samen
seeds-root = Mittlere Wurzellänge im Kompost, mm
seeds-control-root = Mittlere Wurzellänge in der Kontrolle, mm
lab-moisture = Feuchte, %
lab-ph = pH
lab-carbon = Kohlenstoff, % der Trockenmasse
lab-nitrogen = Stickstoff, % der Trockenmasse
lab-ratio = C:N, gemessen
lab-ash = Asche, % der Trockenmasse
lab-phosphorus = Phosphor (P), % der Trockenmasse
lab-potassium = Kalium (K), % der Trockenmasse
lab-calcium = Kalzium (Ca), % der Trockenmasse
lab-magnesium = Magnesium (Mg), % der Trockenmasse
lab-sodium = Natrium (Na), % der Trockenmasse
lab-conductivity = Leitfähigkeit, dS/m
lab-ammonium = Ammoniumstickstoff, mg/kg Trockenmasse
lab-nitrate = Nitratstickstoff, mg/kg Trockenmasse
lab-carbon-dioxide = Kohlendioxid, mg/g organische Substanz am Tag
