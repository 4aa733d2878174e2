# Settings: the aim, and the fields between two steppers.

# Limits of the aim.
lowest-ratio = Lowest C:N
highest-ratio = Highest C:N
lowest-moisture = Lowest moisture, %
highest-moisture = Highest moisture, %
least-air-space = Least air space, %
# Below a limit: what it is unless the keeper says otherwise.
usually = Usually { $limit }.

# Heard at the two buttons beside a field. $label: the label of the field, such as "Weight, kg".
less-of = Less, { $label }
more-of = More, { $label }

