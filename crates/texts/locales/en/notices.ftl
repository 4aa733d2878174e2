# What to know about how a question was understood. $name: a material, as a heading.

no-nitrogen = There is no nitrogen in it, so that it has no C:N.
volume-unknown = Volume and air space cannot be told: the density of { $names } is not known.
no-air = As the figures are, nothing is left for air: check the density.
density-assumed = { $name }: no density is known, so that of similar materials is taken.
counts-neither = { $name }: its carbon and nitrogen are not counted, for microbes cannot use them.
estimated = { $name }: the figures are estimates without a published source.
stated-ratio-ignored = { $name }: the stated C:N is not counted, for neither its carbon nor its nitrogen is known.
# $condition: how it was found, such as "wet".
condition-ignored = { $name }: "{ $condition }" changes none of its figures.
