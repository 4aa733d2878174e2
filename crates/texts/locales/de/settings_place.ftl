# Einstellungen: das Ziel und die Felder zwischen zwei Tasten.

lowest-ratio = Niedrigstes C:N
highest-ratio = Höchstes C:N
lowest-moisture = Niedrigste Feuchte, %
highest-moisture = Höchste Feuchte, %
least-air-space = Kleinster Luftraum, %
usually = Üblich: { $limit }.

less-of = Weniger, { $label }
more-of = Mehr, { $label }

