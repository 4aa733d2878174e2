# Was nur auf Papier steht: Überschriften, Tabellen zum Ausfüllen, wie man eine Handvoll deutet.

box-to-tick = Kästchen zum Abhaken
letters-lacking = Zeichen, die der Schrift dieses Blatts fehlen, stehen als ▯ da. Im Journal bleiben sie, wie sie geschrieben wurden.
invented-garden = Ein erfundener Garten zum Umsehen.

on-paper = Auf Papier
on-paper-heap = Was zu jedem Küchenbehälter gehört, was als Nächstes kommt, wie du eine Handvoll deutest, und Zeilen zum Ausfüllen.
on-paper-all = Was im letzten Jahr hineinkam, Monat für Monat und Haufen für Haufen, was der Fühler zeigte und was entnommen wurde.
press-bin = Blatt für den Komposter (PDF)
press-season = Aufzeichnung (PDF)
press-beds = Plan (PDF)
pressing = Das Blatt wird gesetzt.
pressed = Das Blatt liegt bei deinen Downloads.
not-pressed = Das Blatt ließ sich nicht erstellen. Lade diese Seite neu und versuch es noch einmal.
not-pressed-for = Das Blatt ließ sich nicht setzen (auf Englisch: “{ $detail }”). Lade diese Seite neu und versuch es noch einmal; scheitert es wieder, melde es bitte.

# Ein Name kann selbst ein Komma haben: „Gemüsereste, gemischt“.
names-in-a-row = { $first }; { $second }

bin-title = { $heap }: was hineinkommt
bin-under = Ein Blatt zum Aufhängen neben dem Haufen. Ausgerechnet aus dem Journal; druck ein neues, wenn sich die Küchenabfälle oder der Vorrat ändern.
with-each-caddy = Zu den Küchenabfällen
caddy-head-scraps = Abfälle
caddy-head-with = Dazugeben und untermischen
nothing-with-them = Nichts: Sie passen so, wie sie sind.
scraps-known = Küchenabfälle, wie sie in den letzten drei Monaten meist kamen: { $scraps }.
scraps-usual = Für die letzten drei Monate sind keine Küchenabfälle aufgeschrieben, darum gelten übliche: { $scraps }.
browns-usual = Im Vorrat liegt nichts Braunes, darum gilt gehäckseltes trockenes Laub.
not-quite-good = Näher an eine gute Mischung kommt man mit dem Braunen, das da ist, nicht; ganz erreicht sie ihr Ziel nicht.

map-told = Karte von C:N und Feuchte. Ein Küchenbehälter allein: C:N { $alone-ratio } und { $alone-water }{"\u00A0"}% Wasser. Mit dem, was dazukommt: C:N { $mixed-ratio } und { $mixed-water }{"\u00A0"}% Wasser.
map-told-empty = Karte von C:N und Feuchte, ohne Mischung.
map-caption = Ring: Küchenabfälle allein. Schwarze Scheibe: mit dem, was dazukommt. Punkte: wo das stattdessen liegen kann. Schraffiert: wo Haufen gut arbeiten.

next = Was als Nächstes kommt
next-head-day = Tag
next-head-what = Was zu tun ist
next-head-done = Erledigt
nothing-next = Nach dem Journal ist nichts fällig. Sieh spätestens in zwei Wochen nach dem Haufen.
next-from = Nach dem heutigen Stand des Journals; was du von jetzt an misst oder zugibst, verschiebt diese Tage.

