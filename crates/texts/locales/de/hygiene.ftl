# Was die Aufzeichnung der Hitze eines Haufens zeigt. Nichts hier sagt, dass ein Haufen frei von etwas ist.

limits = Eine Regel, die hier erfüllt ist, ist in Zeit und Temperatur am Fühler erfüllt. Keine veröffentlichte Regel wurde für Haufen zu Hause geschrieben, die meisten verlangen mehr, als ein Thermometer zeigt, und deine örtliche Regel geht vor.
interpolation = Zwischen benachbarten Punkten gelten gerade Linien. Von bis zu 26 Stunden zwischen zweien werden 24 angerechnet; über eine längere Lücke wird nichts angerechnet, und keine heiße Zeit läuft über sie hinweg weiter. Vom Umsetzen bis zur nächsten Messung wird nichts angerechnet.

before-use-on-a-day = In diesen Haufen kam am { $day }: { $name-as-listed }. { $advice-as-listed }
before-use-on-days = In diesen Haufen kam vom { $first } bis zum { $last } { NUMBER($times) }-mal: { $name-as-listed }. { $advice-as-listed }

before-use-of-several = { $advice } Das gilt in diesem Haufen für: { $fed }.
fed-on-a-day = { $name-as-listed } am { $day }
fed-on-days = { $name-as-listed } vom { $first } bis zum { $last }, { NUMBER($times) }-mal

headline = { $met ->
        [0] Am Fühler ist keine von { NUMBER($count) } veröffentlichten Regeln erfüllt. Geschätzter Anteil des Haufens, der die Hitze durchlaufen hat: { $share }.
        [1] Am Fühler ist 1 von { NUMBER($count) } veröffentlichten Regeln in Zeit und Temperatur erfüllt. Geschätzter Anteil des Haufens, der die Hitze durchlaufen hat: { $share }.
       *[other] Am Fühler sind { NUMBER($met) } von { NUMBER($count) } veröffentlichten Regeln in Zeit und Temperatur erfüllt. Geschätzter Anteil des Haufens, der die Hitze durchlaufen hat: { $share }.
    }
headline-time-unknown = Die Messungen zeigen, wie heiß es am Fühler war, aber nicht, wie lange: Sie erfüllen keine veröffentlichte Regel. Geschätzter Anteil des Haufens, der die Hitze durchlaufen hat: unbekannt.
share-range = { $value } ({ $low } bis { $high })
less-than-one-percent = <1{"\u00A0"}%

probe-read = { $points ->
        [1] Der Fühler wurde einmal abgelesen; am höchsten zeigte er { $hottest }.
       *[other] Der Fühler wurde über { $length } { NUMBER($points) }-mal abgelesen; am höchsten zeigte er { $hottest }.
    }
probe-read-at-depth = { $points ->
        [1] Der Fühler in { $depth }{"\u00A0"}cm Tiefe wurde einmal abgelesen; am höchsten zeigte er { $hottest }.
       *[other] Der Fühler in { $depth }{"\u00A0"}cm Tiefe wurde über { $length } { NUMBER($points) }-mal abgelesen; am höchsten zeigte er { $hottest }.
    }
time-unknown = Wie lange es { $limit } oder mehr waren, ist nicht bekannt: Miss mindestens einmal am Tag.
time-hot = { $limit } oder mehr waren es { $time } lang; { $least } bis { $most }, wenn der Fühler um { $error } zu viel oder zu wenig zeigt.
time-hot-whatever-the-error = { $limit } oder mehr waren es { $time } lang; daran ändert sich nichts, wenn der Fühler um { $error } zu viel oder zu wenig zeigt.
dose = Dosis { $dose } ({ $least } bis { $most }): 1 ist, was die Zeit-Temperatur-Formel der Vereinigten Staaten verlangt; sie zählt ab { $from }. Die Dosis bei wechselnder Temperatur aufzusummieren geht über diese Regel hinaus.

