# Was ein Haufen wahrscheinlich tun wird, viele Male berechnet: Jedes Mal ist ein „Durchlauf“.
# „Er“ ist der Haufen oder sein Kern.

simulation-limits = Das ist wahrscheinlich, nach der Art dessen, was hineinkam, und nach dem Wetter. Eine kalte Ecke oder eine nasse Stelle kann davon abweichen. Über Hygiene sagt es nichts: Dafür braucht es gemessene Temperaturen und Einträge über das Umsetzen.
bands = In Klammern: wo neun von zehn Durchläufen liegen, die sich in dem unterscheiden, was niemand genau weiß.

day-of-case = Tag { NUMBER($day, maximumFractionDigits: 1) }
now = jetzt
# Im Nominativ oder Akkusativ.
days = { $days ->
        [one] { NUMBER($days, maximumFractionDigits: 1) }{"\u00A0"}Tag
       *[other] { NUMBER($days, maximumFractionDigits: 1) }{"\u00A0"}Tage
    }
percent = { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
degrees-celsius = { NUMBER($degrees, maximumFractionDigits: 0) }{"\u00A0"}°C
degrees-fahrenheit = { NUMBER($degrees, maximumFractionDigits: 0) }{"\u00A0"}°F
with-range = { $middle } ({ $low } bis { $high })

core-warmest = { $kind ->
        [now] Am wärmsten ist der Kern jetzt, mit { $core }.
        [day] Am wärmsten ist der Kern an { $time }, mit { $core }.
       *[date] Am wärmsten ist der Kern am { $time }, mit { $core }.
    }
stays-below = Er bleibt unter { $limit }.
stays-below-with-luck = Er bleibt unter { $limit }; mit etwas Glück liegt er { $days } lang darüber.
is-hot = Er liegt { $days } bei { $limit } oder mehr.

air-short = { $kind ->
        [now] In einem Teil fehlt { $days } lang die Luft, bis hinab auf { $oxygen } % Sauerstoff, und zwar jetzt: Dort kann es sauer werden.
        [day] In einem Teil fehlt { $days } lang die Luft, bis hinab auf { $oxygen } % Sauerstoff an { $time }: Dort kann es sauer werden.
       *[date] In einem Teil fehlt { $days } lang die Luft, bis hinab auf { $oxygen } % Sauerstoff am { $time }: Dort kann es sauer werden.
    }
air-short-in-runs = So ist es in { $share } der Durchläufe für einen Tag oder länger.
air-may-run-short = In einem Teil kann die Luft knapp werden: so in { $share } der Durchläufe.

too-dry = Er wird zu trocken, um gut zu arbeiten: bis hinab auf { $moisture } Feuchte.
wants-water = { $end ->
        [by] Bis zum Ende fehlt ihm Wasser: { $water }.
       *[at] Am Ende fehlt ihm Wasser: { $water }.
    }
wants-water-range = { $end ->
        [by] Bis zum Ende fehlt ihm Wasser: { $water } ({ $low } bis { $high }).
       *[at] Am Ende fehlt ihm Wasser: { $water } ({ $low } bis { $high }).
    }
too-much-water = { $end ->
        [by] Bis zum Ende sammelt er zu viel Wasser: { $water }.
       *[at] Am Ende hat er zu viel Wasser: { $water }.
    }
too-much-water-range = { $end ->
        [by] Bis zum Ende sammelt er zu viel Wasser: { $water } ({ $low } bis { $high }).
       *[at] Am Ende hat er zu viel Wasser: { $water } ({ $low } bis { $high }).
    }

ready-from = Fertig kann er ab { $time } sein.
ready-from-in-runs = { $end ->
        [by] Fertig kann er ab { $time } sein; bis zum Ende ist er es in { $share } der Durchläufe.
       *[at] Fertig kann er ab { $time } sein; am Ende ist er es in { $share } der Durchläufe.
    }
not-ready = { $end ->
        [by] Bis zum Ende wird er nicht fertig.
       *[at] Am Ende ist er nicht fertig.
    }
not-ready-in-all-runs = { $end ->
        [by] Bis zum Ende wird er nicht fertig; in { $share } der Durchläufe wird er es doch.
       *[at] Am Ende ist er nicht fertig; in { $share } der Durchläufe ist er es doch.
    }

lost = Am Ende hat er so viel verloren: vom Volumen { $volume }, von der Trockenmasse { $dry-mass } und vom Stickstoff { $nitrogen }.
ran-out = Unten herausgelaufen: { $water }.

readings-as-computed = { $count ->
        [one] Die eine Messung im Kern bisher: wie berechnet.
       *[other] Die { NUMBER($count) } Messungen im Kern bisher: im Mittel wie berechnet.
    }
readings-warmer = { $count ->
        [one] Die eine Messung im Kern bisher: { $degrees } wärmer als berechnet.
       *[other] Die { NUMBER($count) } Messungen im Kern bisher: im Mittel { $degrees } wärmer als berechnet.
    }
readings-cooler = { $count ->
        [one] Die eine Messung im Kern bisher: { $degrees } kühler als berechnet.
       *[other] Die { NUMBER($count) } Messungen im Kern bisher: im Mittel { $degrees } kühler als berechnet.
    }

probe-gainsays = Am { $day } zeigte der Fühler { $probe }, weit entfernt von den { $computed }, die dafür berechnet sind: Glaub dem Fühler. Was folgt, ist ohne ihn berechnet.

densities-unknown = Ohne bekannte Dichte, also mit der von ähnlichen Materialien gerechnet: { $names }.
figures-estimated = Mit geschätzten Werten, ohne veröffentlichte Quelle: { $names }.
enclosure-assumed = Wie der Haufen eingefasst ist, ist nicht beschrieben: Angenommen ist ein offener Haufen auf Erde, 1 m in jeder Richtung.
climate-rough = Die üblichen Temperaturen sind aus Breitengrad und Höhe geschätzt, auf etwa { $degrees } genau.
weather-usual-hours = { $hours ->
        [one] Von { NUMBER($hours) } Stunde ist das Wetter nicht bekannt: Angenommen ist das übliche, und die Durchläufe schwanken darum.
       *[other] Von { NUMBER($hours) } Stunden ist das Wetter nicht bekannt: Angenommen ist das übliche, und die Durchläufe schwanken darum.
    }
weather-usual-days = { $days ->
        [one] Von { NUMBER($days) } Tag ist das Wetter nicht bekannt: Angenommen ist das übliche, und die Durchläufe schwanken darum.
       *[other] Von { NUMBER($days) } Tagen ist das Wetter nicht bekannt: Angenommen ist das übliche, und die Durchläufe schwanken darum.
    }
weather-filled = { $gaps ->
        [one] Die Wetterdatei hat bei den Temperaturen { NUMBER($gaps) } Lücke: Lücken bis sechs Stunden wurden überbrückt, längere mit dem gefüllt, was dort üblich ist.
       *[other] Die Wetterdatei hat bei den Temperaturen { NUMBER($gaps) } Lücken: Lücken bis sechs Stunden wurden überbrückt, längere mit dem gefüllt, was dort üblich ist.
    }
weather-sorted = Zeilen der Wetterdatei, die doppelt vorkamen: { NUMBER($twice) }, davon zählt die spätere; Zeilen, die in die richtige Reihenfolge kamen: { NUMBER($out-of-order) }.
behind-the-end = { $events ->
        [one] Nicht gerechnet, weil es nach dem letzten Tag liegt: { NUMBER($events) } Ereignis.
       *[other] Nicht gerechnet, weil sie nach dem letzten Tag liegen: { NUMBER($events) } Ereignisse.
    }
overfull = Am Anfang kam mehr hinein, als der Komposter fasst: Es steht über den Rand.
left-out = Nicht gerechnet, weil dieses Programm nichts damit anfangen kann: { $names }.
moved-in = Kompost aus einem anderen Haufen gilt so, wie es die Geschichte jenes Haufens nahelegt.
old-left-out = { $days ->
        [one] Was vor mehr als { NUMBER($days) } Tag hineinkam, ist nicht gerechnet.
       *[other] Was vor mehr als { NUMBER($days) } Tagen hineinkam, ist nicht gerechnet.
    }
runs-failed = Durchläufe, die sich nicht berechnen ließen und fehlen: { NUMBER($count) }.
