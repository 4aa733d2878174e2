//! Stores: browns and other materials put by.

use serde::{Deserialize, Serialize};

use crate::amount::AmountSaid;
use crate::check::{Problem, Text, many};
use crate::id::EventId;

/// A material was put by.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StockPutBy {
    /// Id of the material.
    pub material: String,
    /// Ids of the conditions it is in.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conditions: Vec<String>,
    /// How much.
    pub amount: AmountSaid,
    /// In what it is handed out; as it was put by when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scoop: Option<AmountSaid>,
}

/// Something was taken from the stores, other than by a feed.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StockUsed {
    /// Id of the material.
    pub material: String,
    /// Ids of the conditions it is in.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conditions: Vec<String>,
    /// How much.
    pub amount: AmountSaid,
    /// The heap on which it went, if on one without being a feed, such as a cover.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heap: Option<EventId>,
}

/// The stores were counted: so much of a material is there.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StockCounted {
    /// Id of the material.
    pub material: String,
    /// Ids of the conditions it is in.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conditions: Vec<String>,
    /// How much; nothing when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amount: Option<AmountSaid>,
}

fn check(
    material: &str,
    conditions: &[String],
    amount: Option<&AmountSaid>,
) -> Result<(), Problem> {
    Text::id("material", material)?;
    many("conditions", conditions, 0, 10)?;
    for condition in conditions {
        Text::id("conditions", condition)?;
    }
    amount.map_or(Ok(()), |amount| amount.check("amount"))
}

impl StockPutBy {
    pub(super) fn check(&self) -> Result<(), Problem> {
        check(&self.material, &self.conditions, Some(&self.amount))?;
        self.scoop
            .as_ref()
            .map_or(Ok(()), |scoop| scoop.check("scoop"))
    }
}

impl StockUsed {
    pub(super) fn check(&self) -> Result<(), Problem> {
        check(&self.material, &self.conditions, Some(&self.amount))
    }
}

impl StockCounted {
    pub(super) fn check(&self) -> Result<(), Problem> {
        check(&self.material, &self.conditions, self.amount.as_ref())
    }
}
