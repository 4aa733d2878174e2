# Why something could not be kept or read, and what to do about it.

full = This device has no room left, so nothing was saved. Make room and try again: what you entered is still here.
refused = This browser keeps no journal for this page, so nothing was saved. Leave the private window, or allow the page to keep data, then load it again.
newer = A newer version of this page has been at the journal, so nothing was saved. Close its other tabs, then load this page again with a signal.
behind = Another tab wrote at the same time, so nothing was saved here. Try again: what you entered is still here.
swapped = Another garden was opened before this was saved, so it was not saved. Go back to the first one and enter it again.
unfetched = A part of this page could not be fetched, so the journal is not open. Load the page again when there is signal.
# $name: what the browser calls its fault, such as "AbortError", or the message below.
failed = The browser could not save this ({ $name }), so nothing was saved. Try again: what you entered is still here.
unknown-error = an unknown error