share-of-middle = { $basis ->
        [assumed] Anteil des Haufens, der gleichzeitig in der heißen Mitte liegt, für einen Haufen von einem Meter in jeder Richtung, weil seine Größe nicht bekannt ist, mit einer kühlen Außenschicht von 5 bis 25{"\u00A0"}cm: { $share }.
        [outline] Anteil des Haufens, der gleichzeitig in der heißen Mitte liegt, nach der Größe des Haufens und einer Schätzung seiner kühlen Außenschicht: { $share }.
        [depths] Anteil des Haufens, der gleichzeitig in der heißen Mitte liegt, nach der Größe des Haufens und Fühlern in mehr als einer Tiefe: { $share }.
       *[simulated] Anteil des Haufens, der gleichzeitig in der heißen Mitte liegt, nach einer Simulation des Haufens: { $share }.
    }
stays = { $before ->
        [0] { $since ->
            [0] Er wurde nicht umgesetzt; in { NUMBER($hot) } von { NUMBER($stays) } Liegezeiten zwischen dem Umsetzen zeigte der Fühler einen Tag lang { $limit } oder mehr, oder die Dosis erreichte 1.
            [1] Er wurde einmal umgesetzt; in { NUMBER($hot) } von { NUMBER($stays) } Liegezeiten zwischen dem Umsetzen zeigte der Fühler einen Tag lang { $limit } oder mehr, oder die Dosis erreichte 1.
            [2] Er wurde zweimal umgesetzt; in { NUMBER($hot) } von { NUMBER($stays) } Liegezeiten zwischen dem Umsetzen zeigte der Fühler einen Tag lang { $limit } oder mehr, oder die Dosis erreichte 1.
           *[other] Er wurde { NUMBER($since) }-mal umgesetzt; in { NUMBER($hot) } von { NUMBER($stays) } Liegezeiten zwischen dem Umsetzen zeigte der Fühler einen Tag lang { $limit } oder mehr, oder die Dosis erreichte 1.
        }
       *[other] Er wurde vor der ersten Messung { $before ->
            [1] einmal
            [2] zweimal
           *[other] { NUMBER($before) }-mal
        } umgesetzt und danach { $since ->
            [0] nicht mehr
            [1] einmal
            [2] zweimal
           *[other] { NUMBER($since) }-mal
        }; in { NUMBER($hot) } von { NUMBER($stays) } Liegezeiten zwischen dem Umsetzen zeigte der Fühler einen Tag lang { $limit } oder mehr, oder die Dosis erreichte 1.
    }
never-hot = Etwa { $share } waren wahrscheinlich nie in der Hitze: So heiß der Kern auch war, Keime im ganzen Haufen können bestenfalls auf einen von { $parts } Teilen zurückgehen.

minutes = { $minutes ->
        [one] { NUMBER($minutes, maximumFractionDigits: 9) }{"\u00A0"}Minute
       *[other] { NUMBER($minutes, maximumFractionDigits: 9) }{"\u00A0"}Minuten
    }
hours = { $hours ->
        [one] { NUMBER($hours) }{"\u00A0"}Stunde
       *[other] { NUMBER($hours) }{"\u00A0"}Stunden
    }
days = { $days ->
        [one] { NUMBER($days) }{"\u00A0"}Tag
       *[other] { NUMBER($days) }{"\u00A0"}Tage
    }

judged = { $method ->
        [turned] { $why ->
            [said] Beurteilt als Haufen, der umgesetzt wird, wie du gesagt hast: Regeln für Haufen, die nicht umgesetzt werden, gelten nicht.
           *[found] Beurteilt als Haufen, der umgesetzt wird, weil das Umsetzen bekannt ist: Regeln für Haufen, die nicht umgesetzt werden, gelten nicht.
        }
       *[static] { $why ->
            [said] Beurteilt als Haufen, der nicht umgesetzt wird, wie du gesagt hast: Regeln für Haufen, die umgesetzt werden, gelten nicht.
           *[found] Beurteilt als Haufen, der nicht umgesetzt wird, weil kein Umsetzen bekannt ist: Regeln für Haufen, die umgesetzt werden, gelten nicht.
        }
    }

