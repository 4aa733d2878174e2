//! Where on a straight line between two points does the temperature lie in a band?

/// The record between two points, or a part of it without a turning.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    /// Temperature at its beginning [degrees Celsius].
    pub from_c: f64,
    /// Temperature at its end.
    pub to_c: f64,
    /// How long it is.
    pub seconds: f64,
}

impl Piece {
    /// The lower and the higher of its ends.
    pub fn ends(self) -> (f64, f64) {
        if self.from_c <= self.to_c {
            (self.from_c, self.to_c)
        } else {
            (self.to_c, self.from_c)
        }
    }

    /// The same, as much warmer.
    pub fn warmer(self, by_k: f64) -> Self {
        Self {
            from_c: self.from_c + by_k,
            to_c: self.to_c + by_k,
            seconds: self.seconds,
        }
    }

    /// How long the line lies at or above a temperature [s].
    pub fn at_or_above(self, least_c: f64) -> f64 {
        let (cold, hot) = self.ends();
        if cold >= least_c {
            self.seconds
        } else if hot < least_c {
            0.0
        } else {
            self.seconds * (hot - least_c) / (hot - cold)
        }
    }
}

/// From one temperature to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The lowest that counts [degrees Celsius].
    pub least_c: f64,
    /// The highest that counts; infinite where a rule knows none.
    pub most_c: f64,
    /// True where the lowest itself is not enough ("exceeds").
    pub over: bool,
}

impl Band {
    /// At or above a temperature.
    pub const fn from(least_c: f64) -> Self {
        Self {
            least_c,
            most_c: f64::INFINITY,
            over: false,
        }
    }

    fn holds(self, temperature_c: f64) -> bool {
        let enough = if self.over {
            temperature_c > self.least_c
        } else {
            temperature_c >= self.least_c
        };
        enough && temperature_c <= self.most_c
    }
}

/// What of a piece lies in a band [s from its beginning].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Inside {
    /// Nothing.
    None,
    /// All.
    All,
    /// From, to.
    Part(f64, f64),
}

impl Inside {
    pub fn of(piece: Piece, band: Band) -> Self {
        let (cold, hot) = piece.ends();
        if band.holds(cold) && band.holds(hot) {
            return Self::All;
        }
        if hot < band.least_c || cold > band.most_c || hot <= cold {
            return Self::None;
        }
        let at = |temperature_c: f64| (temperature_c - cold) / (hot - cold) * piece.seconds;
        let first = at(band.least_c.max(cold));
        let last = if hot > band.most_c {
            at(band.most_c)
        } else {
            piece.seconds
        };
        if last <= first {
            // It touches the band at one point.
            return Self::None;
        }
        if piece.from_c <= piece.to_c {
            Self::Part(first, last)
        } else {
            Self::Part(piece.seconds - last, piece.seconds - first)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inside(from_c: f64, to_c: f64, band: Band) -> Inside {
        Inside::of(
            Piece {
                from_c,
                to_c,
                seconds: 100.0,
            },
            band,
        )
    }

    #[test]
    fn the_line_is_cut_where_it_crosses() {
        let hot = Band::from(55.0);
        assert_eq!(inside(55.0, 55.0, hot), Inside::All);
        assert_eq!(inside(54.9, 54.9, hot), Inside::None);
        assert_eq!(inside(50.0, 60.0, hot), Inside::Part(50.0, 100.0));
        assert_eq!(inside(60.0, 50.0, hot), Inside::Part(0.0, 50.0));
        assert_eq!(inside(50.0, 55.0, hot), Inside::None);
        let between = Band {
            most_c: 75.0,
            ..hot
        };
        assert_eq!(inside(50.0, 100.0, between), Inside::Part(10.0, 50.0));
        assert_eq!(inside(80.0, 80.0, between), Inside::None);
        assert_eq!(inside(75.0, 80.0, between), Inside::None);
        let over = Band { over: true, ..hot };
        assert_eq!(inside(55.0, 55.0, over), Inside::None);
        assert_eq!(inside(55.0, 60.0, over), Inside::Part(0.0, 100.0));
    }
}
