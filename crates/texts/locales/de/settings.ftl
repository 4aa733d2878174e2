# Was die Einstellungen sagen: Einheiten und Uhr, das Journal und wie es erhalten bleibt, der Garten, seine Gefäße.

shown = Darstellung
units = Einheiten
clock = Uhr
as-device = Wie das Gerät
hours-24 = 24 Stunden, 18:05
hours-12 = 12 Stunden, 6:05{"\u00A0"}PM
clock-hint = Felder, in die du eine Uhrzeit eingibst, zeichnet der Browser; sie richten sich nach dem Gerät.
light = Licht
bright-sun = Grelle Sonne
dark = Dunkel

your-journal = Dein Journal
never-exported = Noch nie exportiert.
exported = Zuletzt exportiert: { $ago }.
export = Journal exportieren
export-pictures = Bilder exportieren
pictures-hint = Bilder sind groß und haben eine eigene Datei. Importiere beide Dateien, um alles wiederzubekommen; die Reihenfolge ist gleich.
import = Datei importieren
import-hint = Ein exportiertes Journal oder seine exportierten Bilder, höchstens 256{"\u00A0"}MiB. Du siehst, was in einem Journal steht, bevor etwas übernommen wird.
reading = Wird gelesen{"\u00A0"}…
file-holds = Was in der Datei steht
take-in = Übernehmen
leave-it = Nicht übernehmen
pictures-cut = Einige Zeilen dieser Datei enthalten kein Bild und blieben weg: Sie ist abgeschnitten oder wurde verändert.
taken-in = { $count ->
        [one] Übernommen: 1 Eintrag.
       *[other] Übernommen: { NUMBER($count) } Einträge.
    }
pictures-taken-in = { $count ->
        [one] Übernommen: 1 Bild.
       *[other] Übernommen: { NUMBER($count) } Bilder.
    }
pictures-missing = { $count ->
        [one] 1 Bild des Journals ist nicht auf diesem Gerät und steht darum nicht in der Datei.
       *[other] { NUMBER($count) } Bilder des Journals sind nicht auf diesem Gerät und stehen darum nicht in der Datei.
    }

keep = Dieses Journal behalten
keep-why = Wenn auf einem Gerät der Platz knapp wird, kann ein Browser löschen, was Seiten gespeichert haben. Er kann versprechen, dieses Journal zu verschonen; manche Browser fragen dich vorher.
keep-refused = Der Browser hat diesmal nichts versprochen. Er tut es eher, wenn die Seite auf deinem Startbildschirm liegt oder schon einige Tage benutzt wurde. Exportiere das Journal bis dahin ab und zu.
what-clears = Was dieses Journal löschen könnte
clearer-website-data = Wenn du in den Einstellungen des Browsers „Websitedaten“ oder „Verlauf und Websitedaten“ löschst.
clearer-seven-days = Safari auf iPhone, iPad und Mac: Eine Seite in einem Tab verliert, was sie gespeichert hat, wenn du sieben Tage lang surfst, ohne sie zu besuchen. Eine Seite auf dem Home-Bildschirm oder im Dock bleibt verschont.
clearer-private-window = Ein privates Fenster: Es vergisst alles, wenn es geschlossen wird.
clearer-nearly-full = Ein Gerät, das fast voll ist, solange der Browser nicht versprochen hat, das Journal zu behalten.

on-the-home-screen = Auf dem Startbildschirm
is-installed = Diese Seite läuft vom Startbildschirm aus oder als eigenes Programm.
install-hint = Von dort öffnet sich die Seite auch ohne Empfang und ohne Adresszeile, und ihr Journal bleibt am längsten verschont.
install = Dort ablegen
install-iphone = iPhone und iPad, in Safari: die Taste „Teilen“, dann „Zum Home-Bildschirm“.
install-android = Android: das Menü des Browsers, dann „App installieren“ oder „Zum Startbildschirm hinzufügen“.
install-computer = Computer: das Zeichen zum Installieren in der Adresszeile oder in Safari „Zum Dock hinzufügen“ im Menü „Ablage“.

this-version = Version der Seite
version = Das ist Heapwright{"\u00A0"}{ $version }.
update-waits = Eine neue Version ist da und wartet. Sie wird benutzt, sobald du es sagst, oder beim nächsten Start, nachdem alle Tabs der Seite geschlossen waren.
update-take = Neue Version benutzen
update-form = Du gibst gerade etwas ein. Speichere es oder schließe zuerst das Formular: Die neue Version wartet.
update-look = Nach einer neuen Version suchen
update-looking = Wird gesucht{"\u00A0"}…
update-none = Das ist die neueste Version.
update-no-signal = Kein Empfang: Versuche es noch einmal, wenn du welchen hast.

room = Die Seite und ihr Journal belegen { $used } von { $most }, die der Browser ihnen zugesteht.
kilobytes = { $number }{"\u00A0"}kB
megabytes = { $number }{"\u00A0"}MB
gigabytes = { $number }{"\u00A0"}GB

