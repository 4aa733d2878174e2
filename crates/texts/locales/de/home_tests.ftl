# Was man braucht, steht hinter „Du brauchst:“, darum ohne Artikel.

sample-title = Eine Probe, die für den Haufen spricht
sample-tells = Jeder andere Test ist nur so gut wie die Handvoll, mit der er gemacht wird.
sample-needs = Handschaufel, sauberes Tuch oder Tablett, Handschuhe.
sample-step-1 = Wähle zehn Stellen, in mehreren Tiefen und auf allen Seiten.
sample-step-2 = Kratze an jeder die äußeren 5 bis 10{"\u00A0"}cm weg; dort ist es trockener und kühler als im Rest.
sample-step-3 = Nimm von jeder Stelle eine Schaufel voll und gib alles auf das Tuch.
sample-step-4 = Mische gut, häufe es zu einem Kegel auf, teile ihn in vier Viertel und wirf zwei gegenüberliegende zurück.
sample-step-5 = Wiederhole das, bis ein oder zwei Liter übrig sind.
sample-says-1 = Verwende die Probe am selben Tag, oder halte sie kühl und locker verschlossen.
sample-record = Hier ist nichts aufzuschreiben.

squeeze-title = Die Faustprobe
squeeze-tells = Wie feucht der Kompost ist; andere Tests brauchen ihn feucht.
squeeze-needs = Eine Hand mit Handschuh.
squeeze-step-1 = Nimm eine Handvoll aus dem Inneren des Haufens.
squeeze-step-2 = Drücke sie so fest, wie du kannst, und schau zwischen die Finger.
squeeze-step-3 = Öffne die Hand und tippe den Ballen an.
squeeze-says-1 = Wasser läuft heraus: über 65{"\u00A0"}% Wasser, zu nass.
squeeze-says-2 = Ein paar Tropfen: 55 bis 60{"\u00A0"}%.
squeeze-says-3 = Keine Tropfen, und der Ballen hält, bis du ihn antippst: 45 bis 55{"\u00A0"}%, richtig für die Nachreife.
squeeze-says-4 = Es bröselt oder staubt: unter 40{"\u00A0"}%, zu trocken zum Arbeiten.

bag-title = Der geschlossene Beutel oder das Glas
bag-tells = Ob der Kompost zur Ruhe gekommen ist. Was noch verrottet, verbraucht darin die Luft und wird faulig.
bag-needs = Beutel mit Zippverschluss oder dicht schließendes Glas, ein Liter Kompost, drei bis sieben Tage.
bag-step-1 = Nimm eine Probe (siehe das Blatt über die Probe) und bringe sie auf „keine Tropfen, Ballen hält“.
bag-step-2 = Fülle den Beutel, drücke die meiste Luft heraus und schließe ihn; fülle ein Glas zu zwei Dritteln und lass am Deckel eine Vierteldrehung offen, damit es nicht platzen kann.
bag-step-3 = Lass ihn bei Zimmertemperatur und ohne Sonne mindestens drei Tage liegen; eine Woche sagt mehr.
bag-step-4 = Sieh nach, ob der Beutel aufgebläht ist.
bag-step-5 = Öffne ihn im Freien mit ausgestrecktem Arm und fächle dir den Geruch zu; halte die Nase nicht hinein.
bag-says-1 = Erdig oder kaum Geruch, Beutel flach: ein Zeichen der Ruhe.
bag-says-2 = Ammoniak, sauer oder faulig, oder ein aufgeblähter Beutel: nicht fertig.

reheating-title = Wird er nach dem Umsetzen wieder warm?
reheating-tells = Ob der Kompost zur Ruhe gekommen ist; für Haufen ab einem halben Kubikmeter.
reheating-needs = Einstechthermometer, Gabel, fünf Tage.
reheating-step-1 = Sorge dafür, dass der Haufen feucht ist; wässere ihn beim Umsetzen, wo er trocken ist.
reheating-step-2 = Setze ihn um, das Äußere nach innen, und schreibe das Umsetzen auf.
reheating-step-3 = Stecke vom nächsten Tag an den Fühler einmal am Tag zur selben Stunde in die Mitte, warte zwei oder drei Minuten und miss auch die Luft im Schatten.
reheating-step-4 = Mach das fünf Tage lang.
reheating-says-1 = Die ganze Zeit weniger als 8{"\u00A0"}°C über der Luft: ein Zeichen der Ruhe.
reheating-says-2 = 8 bis 10{"\u00A0"}°C: fast.
reheating-says-3 = Mehr: Er arbeitet noch.
reheating-says-4 = Ein kleiner oder trockener Haufen bleibt in jedem Fall kühl, und dann sagt das nichts.

