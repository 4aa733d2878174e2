# Heute: was jeder Haufen braucht.

behind-control = , { $heap }
