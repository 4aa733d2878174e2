# Die Nährstoffbilanz eines Haufens: eine Tabelle und Sätze darunter.

head-labels = g, wie auf dem Etikett
head-elements = g des Elements
head-beside = g, neben der Bilanz
not-all-known = nicht ganz bekannt:
others-together = die übrigen zusammen ({ NUMBER($count) })
went-in = hineingekommen, zusammen
left-as-gas = als Gas entwichen
washed-out = ausgewaschen
is-there = vorhanden
at-least = {"  "}mindestens
at-most = {"  "}höchstens
per-litre = {"  "}je Liter
measured-by-laboratory = im Labor gemessen
simulated = simuliert

how-nutrients-go = Phosphor, Kalzium und Magnesium bleiben; Kalium kann ausgewaschen werden; Stickstoff entweicht als Gas, umso mehr, je enger C:N war und je älter das Material ist. In einem von zehn Fällen ist es weniger als „mindestens“, in einem von zehn mehr als „höchstens“.
named-materials = Von { NUMBER($all) } Materialien sind die { NUMBER($named) } genannt, die von einem der Elemente den größten Anteil brachten; die übrigen stehen zusammen in einer Zeile.
known-share = { $element } für { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
known-in-part = „?“ heißt: nicht bekannt. Von der Trockenmasse, die hineinkam, gibt es Werte: { $shares }; der Rest zählt nicht mit, es ist also mehr da.
grams-of-element = { $grams }{"\u00A0"}g { $element }
taken-away = Entnommen oder umgelagert, seit der Haufen zuletzt leer war; so gerechnet, wie es hineinkam, und nicht in der Tabelle: { $taken }.
laboratory-apart = Labor und Bilanz passen nicht zusammen bei { $elements }: Notierte Gewichte, die Probe oder die Asche stimmen nicht.
ash-too-low = Das Labor fand weniger Asche, als hineinkam: Eines von beiden ist falsch.
soil-likely = Die Asche, die das Labor fand, spricht für Erde, die nicht notiert wurde.
not-followed = Einiges davon ist öfter von Haufen zu Haufen gewandert, als hier verfolgt wird.
