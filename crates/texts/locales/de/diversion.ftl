# Was nicht in der Tonne landete und was das fürs Klima heißen kann.

climate-method = Verfahren: Deponie nach dem Abbau erster Ordnung des IPCC (2006, Band 5), alles Methan, wann immer es entsteht; Methan und Lachgas des Haufens selbst, wie an Haufen in Gärten gemessen; 28- und 265-mal so stark wie Kohlendioxid über hundert Jahre; 2 bis 14 % vom Kohlenstoff des Komposts sind dann noch im Boden. Kohlendioxid aus Pflanzen zählt null. Nicht gerechnet: Fahrten, ersetzter Torf und Dünger, Strom aus Deponiegas.

kind-food = Küche
kind-garden = Garten
kind-wood = Holz
kind-paper = Papier
kind-other = Anderes

open-landfill = Deponie, deren Gas entweicht
landfill-with-capture = Deponie, die einen Teil des Gases auffängt
burnt-or-composted = Verbrennung oder Kompostwerk

head-month = Monat
head-all = zusammen
all-months = zusammen

head-instead-of = sonst
head-spared = erspart
head-on-balance = unterm Strich

from-to = { $low } bis { $high }

by-kind = Nach Art, mit dem, was an den Gewichten offen ist: { $kinds }.
weekly = Das sind { $mass } in der Woche.
not-waste = Nicht mitgezählt, weil es kein Abfall war (Erde, Kalk, Gekauftes, Kompost): { $mass }.
heap-gave-off = Der Haufen selbst gab Methan ab, das { $methane } entspricht, und Lachgas, das { $nitrous-oxide } entspricht; Kohlenstoff, der im Boden bleibt, macht { $stays } wett.
lies-between = Also liegt es zwischen { $low } und { $high }: Über null ist ein Gewinn. Welches Ende gilt, hängt davon ab, wohin es sonst gekommen wäre, und das weißt nur du.
lies-at = Also sind es { $mass }: Über null ist ein Gewinn.
