# Was ein Haufen heute braucht: was zu tun ist, warum, was dabei gefährlich ist und wann man wieder nachsieht.
# „Er“ ist in diesen Sätzen der Haufen.

today-limits = All das ist aus deinem Journal ausgerechnet. Was nicht aufgeschrieben ist und welches Wetter kommt, weiß es nicht. Örtliche Regeln gehen vor.
nothing-today = Heute braucht dich kein Haufen.
no-heaps = Es gibt keinen Haufen, der befüllt wird oder reift.
quiet = In Ruhe
urgency-now = Heute
urgency-soon = In den nächsten Tagen
urgency-whenever = Wenn es dir passt
calendar = Kompost
calendar-of-garden = Kompost, { $garden }

rests-empty = { $heap } ist leer und braucht nichts, bis etwas hineinkommt.
works-until-day = { $heap } arbeitet von allein. Sieh am { $day } wieder nach.
works = { $heap } arbeitet von allein. Sieh in zwei Wochen wieder nach.
ripens-until-day = { $heap } reift. Sieh am { $day } wieder nach.
ripens = { $heap } reift. Sieh in einem Monat wieder nach.

caution-fire = Wenn es raucht oder verbrannt riecht, grab nicht hinein, denn Luft nährt ein Feuer: Halte Abstand und ruf die Feuerwehr.
caution-steam = Dampf und heißer Kompost verbrennen die Haut: Öffne den Haufen von der Seite mit einer langen Gabel und halte das Gesicht weg.
caution-mould-dust = Der Staub von Schimmel schadet der Lunge: Mach alles zuerst nass, stell dich mit dem Rücken zum Wind und trag eine Staubmaske. Mit Asthma oder schwacher Abwehr überlass das anderen.
caution-animals = Was Ratten und Mäuse hinterlassen, überträgt Krankheiten: Trag Handschuhe und wasch dir die Hände.
caution-fumes = Ein Haufen, der faulig oder stechend riecht, gibt Gase ab, die in Augen und Lunge brennen: Stell dich mit dem Rücken zum Wind, wenn du ihn öffnest.
caution-lifting = Nasser Kompost ist schwer: Eine volle Schubkarre kann mehr wiegen als du. Lade sie nur halb voll.

the-heap = Haufen
stand-back = { $heap }: Abstand halten und beobachten
cool-down = { $heap } öffnen und abkühlen
keep-animals-out = { $heap }: Tiere fernhalten
add-browns = { $heap }: Braunes untermischen
cover-with-browns = { $heap } oben mit Braunem abdecken
water = { $heap } wässern
turn = { $heap } umsetzen
read-heat = { $heap }: Temperatur messen
add-greens = { $heap }: Grünes untermischen
harvest = { $heap }: Kompost entnehmen
let-ripen = { $heap } reifen lassen
test = Prüfen, ob { $heap } fertig ist
cover = { $heap } abdecken
look = { $heap } ansehen
restock = Vorrat auffüllen
restock-of = Vorrat auffüllen: { $material }

