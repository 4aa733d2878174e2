# Was man darüber wissen soll, wie eine Frage verstanden wurde.

no-nitrogen = Es ist kein Stickstoff darin, deshalb gibt es kein C:N.
volume-unknown = Volumen und Luftraum lassen sich nicht angeben, weil die Dichte fehlt: { $names }.
no-air = Nach diesen Zahlen bleibt kein Platz für Luft: Prüfe die Dichte.
density-assumed = { $name }: Die Dichte ist nicht bekannt, deshalb gilt die von ähnlichem Material.
counts-neither = { $name }: Kohlenstoff und Stickstoff zählen nicht mit, denn Mikroben können sie nicht nutzen.
estimated = { $name }: Die Zahlen sind Schätzungen ohne veröffentlichte Quelle.
stated-ratio-ignored = { $name }: Das angegebene C:N zählt nicht mit, denn weder Kohlenstoff noch Stickstoff sind bekannt.
condition-ignored = { $name }: „{ $condition }“ ändert hier keine Zahl.
