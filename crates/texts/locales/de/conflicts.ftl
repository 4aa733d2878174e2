# Warum das Ziel mit dem, was dazukommen darf, nicht zu erreichen ist, und was helfen würde.

limit-ratio-low = kleinstes C:N
limit-ratio-high = größtes C:N
limit-moisture-low = geringste Feuchte
limit-moisture-high = höchste Feuchte
limit-air-low = kleinster Luftraum
limit-air-high = größter Luftraum

miss-ratio-low = sie bleibt zu grün (C:N { $reached }, Ziel mindestens { $asked })
miss-ratio-high = sie bleibt zu braun (C:N { $reached }, Ziel höchstens { $asked })
miss-moisture-low = sie bleibt zu trocken (Feuchte { $reached }, Ziel mindestens { $asked })
miss-moisture-high = sie bleibt zu nass (Feuchte { $reached }, Ziel höchstens { $asked })
miss-air-low = sie bleibt zu dicht (Luftraum { $reached }, Ziel mindestens { $asked })
miss-air-high = sie bleibt zu locker (Luftraum { $reached }, Ziel höchstens { $asked })
miss-no-nitrogen = sie enthält keinen Stickstoff und hat deshalb kein C:N

measures-too-coarse = Für so wenig sind ganze Maße zu grob: Ein Teil davon würde reichen.
nothing-gets-there = Mit dem, was du dazugeben kannst, erreicht die Mischung ihr Ziel nicht.
nothing-gets-there-for = Mit dem, was du dazugeben kannst, erreicht die Mischung ihr Ziel nicht: { $misses }.

help-dry-brown = Etwas Trockenes und Braunes würde helfen: trockenes Laub, Stroh, zerrissene Pappe, Sägemehl.
help-dry-and-richer = Etwas Trockenes, das mehr Stickstoff enthält als Pappe oder Holz, würde helfen: trockenes Laub, Heu, getrocknetes Gras.
help-more-carbon = Etwas mit viel Kohlenstoff würde helfen: trockenes Laub, Stroh, Pappe, Holzhäcksel.
help-more-nitrogen = Etwas Grünes würde helfen: Gras, Küchenabfälle, Kaffeesatz, Mist.
help-water = Wasser würde helfen.
help-coarse = Etwas Grobes, das den Haufen locker hält, würde helfen: gehäckselter Strauchschnitt, Holzhäcksel, Stroh.
help-fine = Etwas Feineres würde helfen: Häcksle das Material oder tritt es fest.
help-larger-stock = Mehr von dem, was du schon dazugeben kannst, würde helfen.
help-part-of-a-measure = Nimm nur einen Teil eines Maßes oder warte, bis es mehr zu mischen gibt.
