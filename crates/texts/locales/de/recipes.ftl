# Was zu dem kommt, was da ist.

put-with-it = Gib { $things } dazu.
needs-nothing = Es muss nichts dazu.
nothing-brings-it-nearer = Nichts von dem, was du dazugeben kannst, bringt die Mischung näher ans Ziel.

least-to-carry = Am wenigsten zu tragen
least-bulk = Am wenigsten Volumen
surest = Am ehesten im Ziel
from-the-fullest-store = Aus dem größten Vorrat
least-effort = Am wenigsten Mühe
without = Ohne { $name }
with-less-of = Mit weniger { $name }
another-way = Ein anderer Weg
nearest = Am nächsten am Ziel
nearest-you-can-get = So nah ans Ziel wie möglich
