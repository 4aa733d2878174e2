# Heute: was jeder Haufen braucht.

control-of-heap = { $words }, { $heap }
vessels-not-known = Bis in deinem Journal steht, was deine Gefäße fassen, rechnet „Heute“ mit den üblichen.
writes-down = Ein Tipp schreibt auf: { $entry }
