# Was sich nicht verwenden lässt, und was stattdessen geht: Mengen, Materialien und Fragen.

field-name = { $field ->
        [first-year-and-later-years] Erstes Jahr und spätere Jahre
        [area-depth-and-amount] Fläche, Dicke und Menge
        [air_temperature_c] Lufttemperatur (°C)
        [ammonium_nitrogen_mg_kg_dry] Ammoniumstickstoff (mg/kg Trockenmasse)
        [amount] Menge
        [area] Fläche
        [area_m2] Fläche (m²)
        [ash_pct_dry] Asche (% der Trockenmasse)
        [bag] Beuteltest
        [beds] Beete
        [bulk_density_kg_m3] Schüttdichte (kg/m³)
        [bytes] Größe (Byte)
        [calcium_pct_dry] Kalzium (% der Trockenmasse)
        [carbon_dioxide_mg_g_d] Kohlendioxid (mg/g am Tag)
        [carbon_pct_dry] Kohlenstoff (% der Trockenmasse)
        [cn_goal] C:N-Ziel
        [cn_ratio] C:N
        [cn_ratio_measured] gemessenes C:N
        [coldest_month_c] Kältester Monat (°C)
        [compost] Kompost
        [conditions] Zustand
        [conductivity_ds_m] Leitfähigkeit (dS/m)
        [control_root_mm] Wurzellänge in der Kontrolle (mm)
        [control_sprouted] In der Kontrolle gekeimt
        [creatures] Tiere
        [crop] Kultur
        [custom] eigenes Material
        [days] Tage
        [depth] Dicke
        [depth_m] Tiefe (m)
        [dressings] frühere Kompostgaben
        [dried_sample] getrocknete Probe
        [dry_kg] Gewicht trocken (kg)
        [effort] Mühe
        [elevation_m] Höhe über dem Meer (m)
        [empty_kg] Gewicht leer (kg)
        [enclosure] Komposter
        [feed] Zugabe
        [feeding] Nährstoffbedarf
        [fill_pct] Füllung (%)
        [free_air_space_pct] Luftraum (%)
        [full_kg] Gewicht voll (kg)
        [germination] Keimtest
        [harvest_in_days] Tage bis zur Ernte
        [have] Zur Hand
        [heap] Haufen
        [height_m] Höhe (m)
        [height_px] Höhe (Pixel)
        [highest_c] Höchste Temperatur (°C)
        [laboratory] Labor
        [latitude_deg] Breitengrad
        [like] ähnliches Material
        [litres] Menge Kompost
        [logger] Datenlogger
        [longitude_deg] Längengrad
        [looks] Aussehen
        [magnesium_pct_dry] Magnesium (% der Trockenmasse)
        [material] Material
        [measure] Maß
        [media_type] Art der Datei
        [moisture_pct] Feuchte (%)
        [name] Name
        [nitrate_nitrogen_mg_kg_dry] Nitratstickstoff (mg/kg Trockenmasse)
        [nitrogen_pct_dry] Stickstoff (% der Trockenmasse)
        [organic_matter_pct] Humus (%)
        [overs] Siebrest
        [parts] Zutaten
        [patch] Berichtigung
        [ph] pH-Wert
        [phosphorus_mg_kg] Phosphor (mg/kg)
        [phosphorus_pct_dry] Phosphor (% der Trockenmasse)
        [picture] Bild
        [place] Ort
        [plans] Vorhaben
        [potassium_mg_kg] Kalium (mg/kg)
        [potassium_pct_dry] Kalium (% der Trockenmasse)
        [probes] Messwerte
        [reach] In Reichweite
        [room_c] Raumtemperatur (°C)
        [root_mm] Wurzellänge (mm)
        [self_heating] Selbsterhitzung
        [sha256] Prüfsumme
        [share_pct] Anteil (%)
        [sieve_mm] Maschenweite (mm)
        [smells] Gerüche
        [sodium_pct_dry] Natrium (% der Trockenmasse)
        [soil] Boden
        [sown_in_days] Tage bis zur Saat
        [sprouted] Gekeimt
        [target] Ziel
        [temperature_c] Temperatur (°C)
        [text] Text
        [to] Zielhaufen
        [use] Verwendung
        [volume_l] Volumen (L)
        [warmest_month_c] Wärmster Monat (°C)
        [water] Wasser
        [water_l] Wasser (L)
        [weighed_measure] gewogenes Maß
        [wet_kg] Gewicht feucht (kg)
        [width_m] Breite (m)
        [width_px] Breite (Pixel)
        [years] Jahre
       *[other] { $field }
    }
