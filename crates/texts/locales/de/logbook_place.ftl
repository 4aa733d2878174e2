# Das Logbuch: was sich wählen lässt, und was von dort zum Export des Journals führt.

heap = Haufen
all-heaps = alle
what = Was
everything = alles
show-more = Mehr zeigen
entries-shown = { $count ->
        [one] 1 Eintrag.
       *[other] { NUMBER($count) } Einträge.
    }
to-the-export = Zum Export
