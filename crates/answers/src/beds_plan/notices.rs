//! What is there to know about a plan of beds?

use heapwright_catalogue::Spreading;
use heapwright_engine::spreading::bed::{BedLimit, Maturity};
use heapwright_engine::spreading::compost::Compost;
use heapwright_engine::spreading::plan::{Binding, Plan};

use super::{BedAnswer, BedsQuestion, compost_of_tables, off_food};
use crate::before_use::BeforeUse;

/// What to know about an answer.
#[derive(Clone, Debug, PartialEq)]
pub enum BedsNotice {
    /// Something went in that never goes on beds where food grows.
    OffFoodBeds {
        /// What that was; empty where nobody said more.
        because: Vec<BeforeUse>,
        /// Names of the beds that get nothing for it.
        beds: Vec<String>,
    },
    /// Something went in whose advice is to be seen to before it goes on beds where food grows.
    DoubtfulOnFoodBeds {
        /// What that was.
        because: Vec<BeforeUse>,
        /// Names of the beds that would get some.
        beds: Vec<String>,
    },
    /// The compost was never analysed: usual figures with wide ranges are taken.
    CompostAssumed,
    /// Some of it was: usual figures with wide ranges are taken for the rest.
    PartlyAssumed {
        /// What was not measured.
        figures: Vec<&'static str>,
    },
    /// The conductivity may be that of a dilute extract: the saturation extract is taken as more.
    DiluteExtract {
        /// So many times as much.
        times: f64,
    },
    /// How much there is was estimated from what went in.
    VolumeEstimated,
    /// It was never tested for maturity.
    MaturityUnknown,
    /// It is not mature.
    Immature,
    /// It holds nitrogen back in the first year.
    TiesUpNitrogen,
    /// Nobody said whether raw manure or the like went in: what touches soil waits.
    RawUnknown {
        /// How many days between spreading and harvest.
        days: f64,
        /// Names of the beds that wait.
        beds: Vec<String>,
    },
    /// Beds without a crop, taken as medium feeders.
    NoCrop {
        /// Their names.
        beds: Vec<String>,
    },
    /// A crop that is not known, taken as a medium feeder.
    CropUnknown {
        /// Name of the bed.
        bed: String,
        /// What grows there.
        crop: String,
    },
    /// Crops whose bearing of salt is not tabulated.
    SaltUnknown {
        /// Names of the beds.
        beds: Vec<String>,
    },
    /// Soil that holds more phosphorus than crops use.
    PhosphorusHigh {
        /// Names of the beds.
        beds: Vec<String>,
    },
    /// Days between spreading and harvest, for what held raw matter.
    Wait {
        /// How many.
        days: f64,
        /// Names of the beds.
        beds: Vec<String>,
    },
    /// A layer deeper than the German farm rule allows in a year; it does not bind gardens.
    AboveYardstick {
        /// The rule's depth [m].
        yardstick_depth_m: f64,
    },
    /// Beds that get nothing, for they had as much from earlier dressings as they bear.
    FedByEarlier {
        /// Their names.
        beds: Vec<String>,
        /// True when what is left may not go where food grows, nor to others.
        off_food: bool,
    },
    /// Some compost is left over.
    Left {
        /// How much [m3].
        left_m3: f64,
        /// True when it may not go where food grows.
        off_food: bool,
    },
    /// The programme could not be solved to the end.
    NotProven,
}

/// Less than this is not worth a word: a tenth of a litre.
const LEFT_M3: f64 = 1e-4;