field-of-list = { $list ->
        [beds] Beet { NUMBER($place) }
        [dressings] Kompostgabe { NUMBER($place) }
        [events] Ereignis { NUMBER($place) }
        [feed] Zutat { NUMBER($place) }
        [have] „Zur Hand“, Zeile { NUMBER($place) }
        [parts] Zutat { NUMBER($place) }
        [plans] Vorhaben { NUMBER($place) }
        [probes] Messwert { NUMBER($place) }
        [reach] „In Reichweite“, Zeile { NUMBER($place) }
       *[something] { $list } { NUMBER($place) }
    }
field-inside = { $outer }, { $inner }

amount-typed = „{ $typed }“
amount-untyped = Die Menge
amount-is-empty = { $amount } ist leer: Schreib eine Menge, zum Beispiel 2 Eimer oder 3,5 kg.
amount-is-too-long = { $amount } ist zu lang: Schreib eine Zahl und eine Einheit, zum Beispiel 2 Eimer.
amount-has-no-number = { $amount } enthält keine Zahl: Schreib, wie viel, zum Beispiel 2 Eimer.
amount-is-vague = { $amount } enthält „{ $words }“, und das ist keine Zahl: Schreib, wie viel, zum Beispiel 3 Handvoll.
amount-has-no-unit = { $amount } enthält keine Einheit: Schreib, wie viel, mit einer Einheit, zum Beispiel 3 Eimer oder 3 kg.
amount-has-unit-like = { $amount } enthält die unbekannte Einheit „{ $word }“: Meinst du { $nearest }?
amount-has-unknown-unit = { $amount } enthält die unbekannte Einheit „{ $word }“: Schreib eines deiner Maße, zum Beispiel Eimer, oder kg, lb, L oder gal.
amount-has-ambiguous-unit = { $amount } enthält „{ $word }“, und so heißen mehrere Einheiten: Schreib { $clear }.
either-or = { $first } oder { $second }
either-of-more = { $first }, { $others }
amount-has-ambiguous-number = { $amount } enthält „{ $number }“, und das lässt sich auf zwei Arten lesen: Schreib { $large } oder { $small }.
amount-has-misformed-number = { $amount } enthält „{ $number }“, und das ist keine Zahl: Schreib sie wie 1234,5 oder 1 1/2.
amount-has-several-numbers = { $amount } enthält mehrere Zahlen für eine Menge: Schreib nur eine, zum Beispiel 2 1/2 Eimer.
amount-is-zero = { $amount } ist null: Schreib eine Zahl über 0.
amount-is-negative = { $amount } ist kleiner als null: Schreib eine Zahl über 0.
amount-is-not-finite = { $amount } enthält keine endliche Zahl: Schreib eine wie 2,5.
amount-is-absurd = { $amount } ist mehr, als ein Garten fasst: Schreib höchstens 100000 kg, 1000 m³ oder 100000 Maße.
amount-is-too-small = { $amount } ist weniger, als sich messen lässt: Schreib mindestens 0,001 g, 0,001 mL oder 0,001 eines Maßes.
amount-divides-by-zero = { $amount } teilt durch null: Schreib einen Bruch wie 1/2.
amount-goes-on = { $amount } geht mit „{ $words }“ weiter: Schreib nur eine Zahl und eine Einheit, zum Beispiel 2 Eimer.

