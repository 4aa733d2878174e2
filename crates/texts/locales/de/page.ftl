# Was die ganze Seite sagt: die Namen ihrer Bereiche, die Mischung, was vom Journal und von Dateien erzählt wird.

name = Heapwright

today = Heute
heaps = Haufen
logbook = Logbuch
settings = Einstellungen
bright-sun = Sonne

balance = Zugabe mischen
in-hand = Zur Hand
in-hand-hint = Tippe an, was du hast. Jedes weitere Tippen zählt eins dazu.
empty-hand = Noch ist nichts zur Hand. Tippe an, was du hast.
in-reach = In Reichweite
in-reach-hint = Was dazukommen darf. Entferne den Haken bei dem, was du heute nicht nimmst.
water = Wasser aus der Kanne
answer = Was dazukommt
ways = Andere Möglichkeiten
map = Mischkarte
map-table = Die Karte als Tabelle
figures = Die Mischung
cautions = Vorsicht
find = Anderes Material suchen
find-hint = Schreibe, wie du es nennst, zum Beispiel Schalen oder Sägemehl.
find-nothing = So heißt hier nichts. Versuche ein einfacheres Wort.
undo = Rückgängig
clear = Alles entfernen
example = Beispielvorrat, erfunden
sources = Quellen
not-counted = Das zählt erst mit, wenn es berichtigt ist.
mend-first = Berichtige oder entferne zuerst das Markierte.
log-feed-hint = Die Zugabe kommt so, wie sie oben steht, ins Logbuch des Haufens, mit allem, was die Antwort dazugibt.

demo = Beispielgarten, erfunden
demo-told = Dieser Garten ist erfunden. Probiere aus, was du magst: Nichts davon wird aufbewahrt, und dein eigenes Journal bleibt, wie es ist.
demo-leave = Beispielgarten verlassen
demo-enter = In einem erfundenen Garten umsehen
no-demo = Der erfundene Garten ist noch nicht auf diesem Gerät: Öffne ihn einmal mit Empfang.

no-heaps = Noch kein Haufen. Beginne einen, und alles, was du mit ihm tust, bleibt in einem Journal auf diesem Gerät.
no-such-heap = Dieser Haufen steht nicht im Journal dieses Geräts.
opening = Das Journal wird geöffnet{"\u00A0"}…
no-entries = Noch nichts eingetragen.
nothing-in = Noch ist nichts darin. Gib etwas zu, und hier stehen die Werte des Haufens.
emptied = Alles, was hineinkam, wurde wieder entnommen.

conflict = Von diesem Eintrag kamen zwei Fassungen; beide bleiben erhalten. Die andere lautet:
corrections-apart = Berichtigungen stehen unter ihren eigenen Arten.

may-be-lost = Der Browser kann dieses Journal löschen, wenn auf dem Gerät der Platz knapp wird. Installiere die Seite oder exportiere das Journal ab und zu.
lasts = Der Browser hat versprochen, dieses Journal zu behalten, bis du es löschst.
export-due = Dieses Journal gibt es nur auf diesem Gerät. Exportiere es und hebe die Datei an einem anderen Ort auf.
cleared = Der Browser hat das Journal auf diesem Gerät gelöscht. Auf dieser Seite ist es noch da: Exportiere es jetzt oder trage irgendetwas ein, dann wird es wieder gespeichert. Wenn du es absichtlich gelöscht hast, schließe diese Seite.

file-not-read = Diese Datei ließ sich nicht lesen: Wähle ein Journal von höchstens 256{"\u00A0"}MiB.
picture-not-read = Dieses Bild ließ sich nicht lesen: Wähle ein anderes oder trage die Notiz ohne Bild ein.
file-cut = Die Datei ist abgeschnitten oder wurde verändert: In ihr steht nicht das, was ihre erste Zeile angibt. Was noch da ist, lässt sich übernehmen.
file-headless = Der Datei fehlt die erste Zeile, die angibt, wie viel darin steht; darum kann niemand wissen, ob sie vollständig ist.
other-garden = Das scheint das Journal eines anderen Gartens zu sein: Kein Eintrag darin steht auch in deinem. Wenn du es übernimmst, vermischen sich die beiden.
nothing-new = In dieser Datei steht nichts Neues.
no-number = Gib eine Zahl ein, zum Beispiel 58 oder 3,5.
no-time = Gib einen Tag und eine Uhrzeit ein, die schon vorbei sind.
shape-needs-size = Gib Form, Breite und Höhe des Behälters an oder nichts davon.
below-zero = Unter null
harvest-amount-hint = Kann wegbleiben. Aus der Menge lernt die Seite, wie viel Kompost aus deinen Haufen wird.
nothing-read = Trage mindestens eine Beobachtung ein oder hake eine an.

units-metric = Kilogramm und Liter
units-us = Pfund und US-Gallonen

figure-carbon-to-nitrogen = C:N
figure-moisture = Feuchte
figure-free-air-space = Luftraum
figure-mass = Masse
figure-volume = Volumen
meaning-carbon-to-nitrogen = Wie viel Kilogramm Kohlenstoff auf jedes Kilogramm Stickstoff in der Trockenmasse kommen: Niedrig heißt grün, hoch heißt braun.
meaning-moisture = Der Anteil der Masse, der Wasser ist.
meaning-free-air-space = Der Anteil des Volumens, den weder Wasser noch Festes füllt, in dem also Luft ziehen kann.
meaning-mass = Die Masse, wie sie daliegt, mit allem Wasser.
meaning-volume = Das Volumen, wie es ausgeschüttet wird, bevor es sich setzt.

own-carbon-to-nitrogen = eigenes C:N
own-moisture = eigene Feuchte
own-density = eigene Dichte, kg/m³
share-of-nitrogen = vom Stickstoff
share-of-water = vom Wasser
share-of-volume = vom Volumen
share-of-mass = von der Masse

