# Was die Seite um das herum sagt, was an einem Tag zu tun ist: Überschriften, Tasten, leere Stellen.

no-heaps = Noch kein Haufen. Beginne einen, und diese Seite sagt jeden Tag, was er braucht und warum.
start-a-heap = Einen Haufen beginnen
balance-first = Zugabe mischen
looking = Das Journal wird durchgesehen{"\u00A0"}…
nothing-needed-more = Gib etwas zu, wenn du etwas hast, und sieh nach einem Haufen, wenn sein Tag kommt.
needed = Was zu tun ist
more-reasons = Weitere Gründe
all-heaps = Alle Haufen

read-heat = Temperatur aufschreiben
look = Aufschreiben, was du findest
open-the-heap = Haufen öffnen
to-feed = Haufen befüllen
to-the-heap = Zum Haufen
to-harvest = Entnahme eintragen
to-test = Kompost testen
to-the-stores = Zum Vorrat
logged = Eingetragen

log-temperature = Temperatur eintragen
which-heap = Wähle den Haufen, an dem du gemessen hast.
to-the-day = Was heute zu tun ist

reminders = Erinnerungen
reminders-hint = Die Seite hat keinen Server, der dein Gerät wecken könnte; darum kann sie dich nicht pünktlich erinnern, solange sie geschlossen ist. Ein Kalender kann es: Speichere alles, was einen Tag hat, als Datei und öffne sie in deinem Kalender. Speichere sie neu, wenn sich der Plan geändert hat: Ein Kalender verschiebt dann, was er schon hat, und verdoppelt nichts.
nothing-dated = Noch hat nichts einen Tag.
to-calendar = Termine für deinen Kalender

remind-me = Auf diesem Gerät erinnern
remind-not-here = Dieser Browser kann keine Erinnerungen zeigen.
remind-denied = Der Browser erlaubt dieser Seite keine Erinnerungen: Lass Mitteilungen für sie in den Einstellungen des Browsers zu und lade die Seite neu.
remind-closed = Dieses Gerät zeigt dir ab neun Uhr morgens, was ansteht; bei geschlossener Seite dann, wenn der Browser dazu kommt, vielleicht also spät.
remind-open = Dieses Gerät zeigt dir ab neun Uhr morgens, was ansteht, solange „Heute“ darauf geöffnet ist. Sonst kann das nur dein Kalender.
stop-reminding = Nicht mehr erinnern
