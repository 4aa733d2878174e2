//! Which bed gets how much, what stops it from getting more, and what to know about it.

use heapwright_answers::spreading::{BedLimit, Binding};
use heapwright_answers::{BedAnswer, BedsAnswer, BedsNotice, BeforeUse, Covered};
use heapwright_catalogue::{CompostUse, UseKind};
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::{notices_of_commands as of_commands, spreading as texts};

use crate::hygiene::before_use_lines;

/// International inch, 1959: 0.0254 m.
const METRES_PER_INCH: f64 = 0.0254;

/// How far above a need nobody asks how far, share.
const MUCH_MET: f64 = 3.0;

/// What a plan of beds can and cannot tell.
#[must_use]
pub fn beds_limits(locale: Locale) -> &'static str {
    texts::beds_limits(locale)
}

/// What nitrogen over the years can and cannot tell.
#[must_use]
pub fn nitrogen_limits(locale: Locale) -> &'static str {
    texts::nitrogen_limits(locale)
}

/// How the limits of other uses stand.
#[must_use]
pub fn uses_limits(locale: Locale) -> &'static str {
    texts::uses_limits(locale)
}

/// What a limit is called.
#[must_use]
pub fn bed_limit_name(limit: BedLimit, locale: Locale) -> &'static str {
    match limit {
        BedLimit::FoodBed => texts::limit_food_bed(locale),
        BedLimit::Acid => texts::limit_acid(locale),
        BedLimit::Waiting => texts::limit_waiting(locale),
        BedLimit::Immature => texts::limit_immature(locale),
        BedLimit::RawUnknown => texts::limit_raw_unknown(locale),
        BedLimit::MaturityUnknown => texts::limit_maturity_unknown(locale),
        BedLimit::Salt => texts::limit_salt(locale),
        BedLimit::Phosphorus => texts::limit_phosphorus(locale),
        BedLimit::Nitrogen => texts::limit_nitrogen(locale),
        BedLimit::Depth => texts::limit_depth(locale),
    }
}

/// What stops a bed, in one or two words for a table.
#[must_use]
pub fn binding_name(binding: Binding, locale: Locale) -> &'static str {
    match binding {
        Binding::Limit(limit) => bed_limit_name(limit, locale),
        Binding::Supply => texts::stops_at_supply(locale),
        Binding::NeedMet => texts::stops_at_need_met(locale),
    }
}

/// What stops a bed, for a table: as [`binding_name`], and what earlier dressings did.
#[must_use]
pub fn stops_at(bed: &BedAnswer, locale: Locale) -> &'static str {
    if bed.is_fed_by_earlier() {
        texts::stops_at_earlier_dressings(locale)
    } else {
        binding_name(bed.share.binding, locale)
    }
}

/// A share of a need that is met: "130 %", and no more than it takes to see that it is too much.
#[must_use]
pub fn met_text(met: Option<f64>, locale: Locale) -> String {
    match met {
        None => "–".to_owned(),
        Some(met) if met > MUCH_MET => texts::MetOver {
            percent: MUCH_MET * 100.0,
        }
        .said(locale),
        Some(met) => texts::Met {
            percent: met * 100.0,
        }
        .said(locale),
    }
}

/// What stops a bed from getting more, as a sentence.
#[must_use]
pub fn binding_line(bed: &BedAnswer, locale: Locale) -> String {
    let share = &bed.share;
    let name = bed.asked.name.as_str();
    let gets_none = share.depth_m == 0.0;
    let depth = if share.depth_m > 0.0 {
        depth_text(share.depth_m, locale)
    } else {
        texts::none(locale).to_owned()
    };
    let depth = depth.as_str();
    let days = locale.significant(share.weighed.wait_days.unwrap_or(0.0), 3);
    let days = days.as_str();
    let earlier = share.weighed.carried.phosphorus_in_window_kg_m2 > 0.0;
    match share.binding {
        Binding::Supply => texts::BoundBySupply { bed: name }.said(locale),
        Binding::NeedMet if gets_none => texts::BoundByEarlier { bed: name }.said(locale),
        Binding::NeedMet => texts::BoundByNeed { bed: name, depth }.said(locale),
        Binding::Limit(limit) => match limit {
            BedLimit::FoodBed => texts::BoundByFoodBed { bed: name }.said(locale),
            BedLimit::Acid => texts::BoundByAcid { bed: name }.said(locale),
            BedLimit::Waiting => texts::BoundByWaiting { bed: name, days }.said(locale),
            BedLimit::Immature => texts::BoundByImmature { bed: name }.said(locale),
            BedLimit::RawUnknown => of_commands::BoundByRawUnknown { bed: name, days }.said(locale),
            BedLimit::MaturityUnknown => {
                of_commands::BoundByMaturityUnknown { bed: name }.said(locale)
            }
            BedLimit::Salt => texts::BoundBySalt { bed: name, depth }.said(locale),
            BedLimit::Phosphorus if earlier => {
                texts::BoundByPhosphorusWithEarlier { bed: name, depth }.said(locale)
            }
            BedLimit::Phosphorus => texts::BoundByPhosphorus { bed: name, depth }.said(locale),
            BedLimit::Nitrogen => texts::BoundByNitrogen { bed: name, depth }.said(locale),
            BedLimit::Depth if gets_none => texts::BoundByDepthBefore { bed: name }.said(locale),
            BedLimit::Depth if bed.asked.new_ground => {
                texts::BoundByDepthOnNewGround { bed: name, depth }.said(locale)
            }
            BedLimit::Depth => texts::BoundByDepth { bed: name, depth }.said(locale),
        },
    }
}

