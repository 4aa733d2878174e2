# Heute: was jeder Haufen braucht.

not-today = Heute nicht
not-today-of = Heute nicht: { $need }
put-aside = Für heute zurückgestellt
put-aside-hint = Auf diesem Gerät, bis morgen. Was dringend wird, kommt von selbst zurück.
bring-back-need = Wiederherstellen: { $need }
vessels-not-known = Bis in deinem Journal steht, was deine Gefäße fassen, rechnet „Heute“ mit den üblichen.
writes-down = Einmal Tippen trägt ein: { $entry }
