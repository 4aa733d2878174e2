# Was die Seite zu Beeten und Vorrat sagt, ohne die Wörter der Befehle.

beds = Beete
stores = Vorrat
no-beds = Noch kein Beet. Beschreib eines mit seiner Fläche und dem, was dort wächst; dann lässt sich Kompost auf die Beete verteilen.
never-spread = Noch kein Kompost eingetragen.

bed-needs-name = Gib dem Beet einen Namen, zum Beispiel Nordbeet.
bed-name-taken = Ein Beet mit diesem Namen gibt es schon: Nimm einen anderen.
bed-unchanged = Noch ist nichts geändert: Ändere ein Feld oder verlasse das Formular mit „Jetzt nicht“.
no-area = Gib die Fläche ein, zum Beispiel 12, oder zwei Seiten, zum Beispiel 3 m x 1,2 m.
no-bed-ticked = Hake mindestens ein Beet an.
no-compost-said = Gib ein, wie viel Kompost da ist: Für diesen sagt es das Journal nicht.
no-days = Gib die Tage bis zur Ernte ein, von 0 bis 3660, oder lass das Feld leer.
no-material = Wähl zuerst ein Material.
often-put-by = Oft eingelagert

no-stores = Noch ist nichts zurückgelegt. Ein nasser Haufen braucht trockenes Laub, Stroh oder zerrissene Pappe, unter Dach gelagert: Trag ein, was du sammelst.
all-used = Der Vorrat ist aufgebraucht. Zeit, neuen zu sammeln.
other-uses = Andere Verwendungen: Töpfe, Aussaat, Rasen, Mulch, Bäume, Tee

bound-by-maturity-unknown = { $bed }: noch nichts, denn bald wird gesät oder gepflanzt, und die Reife des Komposts wurde nicht geprüft; prüfe sie oder gib unter „Über den Kompost“ an, dass er reif ist.
bound-by-raw-unknown = { $bed }: nichts, denn niemand hat gesagt, ob roher Mist oder Ähnliches in den Kompost kam, und geerntet wird, bevor die { $days } Tage Wartezeit um sind; gib unter „Über den Kompost“ an, wenn nichts davon hineinkam.

compost-assumed = Der Kompost wurde nie untersucht: Gerechnet wird mit üblichen Werten und weiten Spannen.
maturity-unknown = Kein Test zeigt, dass der Kompost reif ist: Lass wie bei unreifem Kompost acht Wochen vergehen, bevor darin gesät oder gepflanzt wird; die Seite des Haufens sagt, was fehlt.
volume-estimated = Wie viel Kompost da ist, wurde aus dem geschätzt, was hineinkam; gib es ein, sobald du es gemessen hast.
raw-unknown = Niemand hat gesagt, ob Mist, Kot oder Fleisch hineinkam: Was den Boden berührt, wartet { $days } Tage zwischen Ausbringen und Ernte, außer du gibst unter „Über den Kompost“ an, dass nichts davon hineinkam.
crop-unknown = { $bed }: „{ $crop }“ steht nicht in der Tabelle der Pflanzen und gilt deshalb als Mittelzehrer; beschreib beim Beet, wie viel Nährstoff es braucht.
