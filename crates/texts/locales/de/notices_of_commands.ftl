# Was nur die Befehlszeile sagt: Befehle und Optionen darin bleiben, wie sie sind.

bound-by-raw-unknown = { $bed }: nichts, denn niemand hat gesagt, ob roher Mist oder Ähnliches in den Kompost kam, und geerntet wird, bevor die { $days } Tage Wartezeit um sind; gib --no-raw an, wenn nichts davon hineinkam.
bound-by-maturity-unknown = { $bed }: noch nichts, denn in den nächsten acht Wochen wird gesät oder gepflanzt, und kein Test zeigt, dass der Kompost reif ist; prüfe ihn mit `heapwright test` oder gib --mature an.
compost-assumed = Der Kompost wurde nie untersucht: Gerechnet wird mit üblichen Werten und weiten Spannen; Werte aus dem Labor, eingetragen mit `heapwright test`, machen sie enger.
volume-estimated = Wie viel Kompost da ist, wurde aus dem geschätzt, was hineinkam; gib es mit --litres an, sobald du es gemessen hast.
maturity-unknown = Kein Test zeigt, dass der Kompost reif ist: Lass wie bei unreifem Kompost acht Wochen vergehen, bevor darin gesät oder gepflanzt wird; `heapwright ready` sagt, was fehlt.
raw-unknown = Niemand hat gesagt, ob Mist, Kot oder Fleisch hineinkam: Was den Boden berührt, wartet { $days } Tage zwischen Ausbringen und Ernte, außer du gibst --no-raw an; kam etwas davon hinein, gib --held-raw an.
raw-unknown-on = Niemand hat gesagt, ob Mist, Kot oder Fleisch hineinkam: Was den Boden berührt, wartet { $days } Tage zwischen Ausbringen und Ernte ({ $beds }), außer du gibst --no-raw an; kam etwas davon hinein, gib --held-raw an.
crop-unknown = { $bed }: „{ $crop }“ steht nicht in der Tabelle der Pflanzen und gilt deshalb als Mittelzehrer; gib --feeding an, wenn du das Beet beschreibst.
crop-without-figures = Zur Kultur „{ $crop }“ gibt es keine Zahlen, deshalb gilt sie als Mittelzehrer, außer du gibst --feeding an.
crop-without-figures-like = Zur Kultur „{ $crop }“ gibt es keine Zahlen, deshalb gilt sie als Mittelzehrer; meintest du { $nearest }? Dann nimmt `heapwright undo` das Beet zurück.

next-by-command = { $tests ->
        [bag-and-seedlings] Probiere den Beutel und die Kresse: `heapwright ready --how bag` und `heapwright ready --how seedlings` zeigen, wie es geht.
        [rest] Teste, ob er zur Ruhe gekommen ist: `heapwright ready --how bag` oder `--how self-heating` zeigt, wie es geht.
       *[plants] Teste, ob Pflanzen ihn vertragen: `heapwright ready --how seedlings` zeigt, wie es geht.
    }

climate-assumed = Wo der Garten liegt, ist nicht beschrieben: Angenommen ist das übliche Wetter auf { NUMBER($latitude) } Grad Nord. Gib den Ort mit `heapwright garden describe --latitude --longitude` an.

other-depths = { $depths ->
        [1] Beurteilt wird der tiefste Fühler, wenn --depth keinen anderen nennt; eine andere Tiefe dient nur für die kühle Außenschicht.
       *[other] Beurteilt wird der tiefste Fühler, wenn --depth keinen anderen nennt; { NUMBER($depths) } andere Tiefen dienen nur für die kühle Außenschicht.
    }
