# Was die Seite zeigt, bevor sie gestartet ist.

to-the-content = Zum Inhalt
starting = Einen Moment: Die Zahlen von 185 Materialien sind unterwegs. Nach diesem ersten Besuch öffnet sich die Seite auch ohne Netz.
could-not-start = Die Seite konnte nicht starten. Lade sie neu; wenn das nicht hilft, aktualisiere den Browser.
