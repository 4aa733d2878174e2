//! Which bed gets how much, what stops it from getting more, and what to know about it.

use heapwright_answers::spreading::{BedLimit, Binding};
use heapwright_answers::{BedAnswer, BedsAnswer, BedsNotice, Covered};
use heapwright_catalogue::{CompostUse, UseKind};
use heapwright_quantity::{UnitSystem, significant, volume_text};
use heapwright_texts::Locale;

/// International inch, 1959: 0.0254 m.
const METRES_PER_INCH: f64 = 0.0254;

/// How far above a need nobody asks how far, share.
const MUCH_MET: f64 = 3.0;

/// What a plan of beds can and cannot tell.
pub const BEDS_LIMITS: &str = "The limits hold at typical figures; compost differs from heap to heap. A soil test, an analysis of your compost and local rules on nutrients and runoff go before this plan. Keep compost off frozen or sodden ground.";

/// What nitrogen over the years can and cannot tell.
pub const NITROGEN_LIMITS: &str = "Trials differ widely: take the range seriously, and do not drop other feeding on the strength of compost alone.";

/// How the limits of other uses stand.
pub const USES_LIMITS: &str = "Sieved and mature compost only where it says so. A conductivity is that of the saturated paste; other methods read lower.";

/// What a limit is called.
#[must_use]
pub fn bed_limit_name(limit: BedLimit) -> &'static str {
    match limit {
        BedLimit::Acid => "acid soil",
        BedLimit::Waiting => "waiting time",
        BedLimit::Immature => "immature compost",
        BedLimit::RawUnknown => "raw matter not ruled out",
        BedLimit::MaturityUnknown => "maturity not shown",
        BedLimit::Salt => "salt",
        BedLimit::Phosphorus => "phosphorus",
        BedLimit::Nitrogen => "nitrogen",
        BedLimit::Depth => "depth",
    }
}

/// What stops a bed, in one or two words for a table.
#[must_use]
pub fn binding_name(binding: Binding) -> &'static str {
    match binding {
        Binding::Limit(limit) => bed_limit_name(limit),
        Binding::Supply => "no more compost",
        Binding::NeedMet => "need met",
    }
}

/// What stops a bed, for a table: as [`binding_name`], and what earlier dressings did.
#[must_use]
pub fn stops_at(bed: &BedAnswer) -> &'static str {
    if bed.is_fed_by_earlier() {
        "earlier dressings"
    } else {
        binding_name(bed.share.binding)
    }
}

/// A share of a need that is met: "130 %", and no more than it takes to see that it is too much.
#[must_use]
pub fn met_text(met: Option<f64>) -> String {
    match met {
        None => "–".to_owned(),
        Some(met) if met > MUCH_MET => {
            format!("over {}\u{a0}%", significant(MUCH_MET * 100.0, 3))
        }
        Some(met) => format!("{:.0}\u{a0}%", met * 100.0),
    }
}

