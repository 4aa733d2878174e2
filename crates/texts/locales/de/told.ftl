# Was die Seite über Hitze, Reife und Nährstoffe eines Haufens sagt, und darüber, was der Mülltonne erspart blieb.

heat = War es heiß genug?
no-readings = Seit dieser Haufen zuletzt leer war, hat niemand einen Fühler im Kern abgelesen. Trage eine Messung ein, mit der Stelle und der Tiefe, und hier steht, welche veröffentlichten Regeln sie erfüllt.
before-use = Bevor du ihn verwendest
nothing-lasts = Von dem, was über diesen Haufen aufgeschrieben ist, musst du nichts beachten, bevor du seinen Kompost verwendest.
ripeness = Ist er fertig?
nutrients = Nährstoffe darin
account = Woher sie kommen und wohin sie gehen
nothing-in-it = In diesem Haufen liegt noch nichts. Trage ein, was du zugibst, und diese Seite führt darüber Buch.
kept-out = Der Mülltonne erspart
nothing-kept-out = Noch wurde nichts zugegeben, was sonst Abfall gewesen wäre. Trage ein, was du einem Haufen zugibst, und es wird gezählt.
telling = Was aufgeschrieben ist, wird zusammengezählt.
not-told = Das ließ sich nicht ausrechnen. Lade die Seite neu.
whose-rules = Regeln für
whose-rules-hint = Zuerst nach der Sprache deines Browsers. Die Regel deines eigenen Ortes geht allen diesen vor.
no-rule-chosen = Wähle einen Ort, dann stehen hier seine Regeln.
other-rules = Regeln anderer Orte
showed = Was der Fühler zeigte und für wie viel vom Haufen das gilt
living = Samen, Krankheiten und Larven
hours = Wie lange es wie heiß war, als Tabelle
signs = Alle Zeichen als Tabelle
no-signs = Von diesem Kompost ist noch kein Test aufgeschrieben.
other-sheets = So gehen andere Tests zu Hause
write-test = Einen Test aufschreiben
test-empty = Trage ein, was der Test ergeben hat.
test-incomplete = Dieser Test braucht alle Felder, bei denen nicht „Kann wegbleiben.“ steht.
whole-seeds = Samen zählt man in ganzen Zahlen ab 0.
stays-with-heap = Das bleibt beim Haufen bis zur Entnahme:
more-than-fits = Diese Zugabe nimmt locker { $fed } ein, und { $heap } fasst { $holds }. Prüfe die Mengen.
by-month = Nach Monaten
months = Der Mülltonne erspart, Monat für Monat
for-the-climate = Für das Klima, als Kohlendioxid über hundert Jahre
rule-asks = Was sie verlangt und woher sie stammt
sheet-reading = Was es bedeutet
named-as = Angegeben als
names-elements = Elemente
names-on-labels = wie auf Etiketten
beside = Neben der Bilanz
about-account = Wie diese Bilanz entsteht
how-much = Wie viel Kompost es wird
which-test = Welcher Test
tests-bag = Geschlossener Beutel
tests-self-heating = Selbsterhitzung im Gefäß
tests-seeds = Samen
tests-laboratory = Labor
log-test = Test eintragen
may-be-left-out = Kann wegbleiben.

done = zu { NUMBER($percent) }{"\u00A0"}% erfüllt

yield-head-what = Wenn er fertig ist
yield-head-likely = erwartet
yield-head-range = acht von zehn Fällen

sign-head-of = Art
sign-head-test = Test
sign-head-found = Befund
sign-head-says = Urteil
sign-head-when = Wann

needs = Du brauchst: { $needs }
