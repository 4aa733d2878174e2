# Wie die Mischung ist: ein Wort für jeden Wert, und Sätze darüber.

carbon-scale = Der Kohlenstoff ist gezählt wie in Handbüchern zum Kompostieren: der Teil der Trockenmasse, der nicht Asche ist, geteilt durch 1,8. Das Ziel von etwa 30 gehört zu dieser Zählweise. Ein Labor, das den Kohlenstoff selbst misst, findet in Pflanzen weniger; sein C:N ist deshalb niedriger.
disclaimer = Das sind Schätzungen aus typischen Werten. Dein Material weicht davon ab: Die Spannen sagen, wie weit. Örtliche Regeln dazu, was kompostiert werden darf, gehen vor.

no-nitrogen = kein Stickstoff
too-green = zu grün
too-brown = zu braun
good = gut
too-dry = zu trocken
too-wet = zu nass
too-tight = zu dicht
too-loose = zu locker
airy = luftig
not-known = nicht bekannt

nearly-certain = fast gewiss
less-than-one-in-ten = weniger als 1 von 10
about-in-ten = etwa { NUMBER($tenths, maximumFractionDigits: 0) } von 10

by-itself-good = Das ist schon für sich allein eine gute Mischung.
by-itself = Für sich allein ist das { $faults }.
fault-too-dry = zu trocken ({ $value }; Ziel { $low } bis { $high })
fault-too-wet = zu nass ({ $value }; Ziel { $low } bis { $high })
fault-too-green = zu grün (C:N { $value }; Ziel { $low } bis { $high })
fault-too-brown = zu braun (C:N { $value }; Ziel { $low } bis { $high })
fault-no-nitrogen = ganz ohne Stickstoff, also ohne C:N
fault-too-tight = zu dicht ({ $value } Luft; Ziel mindestens { $low })
fault-too-loose = zu locker ({ $value } Luft; Ziel mindestens { $low })

volumes-and-masses = { $vessel ->
        [gallon] Nach Volumen stehen { $large } und { $small } im Verhältnis { $volumes } zu 1, nach Trockenmasse { $masses } zu 1: Eine Gallone { $large } wiegt { $large-mass } ({ $large-water } Wasser), eine Gallone { $small } { $small-mass } ({ $small-water } Wasser).
       *[litre] Nach Volumen stehen { $large } und { $small } im Verhältnis { $volumes } zu 1, nach Trockenmasse { $masses } zu 1: Ein Liter { $large } wiegt { $large-mass } ({ $large-water } Wasser), ein Liter { $small } { $small-mass } ({ $small-water } Wasser).
    }
