# Today: what each heap needs.

# Heard behind a button or a link, where several have the same words. $heap: which heap it is for.
behind-control = , { $heap }
