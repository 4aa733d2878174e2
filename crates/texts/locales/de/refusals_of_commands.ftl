# Was sich nicht verwenden lässt, und was stattdessen geht, wo bisher nur die Befehlszeile fragt.

amount-of-part = Teil { NUMBER($part) }, „{ $text }“,
list-is-empty = Die Liste ist leer: Schreib Teile wie 2 Eimer Rasenschnitt, 1 Becher Kaffeesatz.
list-is-too-long = Die Liste ist zu lang: Schreib höchstens 20000 Zeichen.
list-has-too-many-parts = Die Liste hat zu viele Teile: Schreib höchstens 200.
part-without-name = Teil { NUMBER($part) }, „{ $text }“, sagt nicht, wovon: Schreib es wie 2 Eimer Rasenschnitt.
part-with-several-amounts = Teil { NUMBER($part) }, „{ $text }“, enthält mehrere Mengen: Setz ein Komma zwischen die Teile.
part-with-amount-inside = Teil { NUMBER($part) }, „{ $text }“, hat die Menge mitten im Text: Schreib sie zuerst, wie 2 Eimer Rasenschnitt.
part-of-list-refused = Teil { NUMBER($part) }, „{ $text }“: { $refusal }

no-readings = Seit der Haufen zuletzt leer war, gibt es keine Messung aus dem Kern: Trag welche mit `heapwright read --temperature "58 C core"` ein oder gib mit --csv eine Datei an.
no-such-depth = --depth: In dieser Tiefe gibt es keine Messung: Gib eine der Tiefen der Aufzeichnung an.
no-beds = Es gibt kein Beet zu planen: Beschreib eines mit `heapwright bed new NAME AREA` oder gib Beete in einer Datei an.
nothing-in-heap = In diesem Haufen liegt nichts, soweit das Journal es weiß: Trag mit `heapwright feed` ein, was hineinkommt.