squeeze = Drück eine Handvoll aus der Mitte
squeeze-head-feels = Sie ist
squeeze-head-see = Du siehst
squeeze-head-so = Also
squeeze-see-dusty = Zerfällt zu Staub
squeeze-so-dusty = Beim Umsetzen gut wässern; abdecken
squeeze-see-dry = Hält kaum zusammen, glänzt nicht
squeeze-so-dry = Etwas wässern; nasse Küchenabfälle zugeben
squeeze-see-moist = Hält zusammen, höchstens ein Tropfen
squeeze-so-moist = So lassen: genau richtig
squeeze-see-wet = Tropfen treten aus
squeeze-so-wet = Beim nächsten Befüllen mehr Braunes; Regen abhalten
squeeze-see-dripping = Wasser läuft heraus
squeeze-so-dripping = In den nächsten Tagen viel Braunes untermischen

beware = Vorsicht
before-use = Bevor der Kompost verwendet wird
beware-gloves = Trag Handschuhe und wasch dir danach die Hände. Deck Wunden ab und halte die Tetanusimpfung aktuell.
beware-dust = Staub und Sporen steigen auf, wenn Trockenes oder Schimmliges bewegt wird: Mach es zuerst nass und stell dich mit dem Rücken zum Wind. Wer eine schwache Abwehr oder Asthma hat, überlässt das Umsetzen anderen.

to-write = Schreib auf, was du findest
writing-head-day = Tag
writing-head-core = Kern, { $unit }
writing-head-edge = Rand, { $unit }
writing-head-air = Luft, { $unit }
writing-head-squeeze = Faustprobe
writing-head-rest = Befüllt, umgesetzt, gerochen, gesehen

season-title = Aufzeichnung der Haufen
season-empty = In dieser Zeit wurde über keinen Haufen etwas aufgeschrieben.
season-under = Vom { $from } bis zum { $to }, nach dem Journal.
season-months = Der Mülltonne erspart, Monat für Monat
went-in-head-month = Monat
went-in-head-feeds = Zugaben
went-in-head-what = Was hineinkam, das meiste zuerst
went-in-head-together = Zusammen
went-in-head-water = Wasser
part-with-mass = { $name } { $mass }
parts-and-more = { $parts } …
chart-caption = { $heap }: was der Fühler im Kern zeigte. Schwarze Dreiecke mit gepunkteter Linie: umgesetzt.
chart-told = { $readings ->
        [one] { NUMBER($readings) } Messung im Kern, höchstens { $hottest } am { $day }; { NUMBER($turnings) }-mal umgesetzt.
       *[other] { NUMBER($readings) } Messungen im Kern, höchstens { $hottest } am { $day }; { NUMBER($turnings) }-mal umgesetzt.
    }
chart-told-empty = Keine Messungen im Kern; { NUMBER($turnings) }-mal umgesetzt.
reading = { $temperature } im Kern am { $day }.
no-core = In dieser Zeit wurde im Kern kein Fühler abgelesen.
not-turned = In dieser Zeit nicht umgesetzt.
turned = { $times ->
        [1] Einmal umgesetzt: { $days }.
       *[other] { NUMBER($times) }-mal umgesetzt: { $days }.
    }
heat-measured = Hitze, wie sie gemessen wurde, seit der Haufen zuletzt leer war
harvests = Entnommener Kompost
harvest-head-day = Tag
harvest-head-how-much = Wie viel
harvest-head-sieved = Gesiebt
not-sieved = nein
mesh = { $mesh }{"\u00A0"}mm
all-taken = alles
share-taken = { $share }{"\u00A0"}% des Haufens
ripeness = Reife am Ende dieser Zeit
nutrients = Nährstoffe darin am Ende dieser Zeit

beds-title = Kompost für die Beete
beds-head-bed = Beet
beds-head-barrows = Schubkarren
beds-head-buckets = Eimer
beds-head-depth = Höhe
beds-head-amount = Menge
beds-head-weight = Gewicht
beds-head-done = Erledigt
beds-limited-by = Was jedem Beet eine Grenze setzt
beds-know = Was zu wissen ist
sources = Quellen
nothing-left = Nichts bleibt übrig.
with-sources = { $count ->
        [one] { $line } (Quelle { $numbers })
       *[other] { $line } (Quellen { $numbers })
    }