figure-outside = { $field }: Gib eine Zahl von { $least } bis { $most } an, nicht { $stated }.
too-few-figures = Gib zwei von dreien an: Kohlenstoff, Stickstoff und C:N.
ratio-without-nitrogen = Der Stickstoff ist 0, deshalb gibt es kein C:N: Lass das C:N weg.
ratio-without-carbon = Der Kohlenstoff ist 0, deshalb gibt es kein C:N: Lass das C:N weg.
ratio-contradicts = { $carbon } % Kohlenstoff geteilt durch { $nitrogen } % Stickstoff ergibt { $follows }, nicht das angegebene C:N { $ratio }: Berichtige eine der drei Zahlen oder lass eine weg.
figures-over-full = Kohlenstoff, Stickstoff und Asche ergeben zusammen { $sum } % der Trockenmasse: Mehr als 100 dürfen es nicht sein.
minerals-over-full = Kohlenstoff, Stickstoff, Phosphor, Kalium, Kalzium, Magnesium und Natrium ergeben zusammen { $sum } % der Trockenmasse: Mehr als 100 dürfen es nicht sein.
ratio-over-full = Aus Stickstoff und C:N folgen { $carbon } % Kohlenstoff und { $nitrogen } % Stickstoff in der Trockenmasse: Der Stickstoff darf höchstens { $limit } sein, beide zusammen höchstens 100.
two-moistures = „{ $first }“ und „{ $second }“ sagen beide, wie nass das Material ist: Behalte nur einen Zustand.
unknown-material = Das Material „{ $id }“ ist nicht bekannt: Such es in der Liste der Materialien.
no-figures = { $name }: Dafür gibt es keine Zahlen, und es gehört besser nicht in einen Haufen: Lass es weg.
unknown-measure = Das Maß „{ $id }“ ist nicht bekannt: Miss es aus oder gib die Menge in Litern oder Kilogramm an.
no-name = Der Name darf nicht leer sein: Schreib einen.
no-density = Für ein Volumen fehlt die Schüttdichte: Gib sie in kg/m³ an, oder gib die Menge in kg oder lb an.

empty = { $field }: Hier steht noch nichts. Nenne mindestens ein Material mit seiner Menge.
too-many = { $field }: Das sind zu viele Einträge. Gib höchstens { NUMBER($most) } an.
part-refused = { $field }: { $refusal }
unknown-feeding = { $field }: „{ $said }“ ist nicht bekannt. Schreib light (gering), medium (mittel) oder heavy (hoch).
unknown-id = { $field }: „{ $said }“ ist nicht bekannt. Schreib eines von diesen: { $ids }.
no-beds = Es gibt kein Beet zu planen: Beschreib eines.
nothing-in-heap = Nach dem Journal liegt in diesem Haufen nichts: Trag ein, was hineinkommt.

must-be-above-0 = { $field }: Gib mehr als 0 an.
must-be-number-above-0 = { $field }: Gib eine Zahl über 0 an.
must-be-0-or-more = { $field }: Gib 0 oder mehr an.
must-be-amount-of-0-or-more = { $field }: Gib eine Menge von 0 oder mehr an.
must-be-within = { $field }: Gib eine Zahl von { NUMBER($least) } bis { NUMBER($most) } an.
must-be-percent = { $field }: Gib 0 bis 100 Prozent an.
must-be-area-of-bed = { $field }: Gib 0,01 bis 100000 Quadratmeter an.
must-be-amount-of-compost = { $field }: Gib mehr als 0 und höchstens 100000000 Liter an.
must-be-dressing = { $field }: Gib eine Menge von 0 oder mehr an, die 0 bis 1000 Jahre her ist.
must-be-two-of-three = { $field }: Gib zwei von dreien an, das dritte wird berechnet.
must-be-amount-of-mix-instead = { $field }: Lass das weg und gib die Menge der Mischung an.
must-be-area-instead = { $field }: Lass das weg und gib die Fläche an.
must-be-done-in-time = { $field }: Nimm etwas, das zwischen jetzt und dem letzten Tag der Vorausschau getan wird.
must-be-feed = { $field }: Gib eine Zugabe mit mindestens einem Millionstel Kilogramm Trockenmasse an, und nicht mehr, als ein Haufen fassen kann.
must-be-two-ratios = { $field }: Gib zwei Zahlen von 1 bis 1000 an, die kleinere zuerst.
must-be-ratio-within = { $field }: Gib eine Zahl an, die in der Spanne für C:N liegt.
must-be-two-percentages = { $field }: Gib zwei Prozentzahlen von 0 bis 100 an, die kleinere zuerst.

