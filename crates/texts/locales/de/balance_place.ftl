# Die Mischung: was zur Hand ist, was in Reichweite ist, und die Antwort.

nearest = Am nächsten kommt: { $recipe }
no-amount-read = Noch lässt sich keine Menge unter „Zur Hand“ lesen. Berichtige die markierte.
why-and-other-ways = Warum, und andere Möglichkeiten

common-materials = Häufige Materialien
condition-of = Zustand, { $name }
remove = { $name } entfernen
remove-from-reach = { $name } aus „In Reichweite“ entfernen
add-to-reach = Etwas zu „In Reichweite“ hinzufügen
there-are = es gibt
in-store = { $name } im Vorrat; leer heißt reichlich
not-all-counted = Nicht alles, was zur Hand ist, ist mitgerechnet.
example-in-reach = Das ist erfunden. Entferne den Haken bei dem, was du nicht hast, oder lagere unter Vorrat Eigenes ein.
best-kept-out = Gehört besser nicht auf einen Komposthaufen: Warum, steht unter Vorsicht.
as-usual = üblich

enter-a-volume = Gib ein Volumen ein, zum Beispiel 12 L.
enter-a-number = Gib eine Zahl ein, zum Beispiel 1½ oder 2,5.
number-between = Gib eine Zahl zwischen 1 und { NUMBER($most) } ein.
limits-crossed = Die untere Grenze darf nicht über der oberen liegen; gerechnet wird mit dem üblichen Ziel.
