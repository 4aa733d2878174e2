# Wörter in Bildern eines Haufens und darunter, und was Tag für Tag davon abgelesen wird.

doing-fed = befüllt
doing-turned = umgesetzt
doing-watered = gewässert
doing-covered = abgedeckt
doing-taken-out = entnommen

now = jetzt
how-to-read = Pfeiltasten gehen von Tag zu Tag, Bild auf und Bild ab um eine Woche, Pos1 und Ende an die Enden.
day-before = Einen Tag früher
day-after = Einen Tag später
done-head = Getan und gemessen
nine-of-ten-draws = neun von zehn Ziehungen
picture-name = { $value } im Verlauf
short-date = { NUMBER($day) }.{"\u00A0"}{ $month }
probe-showed = Fühler { $temperature }
temperature-read = { $temperature } gemessen
day-read = { $day }: { $value }.
day-read-of-many = { $day }: { $value } wahrscheinlich; die Hälfte der Läufe { $half }, neun von zehn { $nine }.
done-on-the-day = An diesem Tag getan und gemessen: { $done }.

value-core-temperature = Kerntemperatur
value-moisture = Feuchte
value-lowest-oxygen = Wenigster Sauerstoff
value-volume = Volumen
mark-hot = heiß ab hier
mark-too-dry = darunter zu trocken
mark-too-wet = darüber zu nass
mark-short-of-air = darunter zu wenig Luft
key-middle = { $plan }: Mitte der Läufe
key-half = die Hälfte der Läufe
key-nine-of-ten = neun von zehn Läufen
key-reading = was dein Fühler zeigte
head-day = Tag
head-middle = Mitte, { $unit }
head-half = Hälfte der Läufe
head-nine-of-ten = Neun von zehn Läufen
range = { $low } bis { $high }

field-temperature = Temperatur
field-moisture = Feuchte
field-oxygen = Sauerstoff
head-where = Wo
head-probe = Fühler
head-computed = Kern, berechnet
place-not-told = nicht angegeben

map-moisture = Feuchte, %
map-green = grün
map-brown = braun
map-wet = nass
map-dry = trocken
map-nine-of-ten = 9 von 10
