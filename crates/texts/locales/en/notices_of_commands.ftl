# What only the command line says, for it names commands and options, which stay as they are.

bound-by-raw-unknown = { $bed }: none, for nobody said whether raw manure or the like went into the compost, and the harvest comes before the { $days } days of waiting are over; say --no-raw if none did.
bound-by-maturity-unknown = { $bed }: none yet, for seeds or seedlings come within eight weeks and no tests show that the compost is mature; test it with `heapwright test`, or say --mature.
# What to know about a plan.
compost-assumed = The compost was never analysed: usual figures with wide ranges are taken; a laboratory's figures, given with `heapwright test`, narrow them.
volume-estimated = How much compost there is was estimated from what went in; say it with --litres once you have measured it.
maturity-unknown = No tests show that the compost is mature: as with immature compost, let eight weeks pass before anything is sown or planted in it; `heapwright ready` tells what is missing.
raw-unknown = Nobody said whether manure, droppings or meat went in: what touches the soil waits { $days } days between spreading and harvest unless you say --no-raw; if they did, say --held-raw.
raw-unknown-on = Nobody said whether manure, droppings or meat went in: what touches the soil waits { $days } days between spreading and harvest ({ $beds }) unless you say --no-raw; if they did, say --held-raw.
crop-unknown = { $bed }: "{ $crop }" is not in the table of crops, so it is taken as a medium feeder; say --feeding when you describe the bed.
# A bed was described whose crop is not in the table of crops. $nearest: the crop whose name is most like it.
crop-without-figures = There are no figures for the crop “{ $crop }”, so it is taken as a medium feeder unless you say --feeding.
crop-without-figures-like = There are no figures for the crop “{ $crop }”, so it is taken as a medium feeder; did you mean { $nearest }? If so, `heapwright undo` takes the bed back.

# What to do next. Between backticks stand commands, which stay as they are.
next-by-command = { $tests ->
        [bag-and-seedlings] Try the bag and the cress: `heapwright ready --how bag` and `heapwright ready --how seedlings` say how.
        [rest] Test whether it is at rest: `heapwright ready --how bag` or `--how self-heating` says how.
       *[plants] Test whether plants bear it: `heapwright ready --how seedlings` says how.
    }

climate-assumed = The garden's place is not described: the usual weather at { NUMBER($latitude) } degrees north is taken. Tell it with `heapwright garden describe --latitude --longitude`.

# --depth is an option of the command line and stays.
other-depths = { $depths ->
        [1] The deepest probe is judged unless --depth says another; one other depth is used for the cool outside alone.
       *[other] The deepest probe is judged unless --depth says another; { NUMBER($depths) } other depths are used for the cool outside alone.
    }