climate-outside = { $what ->
        [the-latitude-in-degrees] Der Breitengrad muss zwischen { $least } und { $most } liegen; berichtige ihn.
        [the-longitude-in-degrees] Der Längengrad muss zwischen { $least } und { $most } liegen; berichtige ihn.
        [the-height-above-the-sea-in-metres] Die Höhe über dem Meer muss zwischen { $least } und { $most } Metern liegen; berichtige sie.
        [the-mean-temperature-of-a-month-in-degC] Die mittlere Temperatur eines Monats muss zwischen { $least } und { $most } °C liegen; berichtige sie.
        [the-rain-of-a-month-in-mm] Der Regen eines Monats muss zwischen { $least } und { $most } mm liegen; berichtige ihn.
       *[something] { $what }: Gib eine Zahl von { $least } bis { $most } an.
    }
coldest-above-warmest = Der kälteste Monat ist wärmer als der wärmste; vertausche die beiden Temperaturen.

weather-amiss = Das Wetter reicht von { $known-from } bis { $known-to }, simuliert wird von { $begins } bis { $ends }: Gib mehr Wetter, weniger Tage oder ein Klima für das Fehlende an.
out-of-time = Das Wetter muss in den Jahren 1900 bis 2199 liegen und darf höchstens 50 Jahre lang sein: Berichtige die Tage.

nothing-fed = In den Haufen kommt nichts hinein; gib etwas dazu.
enclosure-without-meaning = { $what ->
        [width] Die Breite des Komposters kann nicht stimmen; berichtige sie.
        [depth] Die Tiefe des Komposters kann nicht stimmen; berichtige sie.
        [height] Die Höhe des Komposters kann nicht stimmen; berichtige sie.
        [heat-loss] Der Wärmeverlust des Komposters kann nicht stimmen; berichtige ihn.
        [forced-air] Die Belüftung des Komposters kann nicht stimmen; berichtige sie.
       *[something] Eine Angabe zum Komposter kann nicht stimmen ({ $what }); berichtige sie.
    }
weather-of-no-weather = Stunde { NUMBER($hour) } des Wetters hat einen Wert, den kein Wetter hat; berichtige ihn.
weather-too-short = Das Wetter endet nach { $days } Tagen; gib mehr Stunden an oder rechne weniger Tage.
event-without-meaning = Ereignis { NUMBER($event) } hat einen Wert, der nicht stimmen kann, oder steht nicht in der Reihenfolge; berichtige es.
setting-without-meaning = { $what ->
        [number-of-days] Die Zahl der Tage kann nicht stimmen; berichtige sie.
        [grid] Das Gitter kann nicht stimmen; berichtige es.
        [interval-of-the-series] Der Abstand der Zeitreihe kann nicht stimmen; berichtige ihn.
        [tolerance] Die Toleranz kann nicht stimmen; berichtige sie.
       *[something] Eine Einstellung kann nicht stimmen ({ $what }); berichtige sie.
    }
computation-stuck = Die Rechnung kam nicht über Tag { $day } hinaus; such dort nach einer ungewöhnlichen Menge oder nach einer Zugabe mit sehr wenig Trockenmasse für ihr Volumen.
