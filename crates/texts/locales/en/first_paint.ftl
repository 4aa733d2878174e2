# What the page shows before it has started, beside the names of its places.

starting = One moment: the figures of 185 materials are on their way. After this first visit the page opens without a signal.
could-not-start = The page could not start. Load it again; if that does not help, update the browser.