chance = Wahrscheinlichkeit, alle Ziele zu treffen, bei allem, was ungewiss ist: { $chance }.

map-aim = Der gute Bereich liegt bei C:N { $ratio-low } bis { $ratio-high } und Feuchte { $moisture-low } bis { $moisture-high }.
map-empty = Auf der Karte ist noch keine Mischung. { $aim }
map-mixture = Die Mischung liegt bei C:N { $ratio } und Feuchte { $moisture }. { $aim }
map-mixture-and-hand = Die Mischung liegt bei C:N { $ratio } und Feuchte { $moisture }; was zur Hand ist, liegt allein bei C:N { $hand-ratio } und Feuchte { $hand-moisture }. { $aim }

entries = { $count ->
        [one] 1 Eintrag
       *[other] { NUMBER($count) } Einträge
    }
journal-size = { $count ->
        [one] 1 Eintrag auf diesem Gerät.
       *[other] { NUMBER($count) } Einträge auf diesem Gerät.
    }

gone = { $count ->
        [one] Dieser Browser hatte ein Journal mit 1 Eintrag und hat es gelöscht. { -import-your-file }
       *[other] Dieser Browser hatte ein Journal mit { NUMBER($count) } Einträgen und hat es gelöscht. { -import-your-file }
    }
-import-your-file = Wenn du eine exportierte Datei hast, importiere sie: Das bringt zurück, was darin steht.

put-back = { $count ->
        [one] Der Browser hatte das Journal auf diesem Gerät gelöscht. Von dieser Seite aus wurde es wieder gespeichert: 1 Eintrag. { -pictures-are-lost }
       *[other] Der Browser hatte das Journal auf diesem Gerät gelöscht. Von dieser Seite aus wurde es wieder gespeichert: { NUMBER($count) } Einträge. { -pictures-are-lost }
    }
-pictures-are-lost = Bei Bildern geht das nicht: Importiere sie, wenn du sie exportiert hast. Exportiere das Journal jetzt.
put-back-in-part = { $lost ->
        [one] { $put-back } Es fehlt 1 Eintrag, den nur eine neuere Version versteht; importiere deine letzte Datei, um ihn wiederzubekommen.
       *[other] { $put-back } Es fehlen { NUMBER($lost) } Einträge, die nur eine neuere Version versteht; importiere deine letzte Datei, um sie wiederzubekommen.
    }

damage-order = { $places ->
        [single] Im Journal auf diesem Gerät stehen Einträge nicht in ihrer Reihenfolge (Nummer { NUMBER($first) }). { -all-others-are-here }
       *[several] Im Journal auf diesem Gerät stehen Einträge nicht in ihrer Reihenfolge (ab Nummer { NUMBER($first) }). { -all-others-are-here }
    }
damage-changed = { $places ->
        [single] Im Journal auf diesem Gerät hat sich 1 Eintrag verändert und bleibt weg (Nummer { NUMBER($first) }). { -all-others-are-here }
       *[several] { $changed ->
            [one] Im Journal auf diesem Gerät hat sich 1 Eintrag verändert und bleibt weg (ab Nummer { NUMBER($first) }). { -all-others-are-here }
           *[other] Im Journal auf diesem Gerät haben sich { NUMBER($changed) } Einträge verändert und bleiben weg (ab Nummer { NUMBER($first) }). { -all-others-are-here }
        }
    }
damage-missing = { $places ->
        [single] Im Journal auf diesem Gerät fehlen Einträge (Nummer { NUMBER($first) }). { -all-others-are-here }
       *[several] Im Journal auf diesem Gerät fehlen Einträge (ab Nummer { NUMBER($first) }). { -all-others-are-here }
    }
damage-missing-and-changed = { $changed ->
        [one] Im Journal auf diesem Gerät fehlen Einträge, und 1 weiterer hat sich verändert (ab Nummer { NUMBER($first) }). { -all-others-are-here }
       *[other] Im Journal auf diesem Gerät fehlen Einträge, und { NUMBER($changed) } weitere haben sich verändert (ab Nummer { NUMBER($first) }). { -all-others-are-here }
    }
-all-others-are-here = Alle anderen sind da. { -import-your-file }

file-holds = { $count ->
        [one] In der Datei steht 1 Eintrag: { NUMBER($new) } neu, { NUMBER($known) } schon bekannt.
       *[other] In der Datei stehen { NUMBER($count) } Einträge: { NUMBER($new) } neu, { NUMBER($known) } schon bekannt.
    }
file-conflicts = { $count ->
        [one] 1 davon steht hier mit anderem Inhalt; beide Fassungen bleiben erhalten.
       *[other] { NUMBER($count) } davon stehen hier mit anderem Inhalt; beide Fassungen bleiben erhalten.
    }
file-not-understood = { $count ->
        [one] 1 davon kommt aus einer neueren Version ({ $kinds }): Er bleibt erhalten und wird weitergegeben, aber nicht ganz gezeigt.
       *[other] { NUMBER($count) } davon kommen aus einer neueren Version ({ $kinds }): Sie bleiben erhalten und werden weitergegeben, aber nicht ganz gezeigt.
    }
file-ahead = { $count ->
        [one] 1 davon liegt nach der Uhr dieses Geräts mehr als einen Tag in der Zukunft.
       *[other] { NUMBER($count) } davon liegen nach der Uhr dieses Geräts mehr als einen Tag in der Zukunft.
    }
file-faults = { $count ->
        [one] 1 Zeile ist nicht zu gebrauchen und bleibt weg:
       *[other] { NUMBER($count) } Zeilen sind nicht zu gebrauchen und bleiben weg:
    }
