# Beete: was wo wächst, was darauf ausgebracht wurde und wie sich Kompost auf sie verteilt.

write-down = Aufschreiben
describe-a-bed = Beet beschreiben
spread-compost = Kompost ausbringen

square-metres = { $number }{"\u00A0"}m²
square-feet = { $number }{"\u00A0"}sq{"\u00A0"}ft

change = Ändern
change-bed = { $bed } ändern
grows = Dort wächst
feeding-so = zehrt { $feeding }
crop-and-feeding = { $crop }, { $feeding }
last-dressing = Letzte Gabe
dressing-when = { $amount }, { $ago }
what-was-done = Was getan wurde

not-now = Jetzt nicht
keep-bed = Beet speichern
keep-change = Änderung speichern
name = Name
name-hint = Zum Beispiel Nordbeet.
area-square-metres = Fläche, m²
area-square-feet = Fläche, sq ft
area-hint = Zum Beispiel 12 oder 3 m x 1,2 m.
what-grows = Was dort wächst (kann wegbleiben)
how-much-it-feeds = Wie viel Nährstoff es braucht
as-the-crop = wie üblich für die Pflanze
new-ground = Neuer Boden, noch nie umgegraben und gedüngt
soil-test = Bodenprobe (kann wegbleiben)
soil-ph = pH
soil-organic = Organische Substanz, %
soil-phosphorus = Phosphor (P), mg/kg
soil-potassium = Kalium (K), mg/kg
soil-conductivity = Leitfähigkeit, dS/m

bed = Beet
amount-spread = Kompost
from-heap = Von
not-said = keine Angabe
how = Wie
write-it-down = Aufschreiben
heap-in-stage = { $heap } ({ $stage })

share-compost = Kompost auf die Beete verteilen
compost-of = Kompost von
somewhere-else = anderswo
how-much-there-is = Wie viel da ist; bleibt es leer, gilt, was das Journal für den Haufen sagt.
amount-to-share = Kompost zum Verteilen
about-the-compost = Über den Kompost
is-mature = Reif?
as-tests-say = wie seine Tests sagen
dog-or-cat-went-in = Kam Hunde- oder Katzenkot hinein?
went-raw-in = Kam roher Mist, Kot oder Fleisch hinein?
as-journal-says = wie das Journal sagt
yes = ja
no = nein
which-beds = Welche Beete
soon-there = Was dort bald ansteht
sown-now = Jetzt gesät oder gepflanzt
harvest-in-days = Ernte in wie vielen Tagen
plan = Planen

print-plan = Plan drucken
nothing-left-over = Nichts bleibt übrig.
limit-with-sources = { $count ->
        [one] { $line } (Quelle { $numbers })
       *[other] { $line } (Quellen { $numbers })
    }
barrows-or-buckets = { $barrows } oder { $buckets }
share-of-bed = { $vessels }, { $depth } hoch, { $volume }
share-none = nichts
stops-at = Grenze: { $limit }

paper-title = Kompost für die Beete, { $day }
head-bed = Beet
head-barrows = Karren
head-buckets = Eimer
head-depth = Höhe
head-amount = Menge
head-weight = Gewicht
head-done = Erledigt
