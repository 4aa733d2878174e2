# Warum ein Eintrag nicht ins Journal kann, und was stattdessen geht.

no-such-heap = Diesen Haufen gibt es nicht: Beginne ihn zuerst.
no-such-bed = Dieses Beet gibt es nicht: Beschreib es zuerst.
no-such-entry = Diesen Eintrag gibt es nicht: Such ihn im Logbuch.
not-to-be-corrected = Eine Berichtigung wird nicht selbst berichtigt: Berichtige den Eintrag noch einmal.
in-the-future = Das liegt in der Zukunft: Gib eine Zeit an, die vergangen ist.
not-understood = Das hat eine neuere Version geschrieben: Ändere es mit ihr.
too-long-for-one-entry = Das ist zu lang für einen Eintrag: Mach zwei daraus.

outside = { $field }: Gib eine Zahl von { $least } bis { $most } an.
above = { $field }: Gib höchstens { $most } an.
not-above-0 = { $field }: Gib mehr als 0 an.
count-of-list = { $field }: Gib { NUMBER($least) } bis { NUMBER($most) } an, nicht { NUMBER($count) }.
must-not-be-empty = { $field }: Hier muss etwas stehen.
too-many-characters = { $field }: Schreib höchstens { NUMBER($most) } Zeichen, nicht { NUMBER($count) }.
control-characters = { $field }: Lass die Steuerzeichen weg.
no-test = { $field }: Gib mindestens einen Test an.
nothing-read = { $field }: Gib mindestens eine Messung oder Beobachtung an.
no-measurement = { $field }: Gib mindestens eine Messung an.
material-or-custom = { $field }: Gib entweder ein Material oder ein eigenes an.
same-heap = { $field }: Wähle einen anderen Haufen.
not-an-id = { $field }: Schreib 1 bis 60 Kleinbuchstaben ohne Umlaute, Ziffern und Unterstriche.
not-in-order = { $field }: Gib den kleinsten, den üblichen und den größten Wert in dieser Reihenfolge an.
not-a-digest = { $field }: Gib 64 hexadezimale Ziffern an.
not-a-picture = { $field }: Nimm image/jpeg, image/png oder image/webp.
cannot-be-applied = { $field }: Das lässt sich nicht anwenden (der Leser von JSON sagt auf Englisch: “{ $detail }”).

not-a-moment = Gib eine Zeit mit ihrem Abstand zu UTC in den Jahren 1900 bis 2199 an, wie 2026-05-01T18:00:00+02:00.

line-too-long = Zeile { NUMBER($line) } hat { NUMBER($bytes) } Byte; ein Eintrag hat höchstens { NUMBER($most) }.
line-not-text = Zeile { NUMBER($line) } ist kein Text in UTF-8.
line-of-newer-file = Zeile { NUMBER($line) } sagt, dass eine neuere Version diese Datei gemacht hat: Nimm sie mit dieser auf.
line-without-braces = Zeile { NUMBER($line) } ist kein Eintrag: Sie steht nicht in geschweiften Klammern.
line-without-kind = Zeile { NUMBER($line) } ist kein Eintrag: Ihre Art (kind) ist kein Wort.
line-cut-off = Zeile { NUMBER($line) } ist kein Eintrag: Sie ist abgeschnitten.
line-no-json = Zeile { NUMBER($line) } ist kein Eintrag: Das { NUMBER($sign) }. Zeichen macht sie ungültig als JSON (der Leser von JSON sagt auf Englisch: “{ $detail }”).
line-without-field = Zeile { NUMBER($line) } ist kein Eintrag: Ein Feld fehlt oder darf so nicht sein (der Leser von JSON sagt auf Englisch: “{ $detail }”).