/// A depth in millimetres or inches: "5.2 mm".
#[must_use]
pub fn depth_text(depth_m: f64, locale: Locale) -> String {
    match locale.units {
        UnitSystem::Metric => {
            let depth_mm = depth_m * 1000.0;
            let digits = if depth_mm < 10.0 { 2 } else { 3 };
            texts::Millimetres {
                number: &locale.significant(depth_mm, digits),
            }
            .said(locale)
        }
        UnitSystem::UsCustomary => texts::Inches {
            number: &locale.significant(depth_m / METRES_PER_INCH, 2),
        }
        .said(locale),
    }
}

/// Said when a bed is described whose crop is not in the table of crops; `nearest` is the crop whose
/// name is most like it.
#[must_use]
pub fn crop_without_figures(crop: &str, nearest: Option<&str>, locale: Locale) -> String {
    match nearest {
        Some(nearest) => of_commands::CropWithoutFiguresLike { crop, nearest }.said(locale),
        None => of_commands::CropWithoutFigures { crop }.said(locale),
    }
}

/// What to know about a plan, as a sentence.
#[must_use]
pub fn beds_notice(notice: &BedsNotice, locale: Locale) -> String {
    let list = |beds: &[String]| locale.list(beds);
    let days_text = |days: f64| locale.significant(days, 3);
    match notice {
        BedsNotice::OffFoodBeds { because, beds } if beds.is_empty() => {
            followed(texts::off_food_beds_anywhere(locale), because, locale)
        }
        BedsNotice::OffFoodBeds { because, beds } => {
            let told = texts::OffFoodBeds { beds: &list(beds) }.said(locale);
            followed(&told, because, locale)
        }
        BedsNotice::DoubtfulOnFoodBeds { because, beds } => {
            let told = texts::DoubtfulOnFoodBeds { beds: &list(beds) }.said(locale);
            followed(&told, because, locale)
        }
        BedsNotice::CompostAssumed => of_commands::compost_assumed(locale).to_owned(),
        BedsNotice::PartlyAssumed { figures } => {
            let named = |figure: &&str| texts::CompostFigure { figure }.said(locale);
            let figures: Vec<String> = figures.iter().map(named).collect();
            texts::PartlyAssumed {
                figures: &locale.list(&figures),
            }
            .said(locale)
        }
        BedsNotice::DiluteExtract { times } => texts::DiluteExtract {
            times: &locale.significant(*times, 2),
        }
        .said(locale),
        BedsNotice::FedByEarlier { beds, off_food } => {
            let (count, beds) = (beds.len() as f64, &list(beds));
            if *off_food {
                texts::FedByEarlierOffFood { beds, count }.said(locale)
            } else {
                texts::FedByEarlier { beds, count }.said(locale)
            }
        }
        BedsNotice::VolumeEstimated => of_commands::volume_estimated(locale).to_owned(),
        BedsNotice::MaturityUnknown => of_commands::maturity_unknown(locale).to_owned(),
        BedsNotice::Immature => texts::immature(locale).to_owned(),
        BedsNotice::TiesUpNitrogen => texts::ties_up_nitrogen(locale).to_owned(),
        BedsNotice::RawUnknown { days, beds } if beds.is_empty() => of_commands::RawUnknown {
            days: &days_text(*days),
        }
        .said(locale),
        BedsNotice::RawUnknown { days, beds } => of_commands::RawUnknownOn {
            days: &days_text(*days),
            beds: &list(beds),
        }
        .said(locale),
        BedsNotice::NoCrop { beds } => texts::NoCrop { beds: &list(beds) }.said(locale),
        BedsNotice::CropUnknown { bed, crop } => {
            of_commands::CropUnknown { bed, crop }.said(locale)
        }
        BedsNotice::SaltUnknown { beds } => texts::SaltUnknown { beds: &list(beds) }.said(locale),
        BedsNotice::PhosphorusHigh { beds } => {
            texts::PhosphorusHigh { beds: &list(beds) }.said(locale)
        }
        BedsNotice::Wait { days, beds } => texts::Wait {
            beds: &list(beds),
            days: &days_text(*days),
        }
        .said(locale),
        BedsNotice::AboveYardstick { yardstick_depth_m } => texts::Yardstick {
            depth: &depth_text(*yardstick_depth_m, locale),
        }
        .said(locale),
        BedsNotice::Left { left_m3, off_food } => {
            let volume = &locale.volume(*left_m3);
            if *off_food {
                texts::LeftOverOffFood { volume }.said(locale)
            } else {
                texts::LeftOver { volume }.said(locale)
            }
        }
        BedsNotice::NotProven => texts::not_proven(locale).to_owned(),
    }
}

