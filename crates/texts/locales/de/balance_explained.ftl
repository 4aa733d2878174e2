# Die Mischung: was sich mit der Antwort tun lässt und was dahinter steht.

log-this-feed = Diese Zugabe eintragen
heap = Haufen
start-a-heap = Beginne einen Haufen
start-a-heap-to-log = { $link }, dann kannst du eintragen, was du ihm zugibst.

good-region = guter Bereich
the-mixture = die Mischung
where-it-may-be = wo sie liegen kann
in-hand-alone = nur was zur Hand ist
one-more-scoop = ein Maß mehr, nach seiner Nummer
head-what = Was
head-ratio = C:N
head-moisture = Feuchte
row-in-hand-alone = Nur was zur Hand ist
row-mixture = Die Mischung
row-with-more = { NUMBER($number) }: { $scoop } mehr
cloud = Die Wolke zeigt 240 Möglichkeiten, wie die Mischung sein kann; in der Tabelle steht ihre Mitte.

in-eight-of-ten = In 8 von 10 Fällen: { $range }.
on-measured-carbon = Mit gemessenem Kohlenstoff hat diese Mischung { $ratio }.
part-by-part = { $name }, Teil für Teil
part = Teil
typical-and-range = { $typical } ({ $low } bis { $high })
sources-of = { $sources }, { $name }

nutrients = Nährstoffe
of-nitrogen = Stickstoff
nutrients-are = Masse jedes Elements in der Mischung; beim Verrotten geht etwas davon verloren.
not-known = nicht bekannt
mass-and-range = { $mass } ({ $range })
known-for = bekannt für { $percent }
nitrogen = Stickstoff
phosphorus = Phosphor
potassium = Kalium
calcium = Kalzium
magnesium = Magnesium
sodium = Natrium

always-take-care = Trag Handschuhe und wasch dir danach die Hände. Mach Staubiges oder Schimmliges nass, bevor du es bewegst, und stell dich so, dass der Wind von dir wegweht.