how-stand-back = Öffne ihn nicht und grab nicht darin. Halte Kinder und Tiere fern und leg einen Schlauch bereit.
how-stand-back-call = Ruf die Feuerwehr, wenn er raucht, verbrannt riecht oder heißer wird. Lies den Fühler noch einmal von außen ab, ohne zu graben.
how-cool-down = Öffne ihn nach und nach, setz ihn um und wässere dabei trockene Stellen.
how-cool-down-after = Lass ihn niedriger und breiter zurück, als er war, und lies den Fühler morgen noch einmal ab.
how-keep-animals-out = Setz den Haufen um, damit nichts darin nistet, und halte ihn feucht.
how-keep-animals-out-wet = Setz den Haufen um, damit nichts darin nistet.
how-keep-animals-out-for-good = Nimm Gekochtes und Fettes heraus, vergrab frische Küchenabfälle in der Mitte, verschließ Spalten über 12{"\u00A0"}mm mit Drahtgitter und halte ringsum einen halben Meter frei.
how-mix-in = Misch { $things } unter.
stores-do-not-suffice = Dein Vorrat allein bringt das nicht in Ordnung.
stores-help-and-do-not-suffice = Was im Vorrat liegt, hilft, reicht aber nicht, um das in Ordnung zu bringen: Es braucht mehr davon oder etwas anderes.
how-add-browns = Misch trockenes Laub, Stroh, zerrissene Pappe oder Sägemehl unter, bis er sich anfühlt wie ein ausgedrückter Schwamm.
how-cover-with-browns = Leg obenauf: { $amount }.
how-cover-with-browns-before = Vergrab vorher frische Küchenabfälle und schließ den Deckel, wenn es einen gibt.
how-water = Gieß { $water } Wasser darauf, immer nur wenig auf einmal, damit es einzieht.
how-water-in-all = Insgesamt fehlen ihm vielleicht { $water }, aber was er nicht gleich aufnimmt, läuft unten heraus.
how-water-after = Prüf ihn am nächsten Tag wieder: Eine Handvoll soll sich anfühlen wie ein ausgedrückter Schwamm.
how-turn-inside-out = Nimm ihn heraus und füll ihn wieder ein, sodass das Äußere nach innen kommt.
how-turn = Schichte ihn an Ort und Stelle mit der Gabel um und schüttle Klumpen auseinander.
how-turn-open = Misch etwas Grobes unter, zum Beispiel gehäckselten Strauchschnitt oder Stroh, damit er locker bleibt.
how-read-heat = Steck den Fühler in die Mitte und warte, bis er stillsteht.
how-add-greens = Misch etwas Grünes unter, sobald du es hast: Gras, Küchenabfälle, Kaffeesatz oder Mist. Ohne das arbeitet er nur langsam.
how-look = Öffne ihn eine Hand tief: Riech daran, drück eine Handvoll und sieh nach, was darin lebt.
how-harvest = Nimm den Kompost heraus und siebe ihn, wenn du magst.
how-harvest-ripe = Reif heißt nicht frei von Keimen oder Samen.
how-test-bag = Verschließ eine feuchte Handvoll eine Woche lang in einem Beutel und riech dann daran: Das zeigt, ob der Kompost zur Ruhe gekommen ist.
how-test-self-heating = Füll ein Isoliergefäß mit dem Kompost und lies ab, wie warm er wird: Das zeigt, ob er zur Ruhe gekommen ist.
how-test-seedlings = Säe Kresse in den Kompost und ebenso viel in Erde, die du als gut kennst: Das zeigt, ob Pflanzen ihn vertragen.
how-let-ripen = Gib nichts mehr zu. Fang den nächsten Haufen an und halte diesen abgedeckt und gerade so feucht.
how-cover = Leg eine Plane, Säcke oder einen Deckel darüber, damit der Regen nicht auswäscht, was gereift ist.
how-restock = Noch da: { $amount }. Sammle etwas, bevor der Vorrat ausgeht.
how-restock-used-up = Sammle etwas, denn nasse Küchenabfälle brauchen es.

tap-watered = Gewässert, { $water }
tap-mixed-in = Untergemischt
tap-covered = Abgedeckt
tap-turned = Umgesetzt
tap-left-to-ripen = Reift jetzt

alarm = Der Fühler zeigte { $ago } { $temperature }: Solche Hitze kommt nicht von Lebewesen, und daraus kann Feuer werden.
hot-and-dry = Der Fühler zeigte { $ago } { $temperature }, und der Haufen ist hoch und trocken: Ein solcher Haufen kann sich selbst entzünden.
too-hot = Der Fühler zeigte { $ago } { $temperature }: Das tötet das meiste, was in ihm arbeitet, und trocknet ihn aus.
hot = Der Fühler zeigte { $ago } { $temperature }: Bei solcher Hitze wird das meiste, was in ihm arbeitet, langsamer.
cooling = Er war { $from } warm und auf { $to } abgekühlt, als du { $ago } gemessen hast: Frische Luft und Mischen können ihn wieder erwärmen.
hot-unread = Bei der letzten Messung war er heiß: { $temperature } { $ago }.
fed-too-wet = Nach den Werten des Materials besteht die Zugabe des letzten Monats zu { $water } aus Wasser: Das ist so nass, dass keine Luft hineinkommt.
fed-too-dry = Nach den Werten des Materials besteht die Zugabe des letzten Monats nur zu { $water } aus Wasser: Das ist zu trocken zum Arbeiten.
fed-too-rich = Nach den Werten des Materials hat die Zugabe des letzten Monats ein C:N von { $ratio }: Stickstoff wird als Ammoniak entweichen.
fed-too-poor = Nach den Werten des Materials hat die Zugabe des letzten Monats ein C:N von { $ratio }: Damit wird er kaum warm.