/// What stops a bed from getting more, as a sentence.
#[must_use]
pub fn binding_line(bed: &BedAnswer, locale: Locale) -> String {
    let name = &bed.asked.name;
    let depth = if bed.share.depth_m > 0.0 {
        depth_text(bed.share.depth_m, locale)
    } else {
        "none".to_owned()
    };
    let earlier = bed.share.weighed.carried.phosphorus_in_window_kg_m2 > 0.0;
    match bed.share.binding {
        Binding::Supply => format!("{name}: all compost is given out; it could take more."),
        Binding::NeedMet if bed.share.depth_m == 0.0 => {
            format!("{name}: none, for earlier dressings meet its need.")
        }
        Binding::NeedMet => format!(
            "{name}: with {depth} its need is met, and more would only build up phosphorus."
        ),
        Binding::Limit(limit) => match limit {
            BedLimit::Acid => format!(
                "{name}: none, for its crop needs acid soil and home compost is mostly alkaline; give leaf mould."
            ),
            BedLimit::Waiting => format!(
                "{name}: none, for raw manure or the like went into the compost and the harvest comes before the {} days of waiting are over.",
                locale.significant(bed.share.weighed.wait_days.unwrap_or(0.0), 3)
            ),
            BedLimit::Immature => format!(
                "{name}: none yet, for the compost is not mature and seeds or seedlings come soon; give it eight weeks, or let it cure."
            ),
            BedLimit::RawUnknown => format!(
                "{name}: none, for nobody said whether raw manure or the like went into the compost, and the harvest comes before the {} days of waiting are over; say --no-raw if none did.",
                locale.significant(bed.share.weighed.wait_days.unwrap_or(0.0), 3)
            ),
            BedLimit::MaturityUnknown => format!(
                "{name}: none yet, for seeds or seedlings come within eight weeks and no tests show that the compost is mature; test it with `heapwright test`, or say --mature."
            ),
            BedLimit::Salt => {
                format!("{name}: {depth}, for more would pass the salt that its crop bears.")
            }
            BedLimit::Phosphorus if earlier => format!(
                "{name}: {depth}, for with earlier dressings more would bring more phosphorus than its crops take away in three years."
            ),
            BedLimit::Phosphorus => format!(
                "{name}: {depth}, for more would bring more phosphorus than its crops take away in three years."
            ),
            BedLimit::Nitrogen => format!(
                "{name}: {depth}, for more would bring more nitrogen than its crop can use this year."
            ),
            BedLimit::Depth if bed.share.depth_m == 0.0 => {
                format!("{name}: none, for it had as much as is usual in a year already.")
            }
            BedLimit::Depth => format!(
                "{name}: {depth}, the deepest that is usual on {} in a year.",
                if bed.asked.new_ground {
                    "new ground"
                } else {
                    "a bed that was fed before"
                }
            ),
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
            format!("{}\u{a0}mm", locale.significant(depth_mm, digits))
        }
        UnitSystem::UsCustomary => {
            format!(
                "{}\u{a0}in",
                locale.significant(depth_m / METRES_PER_INCH, 2)
            )
        }
    }
}

/// What to know about a plan, as a sentence.
#[must_use]
pub fn beds_notice(notice: &BedsNotice, locale: Locale) -> String {
    let list = |beds: &[String]| beds.join(", ");
    match notice {
        BedsNotice::CompostAssumed => "The compost was never analysed: usual figures with wide ranges are taken; a laboratory's figures, given with `heapwright test`, narrow them.".to_owned(),
        BedsNotice::PartlyAssumed { figures } => format!(
            "Usual figures with wide ranges are taken for what was not measured of the compost: {}.",
            figures.join(", ")
        ),
        BedsNotice::DiluteExtract { times } => format!(
            "The compost's conductivity may be that of a dilute extract, which reads less than the saturation extract and cannot be converted reliably: for salt it counts as {} times as much, and may be more.",
            locale.significant(*times, 2)
        ),
        BedsNotice::FedByEarlier { beds } => format!(
            "{} had as much from earlier dressings as {} none this year: lay leaf mould or another poor mulch there, and keep the compost for pots or give it away.",
            list(beds),
            if beds.len() == 1 {
                "it bears, so it gets"
            } else {
                "they bear, so they get"
            }
        ),
        BedsNotice::VolumeEstimated => "How much compost there is was estimated from what went in; say it with --litres once you have measured it.".to_owned(),
        BedsNotice::MaturityUnknown => "No tests show that the compost is mature: as with immature compost, let eight weeks pass before anything is sown or planted in it; `heapwright ready` tells what is missing.".to_owned(),
        BedsNotice::Immature => "The compost is not mature: spread it four to eight weeks before anything is sown or planted, or lay it on top as a mulch.".to_owned(),
        BedsNotice::TiesUpNitrogen => "As rich in carbon as it is, this compost holds nitrogen back in its first year: feed hungry crops otherwise, or use it as a mulch.".to_owned(),
        BedsNotice::RawUnknown { days, beds } => {
            let which = if beds.is_empty() {
                String::new()
            } else {
                format!(" ({})", list(beds))
            };
            format!(
                "Nobody said whether manure, droppings or meat went in: what touches the soil waits {} days between spreading and harvest{which} unless you say --no-raw; if they did, say --held-raw.",
                locale.significant(*days, 3)
            )
        }
        BedsNotice::NoCrop { beds } => {
            format!("No crop is known for {}: taken as medium feeders.", list(beds))
        }
        BedsNotice::CropUnknown { bed, crop } => format!(
            "{bed}: \"{crop}\" is not in the table of crops, so it is taken as a medium feeder; say --feeding when you describe the bed."
        ),
        BedsNotice::SaltUnknown { beds } => format!(
            "How much salt the crops bear is not tabulated for {}: salt sets no limit there.",
            list(beds)
        ),
        BedsNotice::PhosphorusHigh { beds } => format!(
            "The soil of {} holds more phosphorus than crops use: only what one year's crop takes away is given, and leaf mould would be better.",
            list(beds)
        ),
        BedsNotice::Wait { days, beds } => format!(
            "Raw manure or the like went into the compost: on {} wait {} days between spreading and harvest, or grow what is cooked or not eaten.",
            list(beds),
            locale.significant(*days, 3)
        ),
        BedsNotice::AboveYardstick { yardstick_depth_m } => format!(
            "As a yardstick, not a rule for gardens: German farms may spread {} of this compost in a year on average.",
            depth_text(*yardstick_depth_m, locale)
        ),
        BedsNotice::Left { left_m3 } => format!(
            "{} are left over: keep them under cover for pots or next year.",
            locale.volume(*left_m3)
        ),
        BedsNotice::NotProven => "The sharing could not be computed to the end: the plan keeps to every limit, but a fairer one may exist.".to_owned(),
    }
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
    let beds = if count == 1 { "bed" } else { "beds" };
    format!(
        "{} of {} go to {count} {beds}.",
        locale.volume(given_m3),
        locale.volume(answer.volume_m3)
    )
}

