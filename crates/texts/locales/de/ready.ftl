# Ist der Kompost fertig? „Er“ ist in diesen Sätzen der Kompost.

limits = Reif heißt nicht frei von Keimen oder Samen: Diese Zeichen sagen nichts über Hygiene. Örtliche Regeln gehen vor.
simulated-apart = Aus der Simulation, nicht gemessen; es geht in kein Urteil ein:

# Unter der Überschrift „Urteil“.
standing-against = dagegen
standing-between = fast
standing-for = dafür
standing-not-counted = zählt nicht

verdict-untested = Ob er fertig ist, lässt sich nicht sagen: Noch gibt kein Test Auskunft.
verdict-not-ready = Noch nicht fertig.
verdict-nearly = Fast fertig, oder nur in einer Hinsicht fertig.
verdict-ready = Fertig nach zwei unabhängigen Zeichen: Er ist zur Ruhe gekommen, und Pflanzen vertragen ihn.
stability-untested = Noch zählt kein Zeichen der Ruhe (Stabilität).
stability-against = Er arbeitet noch: Die Zeichen sprechen gegen Ruhe.
stability-divided = Die Zeichen der Ruhe widersprechen einander.
stability-between = Er ist fast zur Ruhe gekommen.
maturity-untested = Noch zählt kein Zeichen dafür, dass Pflanzen ihn vertragen (Reife).
maturity-against = Pflanzen würden leiden: Die Zeichen sprechen gegen Reife.
maturity-divided = Die Zeichen der Reife widersprechen einander.
maturity-between = Pflanzen vertragen ihn fast.
home-tests-only = Das stützt sich allein auf Tests zu Hause, und die sind grob.

next-below = { $tests ->
        [bag-and-seedlings] Probiere den Beutel und die Kresse; wie es geht, steht unten.
        [rest] Teste, ob er zur Ruhe gekommen ist; wie es geht, steht unten.
       *[plants] Teste, ob Pflanzen ihn vertragen; wie es geht, steht unten.
    }
next-turn = Setze ihn einmal um, halte ihn feucht wie einen ausgedrückten Schwamm und teste in drei oder vier Wochen noch einmal.
next-ripen = Lass ihn noch einige Wochen reifen und teste dann noch einmal.

test-self-heating = Selbsterhitzung im Isoliergefäß
test-reheating = Wärme nach dem Umsetzen
test-bag = geschlossener Beutel
test-respiration = Atmung
test-germination = Keimindex
test-emergence = Keimlinge
test-carbon-to-nitrogen = C:N aus dem Labor
test-ammonium-to-nitrate = Ammonium zu Nitrat
test-ammonium = Ammonium

family-stability = Ruhe
family-maturity = Pflanzen

found-self-heating = { $rise } über dem Raum, { $class } (gezählt als { $counted })
found-reheating = { $rise } über der Luft
found-bag = { $state ->
        [swollen] { $days ->
            [one] { NUMBER($days) } Tag, aufgebläht, { $smell }
           *[other] { NUMBER($days) } Tage, aufgebläht, { $smell }
        }
       *[flat] { $days ->
            [one] { NUMBER($days) } Tag, flach, { $smell }
           *[other] { NUMBER($days) } Tage, flach, { $smell }
        }
    }
found-bag-unsmelt = niemand hat daran gerochen
found-respiration = { $uptake }{"\u00A0"}mg C/(g{"\u00A0"}d), { $class }
found-germination = { $share } der Kontrolle
found-emergence = { $share } der Kontrolle, { $class }
found-ammonium-to-nitrate = { $ratio }, { $class }
found-ammonium = { $content }{"\u00A0"}mg/kg, { $class }

# Die fünf Klassen der Selbsterhitzung heißen in Deutschland Rottegrade: I ist roh, V ist fertig.
heating-class = Rottegrad { $class }
respiration-raw = roh
respiration-unstable = instabil
respiration-moderately-unstable = mäßig instabil
respiration-stable = stabil
respiration-very-stable = sehr stabil
maturity-immature = unreif
maturity-mature = reif
maturity-very-mature = sehr reif

