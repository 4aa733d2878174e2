# Warum sich etwas nicht speichern oder lesen ließ, und was dagegen hilft.

full = Auf diesem Gerät ist kein Platz mehr, deshalb wurde nichts gespeichert. Schaffe Platz und versuche es noch einmal: Was du eingegeben hast, ist noch da.
refused = Dieser Browser bewahrt für diese Seite kein Journal auf, deshalb wurde nichts gespeichert. Verlasse das private Fenster oder erlaube der Seite, Daten zu speichern, und lade sie dann neu.
newer = Eine neuere Version dieser Seite hat das Journal benutzt, deshalb wurde nichts gespeichert. Schließe ihre anderen Tabs und lade diese Seite neu, sobald du Empfang hast.
behind = Ein anderer Tab hat zur selben Zeit gespeichert, deshalb wurde hier nichts gespeichert. Versuche es noch einmal: Was du eingegeben hast, ist noch da.
swapped = Ein anderer Garten wurde geöffnet, bevor das gespeichert war; deshalb ist es nicht gespeichert. Geh zum ersten zurück und gib es noch einmal ein.
unfetched = Ein Teil dieser Seite ließ sich nicht laden, deshalb ist das Journal nicht offen. Lade die Seite neu, wenn du Empfang hast.
failed = Der Browser konnte das nicht speichern ({ $name }), deshalb wurde nichts gespeichert. Versuche es noch einmal: Was du eingegeben hast, ist noch da.
unknown-error = ein unbekannter Fehler