self-heating-title = Selbsterhitzung im Isoliergefäß
self-heating-tells = Wie weit der Kompost von der Ruhe entfernt ist, in fünf Rottegraden.
self-heating-needs = Weites Isoliergefäß von einem Liter oder mehr, Thermometer, das bis ins untere Drittel reicht, bis zu zehn Tage.
self-heating-step-1 = Nimm eine Probe, lies Steine und Holz heraus, die größer als ein Daumennagel sind, und bringe sie auf „keine Tropfen, Ballen hält“.
self-heating-step-2 = Breite sie einige Stunden auf einem Tablett aus, bis sie so warm ist wie der Raum.
self-heating-step-3 = Fülle das Gefäß locker, stecke das Thermometer ins untere Drittel und lege ein Tuch darauf: Luft muss hinein.
self-heating-step-4 = Lies Gefäß und Raum zweimal am Tag ab, bis die Wärme zwei Tage lang gefallen ist, höchstens zehn Tage.
self-heating-step-5 = Nimm den größten Unterschied zwischen Gefäß und Raum.
self-heating-says-1 = Bis 10{"\u00A0"}°C über dem Raum: Rottegrad V, sehr stabil.
self-heating-says-2 = 10 bis 20{"\u00A0"}°C: Rottegrad IV. 20 bis 30{"\u00A0"}°C: Rottegrad III. 30 bis 40{"\u00A0"}°C: Rottegrad II. Mehr: Rottegrad I, roh.
self-heating-says-3 = Ein Gefäß von zu Hause ist kleiner als das, mit dem die Rottegrade bestimmt wurden, und zeigt zu gute Werte; darum zählt das Programm einen Rottegrad weniger.

seedlings-title = Keimlinge im Kompost
seedlings-tells = Ob Pflanzen den Kompost vertragen.
seedlings-needs = Samen von Kresse oder Radieschen, sechs kleine Töpfe, saubere Blumenerde oder gewaschener Sand, zehn Tage.
seedlings-step-1 = Siebe den Kompost und mische ihn halb und halb mit der Erde oder dem Sand; das füllt drei Töpfe. Die anderen drei bekommen nur Erde oder Sand: Sie sind die Kontrolle.
seedlings-step-2 = Säe in jeden Topf zehn Samen, alle gleich tief, und gieße alle gleich.
seedlings-step-3 = Stelle sie hell und bei Zimmertemperatur auf und halte sie feucht.
seedlings-step-4 = Wenn die Kontrolle aufgegangen ist, nach fünf bis zehn Tagen, zähle die Keimlinge in beiden.
seedlings-step-5 = Sieh dir auch die Blätter an: Gelbe oder eingerollte deuten auf Salz, Ammoniak oder Unkrautmittel.
seedlings-says-1 = 80{"\u00A0"}% der Kontrolle oder mehr: ein Zeichen der Reife; über 90{"\u00A0"}% ein besseres.
seedlings-says-2 = Weniger: nicht reif.
seedlings-says-3 = Kresse verzeiht viel, darum heißt bestanden wenig und nicht bestanden viel; Chinakohl ist der bessere Prüfer.

germination-title = Keimindex
germination-tells = Ob der Kompost etwas enthält, das Wurzeln schadet: Zahl und Länge der Wurzeln in einer einzigen Angabe.
germination-needs = Kressesamen, sechs Untertassen, Filter- oder Küchenpapier, sauberes Wasser, Waage, Lineal, drei Tage.
germination-step-1 = Rühre nach Gewicht einen Teil Trockenmasse in zehn Teile Wasser: etwa 20{"\u00A0"}g feuchten Kompost in 100{"\u00A0"}g Wasser. Lass es eine Stunde stehen und gieße es durch ein Tuch.
germination-step-2 = Lege Papier in jede Untertasse; befeuchte drei mit dem Auszug und drei mit Wasser, alle mit der gleichen Menge.
germination-step-3 = Lege auf jede zehn Samen, decke sie ab und halte sie dunkel bei etwa 25{"\u00A0"}°C; Kresse braucht ein bis drei Tage, Radieschen drei bis fünf.
germination-step-4 = Zähle die Samen, die gekeimt sind, und miss ihre Wurzeln.
germination-step-5 = Index = hier gekeimt durch in Wasser gekeimt, mal mittlere Wurzel hier durch mittlere Wurzel in Wasser.
germination-says-1 = 80{"\u00A0"}% oder mehr: ein Zeichen der Reife.
germination-says-2 = 50 bis 80{"\u00A0"}%: fast.
germination-says-3 = Weniger als 50{"\u00A0"}%: schädlich für Pflanzen.

oven-title = Feuchte mit dem Backofen
oven-tells = Wie viel vom Kompost Wasser ist, genauer als mit der Faustprobe.
oven-needs = Küchenwaage, Backblech, Backofen, ein Tag; öffne das Fenster.
oven-step-1 = Wiege das leere Blech, dann das Blech mit etwa 200{"\u00A0"}g einer gemischten Probe.
oven-step-2 = Trockne sie zwölf bis vierundzwanzig Stunden bei 100{"\u00A0"}°C, die Tür einen Fingerbreit offen.
oven-step-3 = Wiege sie, trockne sie eine Stunde länger, wiege sie wieder; hör auf, wenn das Gewicht gleich bleibt.
oven-step-4 = Feuchte = was verloren ging, geteilt durch das nasse Gewicht ohne das Blech.
oven-says-1 = 45 bis 55{"\u00A0"}% passen zur Nachreife; 40 bis 50{"\u00A0"}% passen zum Lagern und Sieben.
