//! Which sources stand behind what stops a bed?

use heapwright_catalogue::Spreading;
use heapwright_engine::spreading::bed::BedLimit;
use heapwright_engine::spreading::plan::Binding;

use super::BedAnswer;

impl BedAnswer {
    /// Keys of the sources behind what stops it from getting more, in the order of the tables;
    /// none where the compost ran out, for that is no figure of the trade, nor where it was only said
    /// that it does not go on food beds.
    #[must_use]
    pub fn binding_source_keys(&self, spreading: &Spreading) -> Vec<String> {
        let crop = self.crop.iter().flat_map(|crop| &crop.source_keys);
        let figures = |wanted: &[&str]| -> Vec<&String> {
            spreading
                .figures()
                .iter()
                .filter(|figure| wanted.contains(&figure.key.as_str()))
                .flat_map(|figure| &figure.source_keys)
                .collect()
        };
        let group = self.group.source_keys.iter();
        let keys: Vec<&String> = match self.share.binding {
            Binding::Supply => Vec::new(),
            Binding::NeedMet => group.collect(),
            Binding::Limit(limit) => match limit {
                BedLimit::FoodBed => self.off_food_source_keys.iter().collect(),
                BedLimit::Acid => crop.collect(),
                BedLimit::Waiting | BedLimit::RawUnknown => {
                    figures(&["waiting.touching", "waiting.not_touching"])
                }
                BedLimit::Immature | BedLimit::MaturityUnknown => {
                    figures(&["immature.before_sowing"])
                }
                BedLimit::Salt => crop.chain(figures(&["compost.conductivity"])).collect(),
                BedLimit::Phosphorus => group
                    .chain(figures(&["phosphorus.window", "phosphorus.long_run"]))
                    .collect(),
                BedLimit::Nitrogen => group.chain(figures(&["nitrogen.first_year"])).collect(),
                BedLimit::Depth if self.asked.new_ground => figures(&["depth.new_ground"]),
                BedLimit::Depth => figures(&["depth.established"]),
            },
        };
        let mut found: Vec<String> = Vec::new();
        for key in keys {
            if !found.contains(key) {
                found.push(key.clone());
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use heapwright_engine::spreading::bed::Soil;

    use super::*;
    use crate::{BedAsked, BedsQuestion, beds_plan, compost_of_tables};

    fn planned(volume_m3: f64, new_ground: bool) -> BedAnswer {
        let spreading = Spreading::built_in();
        let question = BedsQuestion {
            beds: vec![BedAsked {
                name: "By the wall".to_owned(),
                area_m2: 4.0,
                crop: Some("tomatoes".to_owned()),
                feeding: None,
                new_ground,
                soil: Soil::default(),
                sown_in_days: None,
                harvest_in_days: None,
                dressings: Vec::new(),
            }],
            compost: compost_of_tables(spreading),
            volume_m3,
            volume_is_estimated: false,
        };
        beds_plan(spreading, &question).unwrap().beds.remove(0)
    }

    #[test]
    fn every_limit_has_a_source_and_running_out_has_none() {
        let spreading = Spreading::built_in();
        let mut bed = planned(10.0, false);
        for limit in [
            BedLimit::Acid,
            BedLimit::Waiting,
            BedLimit::RawUnknown,
            BedLimit::Immature,
            BedLimit::MaturityUnknown,
            BedLimit::Salt,
            BedLimit::Phosphorus,
            BedLimit::Nitrogen,
            BedLimit::Depth,
        ] {
            bed.share.binding = Binding::Limit(limit);
            assert!(!bed.binding_source_keys(spreading).is_empty(), "{limit:?}");
        }
        bed.share.binding = Binding::Supply;
        assert!(bed.binding_source_keys(spreading).is_empty());
    }

    #[test]
    fn what_keeps_compost_off_food_beds_has_the_sources_of_its_caution() {
        let spreading = Spreading::built_in();
        let mut bed = planned(10.0, false);
        bed.share.binding = Binding::Limit(BedLimit::FoodBed);
        assert!(bed.binding_source_keys(spreading).is_empty());
        bed.off_food_source_keys = vec!["SOMEWHERE".to_owned()];
        assert_eq!(bed.binding_source_keys(spreading), ["SOMEWHERE"]);
    }

    #[test]
    fn the_depth_of_new_ground_has_a_source_of_its_own() {
        let spreading = Spreading::built_in();
        let sources = |new_ground| {
            let mut bed = planned(10.0, new_ground);
            bed.share.binding = Binding::Limit(BedLimit::Depth);
            bed.binding_source_keys(spreading)
        };
        assert_ne!(sources(true), sources(false));
    }
}