/// What to know about the answer.
pub(super) fn tell(
    spreading: &Spreading,
    question: &BedsQuestion,
    beds: &[BedAnswer],
    plan: &Plan,
    yardstick_depth_m: f64,
    notices: &mut Vec<BedsNotice>,
) {
    let compost = &question.compost;
    let names = |which: &dyn Fn(&BedAnswer) -> bool| -> Vec<String> {
        beds.iter()
            .filter(|bed| which(bed))
            .map(|bed| bed.asked.name.clone())
            .collect()
    };
    let off_food = &compost.off_food;
    let is_off = off_food.is_off;
    if is_off {
        // What can hurt people comes before all else.
        let notice = BedsNotice::OffFoodBeds {
            because: off_food.never.clone(),
            beds: names(&|bed| bed.binding() == Binding::Limit(BedLimit::FoodBed)),
        };
        notices.insert(0, notice);
    }
    let mut about = |beds: Vec<String>, notice: &dyn Fn(Vec<String>) -> BedsNotice| {
        if !beds.is_empty() {
            notices.push(notice(beds));
        }
    };
    about(
        names(&|bed| bed.asked.crop.is_none() && bed.asked.feeding.is_none()),
        &|beds| BedsNotice::NoCrop { beds },
    );
    about(
        names(&|bed| bed.crop.as_ref().is_some_and(|crop| crop.salt.is_none())),
        &|beds| BedsNotice::SaltUnknown { beds },
    );
    let high = spreading.range("phosphorus.high_soil").typical;
    about(
        names(&|bed| bed.asked.soil.phosphorus.is_some_and(|found| found > high)),
        &|beds| BedsNotice::PhosphorusHigh { beds },
    );
    about(names(&BedAnswer::is_fed_by_earlier), &|beds| {
        BedsNotice::FedByEarlier {
            beds,
            off_food: is_off,
        }
    });
    let gets_some = |bed: &BedAnswer| bed.share.depth_m > 0.0;
    if !off_food.doubtful.is_empty() {
        about(
            names(&|bed| {
                gets_some(bed) && off_food::is_for_food(spreading, bed.asked.crop.as_deref())
            }),
            &|beds| BedsNotice::DoubtfulOnFoodBeds {
                because: off_food.doubtful.clone(),
                beds,
            },
        );
    }
    for key in ["waiting.touching", "waiting.not_touching"] {
        let days = spreading.range(key).typical;
        about(
            names(&|bed| {
                compost.held_raw.is_some()
                    && gets_some(bed)
                    && bed.share.weighed.wait_days == Some(days)
            }),
            &|beds| BedsNotice::Wait { days, beds },
        );
    }
    let waiting = names(&|bed| bed.share.weighed.wait_days.is_some());
    let mut when = |is: bool, notice: BedsNotice| {
        if is {
            notices.push(notice);
        }
    };
    when(!compost.is_measured, BedsNotice::CompostAssumed);
    let figures = assumed(spreading, &compost.compost);
    let salt_is_measured = !figures.contains(&"salt");
    when(
        compost.is_measured && !figures.is_empty(),
        BedsNotice::PartlyAssumed { figures },
    );
    when(
        compost.is_dilute_extract
            && (salt_is_measured
                || beds
                    .iter()
                    .any(|bed| bed.binding() == Binding::Limit(BedLimit::Salt))),
        BedsNotice::DiluteExtract {
            times: spreading.range("salt.over_dilute").typical,
        },
    );
    when(question.volume_is_estimated, BedsNotice::VolumeEstimated);
    when(
        compost.maturity == Maturity::Unknown,
        BedsNotice::MaturityUnknown,
    );
    when(compost.maturity == Maturity::Immature, BedsNotice::Immature);
    when(
        compost.held_raw.is_none(),
        BedsNotice::RawUnknown {
            days: spreading.range("waiting.touching").typical,
            beds: waiting,
        },
    );
    when(
        plan.brought_per_m3.nitrogen_first_year.value < 0.0,
        BedsNotice::TiesUpNitrogen,
    );
    when(
        beds.iter()
            .any(|bed| bed.share.depth_m > yardstick_depth_m * 1.05),
        BedsNotice::AboveYardstick { yardstick_depth_m },
    );
    let left_m3 = plan.shared.left_m3;
    when(
        left_m3 > LEFT_M3,
        BedsNotice::Left {
            left_m3,
            off_food: is_off,
        },
    );
    when(!plan.shared.proven, BedsNotice::NotProven);
}

/// What of a compost was not measured, as it is called.
fn assumed(spreading: &Spreading, compost: &Compost) -> Vec<&'static str> {
    let usual = compost_of_tables(spreading).compost;
    [
        (
            compost.nitrogen_dry_basis == usual.nitrogen_dry_basis,
            "nitrogen",
        ),
        (
            compost.phosphorus_dry_basis == usual.phosphorus_dry_basis,
            "phosphorus",
        ),
        (
            compost.potassium_dry_basis == usual.potassium_dry_basis,
            "potassium",
        ),
        (compost.conductivity_ds_m == usual.conductivity_ds_m, "salt"),
        (
            compost.moisture_wet_basis == usual.moisture_wet_basis,
            "moisture",
        ),
    ]
    .into_iter()
    .filter_map(|(is_usual, name)| is_usual.then_some(name))
    .collect()
}
