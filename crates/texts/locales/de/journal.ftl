# Eine Zeile für jeden Eintrag des Journals.

just-now = gerade eben
minutes-ago = { $minutes ->
        [one] vor 1 Minute
       *[other] vor { NUMBER($minutes, maximumFractionDigits: 0) } Minuten
    }
hours-ago = { $hours ->
        [one] vor 1 Stunde
       *[other] vor { NUMBER($hours, maximumFractionDigits: 0) } Stunden
    }
yesterday = gestern
days-ago = { $days ->
        [one] vor 1 Tag
       *[other] vor { NUMBER($days, maximumFractionDigits: 0) } Tagen
    }
on-day = am { $day }

heap-not-known = Unbekannter Haufen
bed-not-known = Unbekanntes Beet

centimetres = { $number }{"\u00A0"}cm
inches = { $number }{"\u00A0"}Zoll

probe = { $place ->
        [core] { $temperature } im Kern
        [halfway] { $temperature } auf halbem Weg zum Kern
        [edge] { $temperature } am Rand
        [top] { $temperature } oben
        [bottom] { $temperature } unten
       *[unknown] { $temperature } an einer Stelle aus einer neueren Version
    }
deep = { $length } tief
air = Luft { $temperature }
feels = Faustprobe: { $squeeze }
smell = Geruch: { $smells }
looks = Aussehen: { $looks }
high = { $length } hoch
full = zu { $percent } voll

laboratory = Werte eines Labors
self-heating = Selbsterhitzung auf { $highest } bei { $room } Raumtemperatur
germination = { NUMBER($sprouted) } von { NUMBER($sown) } Samen gekeimt, in der Kontrolle { NUMBER($control-sprouted) } von { NUMBER($control-sown) }
bag-swollen = { $count ->
        [one] Beutel { $days } Tag verschlossen, aufgebläht
       *[other] Beutel { $days } Tage verschlossen, aufgebläht
    }
bag-not-swollen = { $count ->
        [one] Beutel { $days } Tag verschlossen, nicht aufgebläht
       *[other] Beutel { $days } Tage verschlossen, nicht aufgebläht
    }

garden-described = Garten beschrieben
garden-described-as = Garten beschrieben: { $name }
person-described = { $name } arbeitet hier mit
measure-defined = Maß „{ $measure }“ fasst { $volume }
material-defined = Eigenes Material: { $name }
material-measured = Gemessen: { $name }
heap-started = { $heap } begonnen
fed = { $heap } befüllt: { $things }
turned = { $heap } umgesetzt
turned-so = { $heap } umgesetzt: { $how }
watered = { $heap } gewässert: { $water }
covered = { $heap } abgedeckt
covered-with = { $heap } abgedeckt: { $cover }
uncovered = { $heap } aufgedeckt
looked-at = { $heap } angesehen: { $seen }
tested = { $heap } getestet: { $found }
moved-all = Alles umgelagert: von „{ $from }“ nach „{ $to }“
moved-share = { $percent } umgelagert: von „{ $from }“ nach „{ $to }“
rested = { $heap } ist jetzt { $stage }
harvested = Entnahme aus „{ $heap }“: { $details }
all-of-it = alles
share-of-it = { $percent } davon
sieved = gesiebt
spread = { $amount } ausgebracht: { $bed }
bed-described = Beet beschrieben: { $bed }, { $area }{"\u00A0"}m²
stock-put-by = In den Vorrat gelegt: { $amount } { $name }
stock-used = Aus dem Vorrat genommen: { $amount } { $name }
stock-counted = Vorrat gezählt: { $amount } { $name }
stock-counted-none = Vorrat gezählt: { $name }, nichts mehr da
note = Notiz: { $text }
note-on = Notiz zu „{ $name }“: { $text }
with-a-picture = mit einem Bild
corrected = Berichtigt: { $line }
corrected-a-correction = Berichtigt: eine Berichtigung
corrected-something-absent = Berichtigt: ein Eintrag, der hier fehlt
taken-back = Zurückgenommen: { $line }
taken-back-a-correction = Zurückgenommen: eine Berichtigung
taken-back-something-absent = Zurückgenommen: ein Eintrag, der hier fehlt
of-a-newer-version = Ein Eintrag der Art „{ $kind }“ aus einer neueren Version: Er bleibt erhalten und wird weitergegeben

kind-fed = Zugaben
kind-read = Messungen
kind-turned = Umsetzen
kind-watered = Wässern
kind-noted = Notizen
kind-harvested = Entnahmen
kind-heap-started = neue Haufen
kind-covered = abgedeckt
kind-uncovered = aufgedeckt
kind-moved = Umlagern
kind-rested = Stufen
kind-tested = Tests
kind-spread = Ausbringen
kind-bed-described = Beete
kind-stock-put-by = in den Vorrat gelegt
kind-stock-used = aus dem Vorrat genommen
kind-stock-counted = Vorrat gezählt
kind-garden-described = der Garten
kind-person-described = Personen
kind-measure-defined = Maße
kind-material-defined = eigenes Material
kind-material-measured = gemessenes Material
kind-amended = Berichtigungen
kind-withdrawn = zurückgenommen

as-fed = Das ist, was hineinkam und nicht entnommen wurde. Was seither verrottet oder verdunstet ist, ist nicht abgezogen.

feed-again = Dieselbe Zugabe noch einmal: { $parts }
