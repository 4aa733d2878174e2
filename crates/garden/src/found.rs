//! "Two buckets of wet leaves": a part as the keeper means it, and as the engine needs it.

use heapwright_catalogue::Catalogue;
use heapwright_quantity::{Amount, Unit};
use heapwright_terms::{Caution, Ingredient, Material, MaterialId, Part, PartAmount};

use crate::Garden;
use crate::error::FoundError;
use crate::ingredient::{self, Notice};
use crate::measures;
use crate::stated::{Custom, Stated};

/// What a part is made of.
#[derive(Clone, Debug, PartialEq)]
pub enum Stuff {
    /// A material of the catalogue or of the garden, as found and as stated.
    Known {
        /// Which one.
        material: MaterialId,
        /// Ids of the conditions it is in ("wet", "shredded").
        conditions: Vec<String>,
        /// What is stated outright of it.
        stated: Stated,
    },
    /// Something described outright.
    Custom(Custom),
}

/// A part as the keeper means it.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// What it is.
    pub stuff: Stuff,
    /// How much of it.
    pub amount: Amount,
}

/// A part as the engine needs it, and what to say of it.
#[derive(Clone, Debug, PartialEq)]
pub struct FoundPart {
    /// For the engine.
    pub part: Part,
    /// Name to show.
    pub name: String,
    /// The material, where it is a known one.
    pub material: Option<Material>,
    /// Ids of the conditions it is in.
    pub conditions: Vec<String>,
    /// How much was said.
    pub amount: Amount,
    /// How it was understood.
    pub notices: Vec<Notice>,
}

impl FoundPart {
    /// What to beware of with it.
    #[must_use]
    pub fn cautions(&self) -> &[Caution] {
        self.material
            .as_ref()
            .map_or(&[], |material| &material.cautions)
    }
}

impl Garden {
    /// The ingredient and name of some stuff.
    ///
    /// Fails on an unknown material, on one of which the catalogue has no
    /// figures, and on stated figures that cannot be.
    pub fn ingredient(
        &self,
        catalogue: &Catalogue,
        stuff: &Stuff,
        notices: &mut Vec<Notice>,
    ) -> Result<(Ingredient, String, Option<Material>), FoundError> {
        match stuff {
            Stuff::Custom(custom) => {
                let ingredient = ingredient::from_custom(catalogue, custom)?;
                Ok((ingredient, custom.name.trim().to_owned(), None))
            }
            Stuff::Known {
                material: id,
                conditions,
                stated,
            } => {
                let material =
                    self.material(catalogue, id)
                        .ok_or_else(|| FoundError::UnknownMaterial {
                            id: id.as_str().to_owned(),
                        })?;
                if material.moisture_wet_basis.is_none() && stated.moisture_wet_basis.is_none() {
                    return Err(FoundError::NoFigures {
                        name: material.name,
                    });
                }
                stated.checked()?;
                let ingredient = ingredient::from_material(
                    catalogue,
                    &material,
                    &distinct(conditions),
                    stated,
                    notices,
                )?;
                Ok((ingredient, material.name.clone(), Some(material)))
            }
        }
    }

    /// The amount in kilograms, or in fillings; fails for a measure that is not known.
    pub fn part_amount(
        &self,
        catalogue: &Catalogue,
        amount: &Amount,
    ) -> Result<PartAmount, FoundError> {
        measures::part_amount(catalogue, &self.calibrations, amount).ok_or_else(|| {
            match &amount.unit {
                Unit::Measure(id) => FoundError::UnknownMeasure { id: id.clone() },
                _ => unreachable!("masses and volumes are always known"),
            }
        })
    }

    /// A part for the engine.
    ///
    /// Fails as [`Garden::ingredient`] and [`Garden::part_amount`] do, and when an
    /// amount is a volume and no density is known.
    pub fn find(&self, catalogue: &Catalogue, found: &Found) -> Result<FoundPart, FoundError> {
        let mut notices = Vec::new();
        let (ingredient, name, material) =
            self.ingredient(catalogue, &found.stuff, &mut notices)?;
        let amount = self.part_amount(catalogue, &found.amount)?;
        if ingredient.bulk_density_kg_m3.is_none() && matches!(amount, PartAmount::VolumeM3 { .. })
        {
            return Err(FoundError::NoDensity);
        }
        let conditions = match &found.stuff {
            Stuff::Known { conditions, .. } => distinct(conditions),
            Stuff::Custom(_) => Vec::new(),
        };
        Ok(FoundPart {
            part: Part { ingredient, amount },
            name,
            material,
            conditions,
            amount: found.amount.clone(),
            notices,
        })
    }
}

/// Each once, in the order said: "wet, wet" is no wetter than "wet".
fn distinct(conditions: &[String]) -> Vec<String> {
    let mut each = Vec::new();
    for condition in conditions {
        if !each.contains(condition) {
            each.push(condition.clone());
        }
    }
    each
}