your-garden = Dein Garten
place-why = Aus seiner Lage weiß die Seite, welches Wetter dort üblich ist; damit berechnet sie die nächsten Tage eines Haufens. Die Lage kommt in dein Journal und sonst nirgendwohin.
place-not-known = Das Journal sagt nicht, wo der Garten liegt; darum gilt ein üblicher Ort in gemäßigtem Klima.
place = { $north ->
        [north] { $east ->
            [east] Der Garten liegt bei { $latitude }°{"\u00A0"}N, { $longitude }°{"\u00A0"}O.
           *[west] Der Garten liegt bei { $latitude }°{"\u00A0"}N, { $longitude }°{"\u00A0"}W.
        }
       *[south] { $east ->
            [east] Der Garten liegt bei { $latitude }°{"\u00A0"}S, { $longitude }°{"\u00A0"}O.
           *[west] Der Garten liegt bei { $latitude }°{"\u00A0"}S, { $longitude }°{"\u00A0"}W.
        }
    }
describe-garden = Garten beschreiben
save-garden = Garten speichern
garden-name = Name des Gartens
garden-name-hint = Kann leer bleiben.
latitude = Geografische Breite, Grad
latitude-hint = Wie Karten sie zeigen, zum Beispiel 52,4. Südlich des Äquators unter null. Eine Stelle nach dem Komma genügt.
longitude = Geografische Länge, Grad
longitude-hint = Zum Beispiel 13,1. Westlich von Greenwich unter null.
other-sign = Über oder unter null, { $label }
elevation-metres = Höhe über dem Meer, m
elevation-feet = Höhe über dem Meer, ft
elevation-hint = Kann leer bleiben: Dann gilt die Höhe des Meeres.
coldest-month-celsius = Kältester Monat, °C
coldest-month-fahrenheit = Kältester Monat, °F
warmest-month-celsius = Wärmster Monat, °C
warmest-month-fahrenheit = Wärmster Monat, °F
months-hint = Kann leer bleiben. Dein eigener Wert, falls der übliche für diesen Ort nicht stimmt.
place-needs-both = Gib Breite und Länge an oder keine von beiden.
nothing-of-garden = Gib einen Namen ein oder Breite und Länge.

your-vessels = Deine Gefäße
vessels-why = Mengen werden in Eimern und Schubkarren angegeben. Einmal gewogen, zählen deine mit dem, was sie wirklich fassen. Eine Kofferwaage oder Fischwaage reicht.
weigh = Ein Gefäß wiegen
not-now = Jetzt nicht
next = Weiter
back = Zurück
which-vessel = Welches Gefäß?
step-empty = Schritt 1 von 3: leer wiegen
step-empty-how = Hänge oder stelle es auf die Waage, wie es ist, trocken und ohne Inhalt.
step-water = Schritt 2 von 3: voll Wasser wiegen
step-water-how = Fülle es bis zum Rand und wiege es. Ein Liter Wasser wiegt ein Kilogramm, also zeigt die Waage, wie viel es fasst.
step-water-heavy = Zu schwer für die Waage? Fülle es aus einem Gefäß, das du kennst, und gib ein, wie viel es fasst.
step-material = Schritt 3 von 3: mit einem Material wiegen
step-material-how = Fülle es wie sonst auch, mit etwas, das du oft hast, und wiege es. So zeigt sich, wie schwer deines ist. Du kannst auch hier aufhören.
which-material = Was ist darin?
save-volume = Speichern, was es fasst
save-density = Dieses Gewicht speichern
known-volume = Ich weiß, wie viel es fasst
not-heavier = Voll muss es mehr wiegen als leer: Prüfe beide Gewichte und ihre Einheit.
no-material = Wähle zuerst, was in dem Gefäß ist.
no-weight = Gib ein Gewicht ein, zum Beispiel 0,8.
no-volume = Gib ein, wie viel es fasst, zum Beispiel 12.
empty-kilograms = Gewicht leer, kg
empty-pounds = Gewicht leer, lb
water-kilograms = Gewicht voll Wasser, kg
water-pounds = Gewicht voll Wasser, lb
full-kilograms = Gewicht voll, kg
full-pounds = Gewicht voll, lb
holds-litres = Es fasst, Liter
holds-gallons = Es fasst, US-Gallonen
holds = Es fasst { $volume }.
vessel-unusual = So ein Gefäß fasst üblicherweise etwa { $volume }: Prüfe die Angaben.
density-kilograms = Das sind { $density }{"\u00A0"}kg in einem Kubikmeter.
density-pounds = Das sind { $density }{"\u00A0"}lb in einem Kubikyard.
vessel-found = { $volume }, gemessen am { $day }
vessel-usual = { $volume }, wie üblich
only-here = Das wurde auf diesem Gerät eingegeben und steht noch nicht in deinem Journal.
into-journal = Ins Journal übernehmen

the-aim = Das Ziel
start-again = Mischung mit dem Beispiel neu beginnen

language = Sprache
english = English
german = Deutsch
language-hint = Wenn du eine andere wählst, lädt die Seite neu. Dein Journal bleibt, wie du es geschrieben hast.
use-language = Diese Sprache verwenden
language-entering = Trage erst ein oder leere, was du gerade eingibst: Beim Neuladen ginge es verloren.
language-not-kept = Dieser Browser bewahrt für die Seite nichts auf; die Sprache bleibt die des Geräts.
