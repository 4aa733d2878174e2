# Felder, die viele Formulare haben, und ein Eintrag mit dem, was sich mit ihm tun lässt.

when = Wann
now-if-empty = Bleibt es leer, gilt: jetzt.

day-and-time = { $day }, { $time }
entry-at = { $entry }, { $time }
corrected = (berichtigt)
taken-back = (zurückgenommen)
take-back = Zurücknehmen
take-back-entry = Zurücknehmen: { $entry }
bring-back-entry = Wiederherstellen: { $entry }
correct-the-time = Zeit berichtigen
correct-the-time-of-entry = Zeit berichtigen: { $entry }
when-in-truth = Wann es wirklich war
correct = Berichtigen
picture-of-note = Bild zu dieser Notiz

control-of = { $words }, { $name }
name-and-said = { $name }: { $said }
