# Welches Beet wie viel Kompost bekommt, was es nicht mehr bekommen lässt und was dazu zu wissen ist.

beds-limits = Die Grenzen gelten bei üblichen Werten; Kompost ist von Haufen zu Haufen verschieden. Eine Bodenprobe, eine Analyse deines Komposts und örtliche Regeln zu Nährstoffen und Abschwemmung gehen diesem Plan vor. Bring auf gefrorenem oder durchnässtem Boden keinen Kompost aus.
nitrogen-limits = Versuche gehen weit auseinander: Nimm die Spanne ernst und lass andere Düngung nicht allein wegen des Komposts weg.
uses-limits = Gesiebt und reif muss der Kompost nur sein, wo es dabeisteht. Eine Leitfähigkeit gilt für die gesättigte Paste; andere Verfahren zeigen weniger an. Kompost, in den Hunde- oder Katzenkot kam, kommt in keinen Topf mit Essbarem und auf keinen Rasen, nur unter Bäume und Zierpflanzen, wo die Regel vor Ort es erlaubt.

limit-food-bed = nie auf Gemüsebeete
limit-acid = saurer Boden
limit-waiting = Wartezeit
limit-immature = unreifer Kompost
limit-raw-unknown = Rohes nicht ausgeschlossen
limit-maturity-unknown = Reife nicht belegt
limit-salt = Salz
limit-phosphorus = Phosphor
limit-nitrogen = Stickstoff
limit-depth = Schichtdicke
stops-at-supply = kein Kompost mehr
stops-at-need-met = Bedarf gedeckt
stops-at-earlier-dressings = frühere Gaben

met = { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
met-over = über { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%

millimetres = { $number }{"\u00A0"}mm
inches = { $number }{"\u00A0"}in

none = nichts
bound-by-supply = { $bed }: Der Kompost ist ganz verteilt; hier wäre noch Platz für mehr.
bound-by-earlier = { $bed }: nichts, denn frühere Gaben decken den Bedarf.
bound-by-need = { $bed }: Mit { $depth } ist der Bedarf gedeckt; mehr würde nur Phosphor anhäufen.
bound-by-food-bed = { $bed }: nichts, denn es zählt als Gemüsebeet, und in den Kompost kam etwas, das nie auf Gemüsebeete gehört.
bound-by-acid = { $bed }: nichts, denn was dort wächst, braucht sauren Boden, und Kompost aus dem Garten ist meist basisch; gib Lauberde.
bound-by-waiting = { $bed }: nichts, denn roher Mist oder Ähnliches kam in den Kompost, und geerntet wird, bevor die { $days } Tage Wartezeit um sind.
bound-by-immature = { $bed }: noch nichts, denn der Kompost ist nicht reif, und bald wird gesät oder gepflanzt; gib ihm acht Wochen oder lass ihn nachreifen.
bound-by-salt = { $bed }: { $depth }, denn mehr davon brächte mehr Salz, als die Pflanzen dort vertragen.
bound-by-phosphorus-with-earlier = { $bed }: { $depth }, denn mit den früheren Gaben brächte mehr davon mehr Phosphor, als die Ernten dort in drei Jahren mitnehmen.
bound-by-phosphorus = { $bed }: { $depth }, denn mehr davon brächte mehr Phosphor, als die Ernten dort in drei Jahren mitnehmen.
bound-by-nitrogen = { $bed }: { $depth }, denn mehr davon brächte mehr Stickstoff, als die Pflanzen dort dieses Jahr nutzen können.
bound-by-depth-before = { $bed }: nichts, denn es gab dort schon so viel, wie in einem Jahr üblich ist.
bound-by-depth-on-new-ground = { $bed }: { $depth }, mehr ist auf neuem Boden in einem Jahr nicht üblich.
bound-by-depth = { $bed }: { $depth }, mehr ist auf einem schon früher versorgten Beet in einem Jahr nicht üblich.

off-food-beds = { $beds }: Dieser Kompost gehört nie auf Gemüsebeete, also kommt dorthin nichts. Wo nicht bekannt ist, was wächst, zählt das Beet als Gemüsebeet. Halte ihn auch von Rasen und von Töpfen mit Essbarem fern, und bau in den nächsten Jahren nichts Essbares an, wo er liegt.
off-food-beds-anywhere = Dieser Kompost gehört nie auf Gemüsebeete, nicht in Töpfe mit Essbarem und nicht auf Rasen; bau in den nächsten Jahren nichts Essbares an, wo er liegt.
doubtful-on-food-beds = { $beds }: Bevor dieser Kompost dorthin kommt, achte auf das, was in ihn hineinkam.
spread-on-food-bed = { $bed } zählt als Gemüsebeet, und dieser Kompost gehört nie auf Gemüsebeete: Bring ihn dort nicht aus. Liegt er schon dort, halte das fest und bau dort in den nächsten Jahren nichts Essbares an.
partly-assumed = Was am Kompost nicht gemessen wurde, ist mit üblichen Werten und weiten Spannen angenommen: { $figures }.
compost-figure = { $figure ->
        [nitrogen] Stickstoff
        [phosphorus] Phosphor
        [potassium] Kalium
        [salt] Salz
       *[moisture] Feuchte
    }
dilute-extract = Die Leitfähigkeit des Komposts stammt vielleicht aus einem verdünnten Auszug. Der zeigt weniger an als der Sättigungsextrakt und lässt sich nicht verlässlich umrechnen: Fürs Salz zählt sie { $times }-mal so viel, und es kann mehr sein.
fed-by-earlier = { $count ->
        [one] { $beds }: Frühere Gaben waren schon so viel, wie das Beet verträgt, also bekommt es dieses Jahr nichts. Leg dort Lauberde oder anderen mageren Mulch auf und heb den Kompost für Töpfe auf oder verschenk ihn.
       *[other] { $beds }: Frühere Gaben waren schon so viel, wie die Beete vertragen, also bekommen sie dieses Jahr nichts. Leg dort Lauberde oder anderen mageren Mulch auf und heb den Kompost für Töpfe auf oder verschenk ihn.
    }
fed-by-earlier-off-food = { $count ->
        [one] { $beds }: Frühere Gaben waren schon so viel, wie das Beet verträgt, also bekommt es dieses Jahr nichts. Leg dort Lauberde oder anderen mageren Mulch auf.
       *[other] { $beds }: Frühere Gaben waren schon so viel, wie die Beete vertragen, also bekommen sie dieses Jahr nichts. Leg dort Lauberde oder anderen mageren Mulch auf.
    }
immature = Der Kompost ist nicht reif: Bring ihn vier bis acht Wochen vor dem Säen oder Pflanzen aus oder leg ihn als Mulch obenauf.
ties-up-nitrogen = Dieser Kompost ist so reich an Kohlenstoff, dass er im ersten Jahr Stickstoff zurückhält: Dünge hungrige Pflanzen anders oder nimm ihn als Mulch.
no-crop = { $beds }: Was dort wächst, ist nicht bekannt; gerechnet wird wie für Mittelzehrer.
salt-unknown = { $beds }: Wie viel Salz die Pflanzen vertragen, steht in keiner Tabelle; Salz setzt dort keine Grenze.
phosphorus-high = { $beds }: Der Boden hat mehr Phosphor, als die Pflanzen nutzen. Gegeben wird nur, was die Ernte eines Jahres mitnimmt; Lauberde wäre besser.
wait = { $beds }: In den Kompost kam roher Mist oder Ähnliches. Warte { $days } Tage zwischen Ausbringen und Ernte oder bau an, was gekocht oder nicht gegessen wird.
yardstick = Als Maßstab, nicht als Regel für Gärten: Landwirte in Deutschland dürfen von diesem Kompost im Schnitt { $depth } im Jahr ausbringen.
left-over-off-food = { $volume } bleiben übrig: Bring sie nur unter Bäumen und Zierpflanzen aus, wo die Regel vor Ort es erlaubt.
left-over = { $volume } bleiben übrig: Deck sie zu und heb sie für Töpfe oder fürs nächste Jahr auf.
not-proven = Die Verteilung ließ sich nicht zu Ende rechnen: Der Plan hält alle Grenzen ein, aber vielleicht gibt es einen gerechteren.

summary = { $beds ->
        [0] Von { $all } kommt nichts auf ein Beet.
        [one] { $given } von { $all } gehen auf { NUMBER($beds) } Beet.
       *[other] { $given } von { $all } gehen auf { NUMBER($beds) } Beete.
    }
covered = { $volume } auf { $area }{"\u00A0"}m² liegen { $depth } hoch.

use-none = { $use }: gar keiner.
use-share-at-most = { $use }: höchstens { $high }{"\u00A0"}%.
use-share = { $use }: { $low } bis { $high }{"\u00A0"}%.
use-depth-at-most = { $use }: höchstens { $high }{"\u00A0"}mm.
use-depth = { $use }: { $low } bis { $high }{"\u00A0"}mm.
here-at-most = Hier höchstens { $most }.
sieve = Siebe auf { $fine } bis { $coarse }{"\u00A0"}mm.
mature-only = Nur reif.
conductivity-at-most = Leitfähigkeit höchstens { $most }{"\u00A0"}dS/m.
ph-at-most = pH höchstens { $most }.
