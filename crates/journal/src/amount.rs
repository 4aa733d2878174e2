//! How much? As it was said, in the file's own words for units.

use heapwright_quantity::{Amount, MassUnit, Unit, VolumeUnit};
use serde::{Deserialize, Serialize};

use crate::check::{Problem, Text, Wrong, below};

/// A count of a unit, as it was said.
///
/// What one measure holds is not written here: a bucket that is calibrated later
/// tells more of what went in earlier.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AmountSaid {
    /// How many, above 0.
    pub count: f64,
    /// A unit of mass ("kg", "g", "t", "lb", "oz", "stone", "short ton", "long ton"), a unit of
    /// volume ("m³", "L", "dL", "cL", "mL", "US gal", "US qt", "US pt", "US cup", "US fl oz",
    /// "US bushel", "imp gal", "imp qt", "imp pt", "imp fl oz", "imp bushel", "cu in", "cu ft",
    /// "cu yd"), or the id of a measure ("bucket").
    pub unit: String,
}

impl AmountSaid {
    /// The amount, as all other parts of the program know it.
    #[must_use]
    pub fn amount(&self) -> Amount {
        let mass = MassUnit::ALL
            .into_iter()
            .find(|unit| unit.symbol() == self.unit);
        let volume = VolumeUnit::ALL
            .into_iter()
            .find(|unit| unit.symbol() == self.unit);
        Amount {
            count: self.count,
            unit: match (mass, volume) {
                (Some(unit), _) => Unit::Mass(unit),
                (None, Some(unit)) => Unit::Volume(unit),
                (None, None) => Unit::Measure(self.unit.clone()),
            },
        }
    }

    pub(crate) fn check(&self, field: &str) -> Result<(), Problem> {
        Text::id(field, &self.unit)?;
        let most = match self.amount().unit {
            Unit::Mass(unit) => Amount::MOST_KILOGRAMS / unit.kilograms(),
            Unit::Volume(unit) => Amount::MOST_CUBIC_METRES / unit.cubic_metres(),
            Unit::Measure(_) => Amount::MOST_MEASURES,
        };
        if self.count > 0.0 {
            below(field, self.count, most)
        } else {
            Err(Problem::new(field, Wrong::NotAbove0))
        }
    }
}

impl From<&Amount> for AmountSaid {
    fn from(amount: &Amount) -> Self {
        Self {
            count: amount.count,
            unit: match &amount.unit {
                Unit::Mass(unit) => unit.symbol().to_owned(),
                Unit::Volume(unit) => unit.symbol().to_owned(),
                Unit::Measure(id) => id.clone(),
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_comes_back_from_its_word() {
        let units = (MassUnit::ALL.into_iter().map(Unit::Mass))
            .chain(VolumeUnit::ALL.into_iter().map(Unit::Volume))
            .chain([Unit::Measure("bucket".to_owned())]);
        for unit in units {
            let amount = Amount { count: 2.5, unit };
            assert_eq!(AmountSaid::from(&amount).amount(), amount);
        }
    }
}
