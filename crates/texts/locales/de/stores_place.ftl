# Der Vorrat: was eingelagert ist, und die Formulare für das, was dazukam, wegging und gezählt wurde.

write-down = Aufschreiben
put-by = Einlagern
use = Verbrauchen
count = Zählen
use-of = { $name } verbrauchen
count-of = { $name } zählen

what-is-put-by = Was eingelagert ist
plenty = reichlich
used-up = Aufgebraucht: { $names }.

what = Was
condition = Zustand
amount-put-by = eingelagert
amount-used = verbraucht
amount-counted = gezählt
on-a-heap = Für einen Haufen, zum Beispiel zum Abdecken
on-none = für keinen
feeds-are-taken-off = Was du aus „Mischen“ zugibst, wird von selbst abgezogen.
nothing-is-left = Nichts mehr da
put-it-by = Einlagern
write-use = Verbrauch aufschreiben
write-count = Zählung aufschreiben
