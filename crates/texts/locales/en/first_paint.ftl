# What the page shows before it has started, beside the names of its places.

# The first link of the page, for those who go through it by keys: past the bar of places.
to-the-content = To the content
starting = One moment: the figures of 185 materials are on their way. After this first visit the page opens without a signal.
could-not-start = The page could not start. Load it again; if that does not help, update the browser.
