# Mengen, Namen und Werte, wie sie in Sätzen stehen.

amount-of = { $amount } { $name }
amount-of-water = { $amount } Wasser
count-of-measure = { $count }{"\u00A0"}{ $measure }
names-in-a-sentence = as they are
name-with-conditions = { $name } ({ $conditions })
name-with-more-conditions = { $name } ({ $inner }, { $conditions })
conditions = { $first }, { $second }
percent = { $number }{"\u00A0"}%
percent-nearly-all = >99{"\u00A0"}%
interval = { $low } bis { $high }
clauses = { $first }; { $second }
