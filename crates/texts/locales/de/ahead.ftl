# Was die Seite zu den kommenden Tagen eines Haufens sagt.

looking-ahead = Vorausschau
inside = Im Inneren des Haufens
computing = Die Vorausschau wird berechnet…
stopped = Angehalten. Was bis dahin berechnet wurde, steht unten.
stopped-early = Angehalten, bevor es etwas zu zeigen gab.
nothing-ahead = In diesem Haufen liegt noch nichts, also gibt es nichts vorauszuschauen. Trag mit „Befüllt“ ein, was hineinkommt, dann stehen hier seine nächsten Tage.
no-simulator = Dieser Browser kann die kommenden Tage nicht berechnen. Aktualisiere ihn oder nimm einen anderen.
simulator-unfetched = Was die kommenden Tage berechnet, ließ sich nicht laden. Lade die Seite neu, wenn du Empfang hast.
question-unread = Was für diese Seite rechnet, hat eine andere Version als die Seite. Lade die Seite neu.
simulation-broke = Die kommenden Tage ließen sich nicht berechnen. Versuch es noch einmal; wenn das nicht hilft, lade die Seite neu.
days-from-now = Die Tage zählen ab jetzt: Links von 0 ist Vergangenheit.

value-core = Kern
value-moisture = Feuchte
value-oxygen = Sauerstoff
value-volume = Volumen

turning-not-at-all = Gar nicht
turning-now = Jetzt
turning-in-3-days = In 3 Tagen

leave-alone = In Ruhe lassen
turn-now = Jetzt umsetzen
turn-in-3-days = In 3 Tagen umsetzen
water-now = Jetzt mit { $water } wässern
water-now-and-turn-now = Jetzt mit { $water } wässern und umsetzen
water-now-and-turn-in-3-days = Jetzt mit { $water } wässern und in 3 Tagen umsetzen

weather-of-place = Wetter: das übliche am Ort dieses Gartens ({ $latitude }, { $longitude }) an jedem Tag des Jahres; die Durchläufe schwanken darum.
latitude = { $side ->
        [south] { $degrees }°{"\u00A0"}Süd
       *[north] { $degrees }°{"\u00A0"}Nord
    }
longitude = { $side ->
        [west] { $degrees }°{"\u00A0"}West
       *[east] { $degrees }°{"\u00A0"}Ost
    }
weather-without-place = Wetter: das übliche auf 50°{"\u00A0"}Nord, denn das Journal sagt nicht, wo der Garten liegt; die Durchläufe schwanken darum.
weather-rough = Seine Temperaturen sind aus Breitengrad und Höhe geschätzt, auf etwa { $degrees } genau.

percent = { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
figures = Kern { $core }, Rand { $edge }, Luft draußen { $outside }; Sauerstoff mindestens { $oxygen }; Feuchte { $moisture }; Volumen { $volume }.

over-time-steady = { $name }: jetzt etwa { $now }, und so bleibt es.
over-time = { $name }: jetzt etwa { $now }; von jetzt an zwischen { $least } und { $most }.
runs-apart = Neun von zehn Durchläufen liegen zwischen { $low } und { $high }.

compared-head = Von jetzt an
compared-core = Höchste Temperatur im Kern
compared-hot-days = Tage bei { $limit } oder mehr
compared-oxygen = Tiefster Sauerstoffwert
oxygen-percent = { $number }{"\u00A0"}%
compared-sour-days = Tage mit zu wenig Luft
compared-driest = Geringste Feuchte
compared-water = Wasser, das am Ende fehlt
water-none = keines
water-too-much = keines, { $water } zu viel
compared-volume = Volumen am Ende
compared-ready = Fertig ab
not-yet = noch nicht

differences = { $name }: { $differences }.
no-difference = { $name }: kein Unterschied, der ins Gewicht fällt.
core-warmer = der Kern wird in der Spitze { $degrees } wärmer
core-cooler = der Kern bleibt in der Spitze { $degrees } kühler
hot-longer = er liegt { $days } länger bei { $limit } oder mehr
hot-less = er liegt { $days } kürzer bei { $limit } oder mehr
sour-longer = einem Teil fehlt { $days } länger die Luft
sour-less = einem Teil fehlt { $days } kürzer die Luft
less-dry = { $points ->
        [one] seine Feuchte sinkt { NUMBER($points, maximumFractionDigits: 0) } Prozentpunkt weniger tief
       *[other] seine Feuchte sinkt { NUMBER($points, maximumFractionDigits: 0) } Prozentpunkte weniger tief
    }
drier = { $points ->
        [one] seine Feuchte sinkt { NUMBER($points, maximumFractionDigits: 0) } Prozentpunkt tiefer
       *[other] seine Feuchte sinkt { NUMBER($points, maximumFractionDigits: 0) } Prozentpunkte tiefer
    }
ends-smaller = er ist am Ende { $volume } kleiner
ends-larger = er ist am Ende { $volume } größer
ready-sooner = { $days ->
        [one] er ist { NUMBER($days, maximumFractionDigits: 1) } Tag früher fertig
       *[other] er ist { NUMBER($days, maximumFractionDigits: 1) } Tage früher fertig
    }
ready-later = { $days ->
        [one] er ist { NUMBER($days, maximumFractionDigits: 1) } Tag später fertig
       *[other] er ist { NUMBER($days, maximumFractionDigits: 1) } Tage später fertig
    }
may-be-ready = er kann in dieser Zeit fertig werden
is-not-ready = er wird in dieser Zeit nicht fertig