/// A layer on an area, as a sentence.
#[must_use]
pub fn covered_line(covered: &Covered, locale: Locale) -> String {
    format!(
        "{} on {}\u{a0}m² lie {} deep.",
        locale.volume(covered.volume_m3),
        locale.significant(covered.area_m2, 4),
        depth_text(covered.depth_m, locale)
    )
}

/// A use of compost away from beds, in sentences.
///
/// - `called`: its name as the face shows it
/// - `here`: the most that fits the amount in question, where one was given
#[must_use]
pub fn use_line(use_of: &CompostUse, called: &str, here: Option<&str>) -> String {
    let mut line = format!("{called}: {}.", use_limit_text(use_of));
    if let Some(most) = here {
        line += &format!(" Here at most {most}.");
    }
    if let Some((fine, coarse)) = use_of.sieve_mm {
        line += &format!(
            " Sieve {} to {}\u{a0}mm.",
            significant(fine, 2),
            significant(coarse, 2)
        );
    }
    if use_of.needs_mature && use_of.limit.high > 0.0 {
        line += " Mature only.";
    }
    if let Some(most) = use_of.conductivity_ds_m_most {
        line += &format!(" Conductivity at most {}\u{a0}dS/m.", significant(most, 2));
    }
    if let Some(most) = use_of.ph_most {
        line += &format!(" pH at most {}.", significant(most, 2));
    }
    format!("{line} {}", use_of.advice)
}

/// The limits of a use: "at most 30 % of the mix", "3 to 12 mm".
#[must_use]
fn use_limit_text(use_of: &CompostUse) -> String {
    let limit = use_of.limit;
    let of = |value: f64| match use_of.kind {
        UseKind::ShareOfVolume => significant(value * 100.0, 3),
        UseKind::Depth => significant(value * 1000.0, 3),
    };
    let unit = match use_of.kind {
        UseKind::ShareOfVolume => "%",
        UseKind::Depth => "mm",
    };
    if limit.high == 0.0 {
        "none".to_owned()
    } else if limit.low == 0.0 {
        format!("at most {}\u{a0}{unit}", of(limit.high))
    } else {
        format!("{} to {}\u{a0}{unit}", of(limit.low), of(limit.high))
    }
}