met = erfüllt
not-met = nicht erfüllt
does-not-apply = gilt nicht

missing = es fehlt: { $parts }
missing-and-too-hot = es fehlt: { $parts }; Zeit über { $most } war zu heiß, um zu zählen
missing-nothing-unless-probe-errs = aber nicht, wenn der Fühler zu viel zeigt
part-time-above-55 = { $time } über { $limit }
part-turnings = { NUMBER($turns) }-mal umsetzen
part-closed-vessel = ein geschlossener Behälter
part-closed-or-covered = ein geschlossener Behälter oder Dämmung ringsum

rule = { $id } ({ $name }, { $year }): { $asks }
recalled = Aus dem Gedächtnis: Prüfe es, bevor du dich darauf verlässt.
rules-more = Wofür jede Regel geschrieben wurde und woher sie stammt, steht in der Antwort als JSON.

hours-head-threshold = Ab
hours-head-shown = wie angezeigt
hours-head-least = mindestens
hours-head-most = höchstens

soft-seeds = { $reach ->
        [reached] Samen von Gräsern, Gänsedistel und Vogelmiere, wenn sie feucht sind: In Versuchen reichten 12 Stunden bei { $warm } oder 3 Stunden bei { $hot }; am Fühler wurde das erreicht, im kühleren Rest des Haufens vielleicht nicht.
       *[not-reached] Samen von Gräsern, Gänsedistel und Vogelmiere, wenn sie feucht sind: In Versuchen reichten 12 Stunden bei { $warm } oder 3 Stunden bei { $hot }; am Fühler wurde das nicht erreicht.
    }
hardy-seeds = { $reach ->
        [reached] Samen von Nachtschatten, Portulak, Amarant, Weißem Gänsefuß und Tomate, wenn sie feucht sind: In Versuchen reichten 5 Tage bei { $warm } oder 20 Stunden bei { $hot }; am Fühler wurde das erreicht, im kühleren Rest des Haufens vielleicht nicht.
       *[not-reached] Samen von Nachtschatten, Portulak, Amarant, Weißem Gänsefuß und Tomate, wenn sie feucht sind: In Versuchen reichten 5 Tage bei { $warm } oder 20 Stunden bei { $hot }; am Fühler wurde das nicht erreicht.
    }
common-diseases = { $reach ->
        [reached] Die meisten Pilze, Bakterien und Fadenwürmer, die Pflanzen krank machen: In Versuchen reichten ein Höchstwert von { $hot } und 21 Tage; am Fühler wurde das erreicht, im kühleren Rest des Haufens vielleicht nicht.
       *[not-reached] Die meisten Pilze, Bakterien und Fadenwürmer, die Pflanzen krank machen: In Versuchen reichten ein Höchstwert von { $hot } und 21 Tage; am Fühler wurde das nicht erreicht.
    }
white-rot = { $reach ->
        [reached] Mehlkrankheit (Weißfäule) der Zwiebel, in feuchtem Abfall: In Versuchen reichten 3 Tage bei { $warm }; am Fühler wurde das erreicht, im kühleren Rest des Haufens vielleicht nicht.
       *[not-reached] Mehlkrankheit (Weißfäule) der Zwiebel, in feuchtem Abfall: In Versuchen reichten 3 Tage bei { $warm }; am Fühler wurde das nicht erreicht.
    }
larvae = { $reach ->
        [reached] Larven von Fliegen: In Versuchen reichte eine Stunde bei { $warm }; am Fühler wurde das erreicht, im kühleren Rest des Haufens vielleicht nicht. Larven weichen der Hitze aus: Sie vermehren sich nur dann nicht weiter, wenn du mindestens alle { NUMBER($days) } Tage alles in die Hitze umsetzt.
       *[not-reached] Larven von Fliegen: In Versuchen reichte eine Stunde bei { $warm }; am Fühler wurde das nicht erreicht. Larven weichen der Hitze aus: Sie vermehren sich nur dann nicht weiter, wenn du mindestens alle { NUMBER($days) } Tage alles in die Hitze umsetzt.
    }
