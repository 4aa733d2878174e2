# Was um die Bereiche herum steht.

balance = Mischen
window-title = { $page }: { $place }
places = Bereiche
not-kept = In diesem Browser kann die Seite nicht behalten, was du eingibst: Es ist weg, sobald du sie verlässt.

taken-back = Zurückgenommen: { $entry }
bring-back = Wiederherstellen
dismiss = Ausblenden

how-many = Wie viel, { $name }
measure-of = Maß, { $name }
one-more = Eins mehr, { $name }
one-less = Eins weniger, { $name }

found = { NUMBER($count) } gefunden