saw-rats = Ratten oder ihre Spuren wurden { $ago } gesehen.
saw-mice = Mäuse wurden { $ago } gesehen.
saw-maggots = Maden von Fliegen wurden { $ago } gesehen.
saw-fruit-flies = Kleine Fliegen wurden { $ago } gesehen.
saw-flies = Fliegen wurden { $ago } gesehen.
saw-other = Gesehen { $ago }: { $creature }.
smelt-of-ammonia = Er roch { $ago } nach Ammoniak: Stickstoff entweicht.
smelt-sour = Er roch { $ago } sauer: Ihm fehlt Luft.
smelt-rotten = Er roch { $ago } faulig: Ihm fehlt Luft.
smelt-other = Geruch { $ago }: { $smell }.
felt-dusty = Eine Handvoll zerfiel { $ago } zu Staub.
felt-dry = Eine Handvoll fühlte sich { $ago } trocken an.
felt-dripping = Aus einer Handvoll lief { $ago } Wasser.
felt-other = Faustprobe { $ago }: { $squeeze }.
looked-matted = Er lag { $ago } in verfilzten Schichten, die keine Luft durchlassen.
looked-slimy = Er hatte { $ago } schleimige Stellen, denen Luft fehlt.
had-dry-pockets = Er hatte { $ago } trockene Nester: Wässere sie beim Umsetzen.
looked-other = Aussehen { $ago }: { $look }.

rule-time = { $raw ->
        [yes] { $named ->
            [yes] Etwas darin verlangt Hitze. Eine veröffentlichte Regel ({ $place }: { $rule }) verlangt noch { $time } bei { $temperature } oder mehr, mindestens einmal am Tag gemessen.
           *[no] Etwas darin verlangt Hitze. Eine veröffentlichte Regel verlangt noch { $time } bei { $temperature } oder mehr, mindestens einmal am Tag gemessen.
        }
       *[no] { $named ->
            [yes] Eine veröffentlichte Regel ({ $place }: { $rule }) verlangt noch { $time } bei { $temperature } oder mehr, mindestens einmal am Tag gemessen, wenn du sie erfüllen willst.
           *[no] Eine veröffentlichte Regel verlangt noch { $time } bei { $temperature } oder mehr, mindestens einmal am Tag gemessen, wenn du sie erfüllen willst.
        }
    }
rule-turns = { $raw ->
        [yes] { $named ->
            [yes] { $turns ->
                [1] Etwas darin verlangt Hitze. Nach einer veröffentlichten Regel ({ $place }: { $rule }) musst du ihn noch einmal umsetzen.
               *[other] Etwas darin verlangt Hitze. Nach einer veröffentlichten Regel ({ $place }: { $rule }) musst du ihn noch { NUMBER($turns) }-mal umsetzen.
            }
           *[no] { $turns ->
                [1] Etwas darin verlangt Hitze. Nach einer veröffentlichten Regel musst du ihn noch einmal umsetzen.
               *[other] Etwas darin verlangt Hitze. Nach einer veröffentlichten Regel musst du ihn noch { NUMBER($turns) }-mal umsetzen.
            }
        }
       *[no] { $named ->
            [yes] { $turns ->
                [1] Willst du eine veröffentlichte Regel ({ $place }: { $rule }) erfüllen, setz ihn noch einmal um.
               *[other] Willst du eine veröffentlichte Regel ({ $place }: { $rule }) erfüllen, setz ihn noch { NUMBER($turns) }-mal um.
            }
           *[no] { $turns ->
                [1] Willst du eine veröffentlichte Regel erfüllen, setz ihn noch einmal um.
               *[other] Willst du eine veröffentlichte Regel erfüllen, setz ihn noch { NUMBER($turns) }-mal um.
            }
        }
    }

not-looked-at-since = Die letzte aufgeschriebene Beobachtung war { $ago }.
not-looked-at = Seit seinem Beginn ist keine Beobachtung aufgeschrieben.
not-fed = Du hast ihn zuletzt { $ago } befüllt, und er ist zur Ruhe gekommen.
looks-done = Er sieht fertig aus.
ripened = Er reift seit dem { $day }.
ready = Zwei unabhängige Zeichen sagen, dass er fertig ist: Er ist zur Ruhe gekommen, und Pflanzen vertragen ihn.
not-covered = Er reift, und nichts liegt darüber.
runs-out-at-once = Bei dem Verbrauch der letzten Wochen reicht der Vorrat noch einen Tag oder zwei.
runs-out = { $days ->
        [one] Bei dem Verbrauch der letzten Wochen reicht der Vorrat noch { NUMBER($days) } Tag.
       *[other] Bei dem Verbrauch der letzten Wochen reicht der Vorrat noch { NUMBER($days) } Tage.
    }
runs-out-on = Bei dem Verbrauch der letzten Wochen reicht der Vorrat etwa bis zum { $day }.
used-up = Du hast in den letzten Wochen davon genommen, und jetzt ist nichts mehr da.
