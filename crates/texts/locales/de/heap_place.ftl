# Die Liste der Haufen und ein Haufen: was darin ist, was daraus wird, was über ihn gesagt wird.

all-heaps = Alle Haufen
stage = Stufe
what-was-done = Was getan wurde
show-more-of = Weitere zeigen (von { NUMBER($count) })

core = Kern
fed = Befüllt
turned = Umgesetzt
looked-at = Angesehen
core-when = { $temperature }, { $ago }

what-is-in-it = Was darin ist
thing-with-mass = { $name } ({ $mass })
things-more = { $count ->
        [one] { NUMBER($count) } weiteres
       *[other] { NUMBER($count) } weitere
    }
water-poured-on = { $water } aufgegossenes Wasser
# Namen können selbst Kommas haben.
thing-after-thing = { $things }; { $next }
mostly = Vor allem { $things }.

stop = Anhalten
compute-again = Neu berechnen
your-readings = Deine Messungen als Tabelle
what-was-assumed = Was angenommen wurde
over-time = Im Lauf der Zeit
picture-as-table = Dieses Bild als Tabelle
if-you-turn = Was, wenn du umsetzt
if-you-water = Und wenn du wässerst
no-water = Kein Wasser
water-now = Jetzt { $water }
ways-side-by-side = Wie es weitergehen kann, im Vergleich
against-leaving-alone = Verglichen mit „In Ruhe lassen“

shown-in-the-cut = Im Schnitt zu sehen
day = Tag
earlier = Früher
later = Später
play = Start
pause = Pause
cut-as-table = Dieser Schnitt als Tabelle
frame-heard = { $when }: { $told }
layer = Schicht
ring-core = Kern, { $unit }
ring-edge = Rand, { $unit }
ring-between = { NUMBER($ring) }. vom Kern aus, { $unit }
layer-ground = Boden
layer-top = Oben
layer-between = { NUMBER($layer) }. von unten

no-place = kein Ort
rule-of-place = { $place }: { $rule }
rule-met = { $rule }: { $share }