weak = Schwach: { $doubts }.
doubt-fed-since = danach kam etwas hinein, also geht es um anderes Material
doubt-old = der Test ist mehr als zwei Monate alt
doubt-bag-says-nothing = der Beutel muss drei Tage zu sein, und am Ende muss jemand daran riechen
doubt-small-heap = ein Haufen unter 500{"\u00A0"}L oder von unbekannter Größe bleibt kühl, ob reif oder nicht
doubt-dry = ein trockener Haufen bleibt kühl, ob reif oder nicht: wässere ihn zuerst
doubt-moisture-unknown = niemand hat eine Handvoll gedrückt, und ein trockener Haufen bleibt kühl
doubt-air-usual = die Luft wurde nicht gemessen, darum gilt der übliche Wert des Monats
doubt-few-seeds = weniger als 30 Samen sagen wenig
doubt-seeds-forgive = Kresse und Radieschen verzeihen viel: bestanden heißt wenig, nicht bestanden heißt viel
doubt-home-flask = ein Gefäß von zu Hause zeigt zu gute Werte, darum zählt ein Rottegrad weniger
doubt-nose-only = die Nase ist ein grobes Messgerät
doubt-ratio-alone = übriges Holz hebt den Wert, viel Stickstoff senkt ihn, ob reif oder nicht

hints = Beim letzten Blick: { $hints }; Aussehen und Geruch sind die schwächsten Zeichen und gehen in kein Urteil ein.
hint-smells-earthy = er riecht erdig
hint-smells-foul = er riecht faulig
hint-looks-done = er sieht fertig aus
hint-warm = sein Kern ist warm

today-uptake = Warm, feucht und belüftet würde er { $uptake }{"\u00A0"}mg Sauerstoff je g organischer Substanz und Stunde aufnehmen: { $class }.
today-core = { $side ->
        [cooler] Sein Kern ist { $degrees } kühler als die Luft; C:N { $ratio }; Ammonium { $share } des Stickstoffs.
       *[warmer] Sein Kern ist { $degrees } wärmer als die Luft; C:N { $ratio }; Ammonium { $share } des Stickstoffs.
    }
today-ready = Dort zählt er seit Tag { NUMBER($day) } von { NUMBER($days) } als fertig.
today-not-ready = { $days ->
        [one] Nach { NUMBER($days) } Tag zählt er dort nicht als fertig.
       *[other] Nach { NUMBER($days) } Tagen zählt er dort nicht als fertig.
    }

yield-dry = Trockenmasse
yield-wet = wie er liegt
yield-volume = Volumen
yield-sieved = durch ein Sieb
yield-overs = im Sieb geblieben
yield-organic-loss = abgebaute organische Substanz

dry-matter-by-ash = Die Trockenmasse folgt aus der Asche, die das Labor gefunden hat: Asche verrottet nicht und verdunstet nicht.
dry-matter-by-materials = Die Trockenmasse folgt daraus, was Mikroben von jedem Material gewöhnlich übrig lassen; die Asche aus einem Labor würde die Spanne enger machen.
learnt = { $harvests ->
        [1] Gelernt aus der einen Entnahme in diesem Garten, deren Menge bekannt ist: Massen und Volumen mal { $factor }.
       *[other] Gelernt aus den { NUMBER($harvests) } Entnahmen in diesem Garten, deren Menge bekannt ist: Massen und Volumen mal { $factor }.
    }
learns-from-harvests = Schreibe auf, wie viel jede Entnahme ergab und welcher Anteil des Haufens das war: Die nächste Angabe lernt daraus.
unlikely-harvests = { $harvests ->
        [1] Eine Entnahme bleibt weg, weil sie mehr als { NUMBER($farthest) }-mal so groß ist wie berechnet oder kleiner als 1/{ NUMBER($farthest) } davon: Sieh dir ihre Menge und ihren Anteil an, und was zugegeben wurde.
       *[other] { NUMBER($harvests) } Entnahmen bleiben weg, weil sie mehr als { NUMBER($farthest) }-mal so groß sind wie berechnet oder kleiner als 1/{ NUMBER($farthest) } davon: Sieh dir ihre Menge und ihren Anteil an, und was zugegeben wurde.
    }
ash-too-low = Es wurde weniger Asche gefunden, als hineinkam: Eins von beiden stimmt nicht, und die zugegebene Trockenmasse wurde genommen.
soil-likely = Die gefundene Asche lässt kaum organische Substanz übrig: Es kam Erde hinein, die nicht aufgeschrieben wurde.
left-out = Weggelassen, weil dieses Programm damit nichts anfangen kann: { $names }.