/// Said when compost was spread on a bed where food grows though something went in that never goes
/// on such beds.
#[must_use]
pub fn spread_on_food_bed(bed: &str, because: &[BeforeUse], locale: Locale) -> String {
    let told = texts::SpreadOnFoodBed { bed }.said(locale);
    followed(&told, because, locale)
}

/// A sentence, and those of what it is about.
fn followed(told: &str, because: &[BeforeUse], locale: Locale) -> String {
    let mut sentences = vec![told.to_owned()];
    sentences.extend(before_use_lines(because, locale));
    sentences.join(" ")
}

/// The whole plan in a line: how much goes out, to how many beds.
#[must_use]
pub fn beds_summary(answer: &BedsAnswer, locale: Locale) -> String {
    let given_m3 = answer.volume_m3 - answer.plan.shared.left_m3;
    let count = answer
        .beds
        .iter()
        .filter(|bed| bed.share.depth_m > 0.0)
        .count();
    texts::Summary {
        given: &locale.volume(given_m3),
        all: &locale.volume(answer.volume_m3),
        beds: count as f64,
    }
    .said(locale)
}

/// A layer on an area, as a sentence.
#[must_use]
pub fn covered_line(covered: &Covered, locale: Locale) -> String {
    texts::Covered {
        volume: &locale.volume(covered.volume_m3),
        area: &locale.significant(covered.area_m2, 4),
        depth: &depth_text(covered.depth_m, locale),
    }
    .said(locale)
}

/// A use of compost away from beds, in sentences.
///
/// - `called`: its name as the face shows it
/// - `here`: the most that fits the amount in question, where one was given
#[must_use]
pub fn use_line(use_of: &CompostUse, called: &str, here: Option<&str>, locale: Locale) -> String {
    let mut sentences = vec![use_limit_line(use_of, called, locale)];
    if let Some(most) = here {
        sentences.push(texts::HereAtMost { most }.said(locale));
    }
    if let Some((fine, coarse)) = use_of.sieve_mm {
        let sieve = texts::Sieve {
            fine: &locale.significant(fine, 2),
            coarse: &locale.significant(coarse, 2),
        };
        sentences.push(sieve.said(locale));
    }
    if use_of.needs_mature && use_of.limit.high > 0.0 {
        sentences.push(texts::mature_only(locale).to_owned());
    }
    if let Some(most) = use_of.conductivity_ds_m_most {
        let most = locale.significant(most, 2);
        sentences.push(texts::ConductivityAtMost { most: &most }.said(locale));
    }
    if let Some(most) = use_of.ph_most {
        let most = locale.significant(most, 2);
        sentences.push(texts::PhAtMost { most: &most }.said(locale));
    }
    sentences.push(use_of.advice.clone());
    sentences.join(" ")
}

/// The limits of a use: "Sowing: at most 30 %.", "Lawn: 3 to 12 mm."
fn use_limit_line(use_of: &CompostUse, called: &str, locale: Locale) -> String {
    let limit = use_of.limit;
    if limit.high == 0.0 {
        return texts::UseNone { use_: called }.said(locale);
    }
    let of = |value: f64| match use_of.kind {
        UseKind::ShareOfVolume => locale.significant(value * 100.0, 3),
        UseKind::Depth => locale.significant(value * 1000.0, 3),
    };
    let (low, high) = (of(limit.low), of(limit.high));
    let (low, high) = (low.as_str(), high.as_str());
    match (use_of.kind, limit.low == 0.0) {
        (UseKind::ShareOfVolume, true) => texts::UseShareAtMost { use_: called, high }.said(locale),
        (UseKind::ShareOfVolume, false) => texts::UseShare {
            use_: called,
            low,
            high,
        }
        .said(locale),
        (UseKind::Depth, true) => texts::UseDepthAtMost { use_: called, high }.said(locale),
        (UseKind::Depth, false) => texts::UseDepth {
            use_: called,
            low,
            high,
        }
        .said(locale),
    }
}