hard-coated-seeds = Hartschalige Samen (Winde, Samtpappel, Malve, holzige Hülsenfrüchtler): Auf Hitze ist bei ihnen kein Verlass; manche keimten noch nach Tagen über { $hot }.
roots = Wurzeln von Quecke, Winde und Giersch, Brutzwiebeln und Staudenknöterich: Auf Hitze ist bei ihnen kein Verlass; trockne sie vorher, bis sie brechen, oder lege sie einen Monat unter Wasser, und halte dich an örtliche Regeln zu invasiven Pflanzen.
clubroot = Kohlhernie: Auf Hitze ist bei ihr kein Verlass; sie überstand Höchstwerte über { $hot }. Gib keine kranken Pflanzen hinein.
mosaic-viruses = Tomaten- und Tabakmosaik: Auf Hitze ist bei ihnen kein Verlass; es braucht mehr als { $hot } und 20 Tage. Gib keine kranken Pflanzen hinein.
wilts = Fusarium- und Verticillium-Welke: Auf Hitze ist bei ihnen kein Verlass. Gib keine kranken Pflanzen hinein.

fed-since = { $feeds ->
        [1] Am { $last } kam etwas hinein, nachdem der Kern heiß war: Was später kam, hat weniger Hitze bekommen, als hier steht.
       *[other] { NUMBER($feeds) }-mal kam etwas hinein, zuletzt am { $last }, nachdem der Kern heiß war: Was später kam, hat weniger Hitze bekommen, als hier steht.
    }
loosened = { $turns ->
        [1] Einmal wurde beim Umsetzen nur Luft hineingelassen; das zählt nicht.
       *[other] { NUMBER($turns) }-mal wurde beim Umsetzen nur Luft hineingelassen; das zählt nicht.
    }
not-credited = { $gaps ->
        [1] Eine Lücke von mehr als einem Tag zwischen Messungen, zusammen { $time }: Für diese Zeit wird nichts angerechnet.
       *[other] { NUMBER($gaps) } Lücken von mehr als einem Tag zwischen Messungen, zusammen { $time }: Für diese Zeit wird nichts angerechnet.
    }
after-turns = Wie warm es vom Umsetzen bis zur nächsten Messung war, wurde nicht gemessen: Für { $time } wird so viel Wärme angenommen, wie die kühlere der Messungen davor und danach zeigt, und das untere Ende jeder Angabe lässt diese Zeit weg. Miss bald nach dem Umsetzen.
no-depth = { $readings ->
        [1] Eine Messung ohne Tiefe bleibt weg, weil die anderen eine haben: Gib an, wie tief der Fühler steckte.
       *[other] { NUMBER($readings) } Messungen ohne Tiefe bleiben weg, weil die anderen eine haben: Gib an, wie tief der Fühler steckte.
    }
deepest-judged = { $depths ->
        [1] Beurteilt wird der tiefste Fühler; eine andere Tiefe dient nur für die kühle Außenschicht.
       *[other] Beurteilt wird der tiefste Fühler; { NUMBER($depths) } andere Tiefen dienen nur für die kühle Außenschicht.
    }
moved-in = Etwas kam aus einem anderen Haufen: Die Hitze, die es dort hatte, zählt nicht mit.

record-days = { $first } bis { $last }

place-with-rules = { $place ->
        [australia] Australien
        [canada] Kanada
        [european-union] Europäische Union
        [germany] Deutschland
        [united-kingdom] Vereinigtes Königreich
        [united-states] Vereinigte Staaten
        [world-health-organization] Weltgesundheitsorganisation
       *[any] { $as-listed }
    }
