//! What does each published rule ask, and how much of it is done?
//!
//! Times, temperatures and turnings stand here as the rules give them, each with its source. Where a
//! rule does not say whether its time may be broken, our reading stands beside it ([`Breaks`]).

use super::line::Band;

const HOUR_S: f64 = 3600.0;
const DAY_S: f64 = 24.0 * HOUR_S;
/// A break that a turning explains, or that "as continuous as possible" lets pass, is at most this
/// long [s]: the longest gap between readings that is credited at all. Our reading, in no rule.
pub(super) const BREAK_S: f64 = DAY_S;
/// All breaks within a hold are together at most this share of what it asks. Our reading, in no rule:
/// more would make an hour of heat a day into days of it.
const BREAKS_SHARE: f64 = 0.1;
/// The same where a rule asks for turnings itself, each of which cools the heap. Our reading too.
const BREAKS_SHARE_TURNED: f64 = 0.2;

/// How the heap is kept, as far as rules tell heaps apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// In a closed vessel, or not turned and covered all over.
    Static,
    /// Turned.
    Turned,
}

/// For which heaps a rule is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhichMethod {
    /// For both kinds.
    Any,
    /// For one.
    Only(Method),
}

/// Whether the time of a rule may be broken. What is below the temperature never counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Breaks {
    /// No: it must be held in one stretch.
    None,
    /// No, and a turning ends it too: the rule is for heaps that are left as they lie.
    Untouched,
    /// When no moment of the break lies farther than is allowed at a time from a turning: turning,
    /// which these rules ask for or allow, cools a heap.
    AtTurns(Allowed),
    /// Anywhere: "as continuous as possible".
    UpTo(Allowed),
    /// Yes: the hours are added up.
    Any,
}

/// How long a hold may be broken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowed {
    /// At a time [s].
    pub each_s: f64,
    /// All breaks together, as a share of the time that is asked.
    pub of_hold: f64,
}

/// What a rule asks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Need {
    /// So much time at the temperature, with so many turnings within it.
    Hold {
        /// How long [s].
        seconds: f64,
        /// Whether it may be broken.
        breaks: Breaks,
        /// How many turnings.
        turns: u32,
        /// How far apart they must lie to count [s].
        apart_s: f64,
    },
    /// So much time in one stretch, and within some stretch of that length so much above another
    /// temperature.
    HoldWithPeak {
        /// How long [s].
        seconds: f64,
        /// The other band.
        peak: Band,
        /// How long in it [s].
        peak_seconds: f64,
    },
    /// So many turnings, each after so much time in one stretch since the last, which ended at most
    /// a day before the turning.
    BeforeEachTurn {
        /// How long [s].
        seconds: f64,
        /// How many turnings.
        turns: u32,
    },
}

/// What a rule asks of the vessel, which no thermometer shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Condition {
    /// A closed vessel.
    ClosedVessel,
    /// A closed vessel, or insulation all over, so that the whole mass is that hot.
    ClosedOrCovered,
}

/// A published rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// What it is called in tables and answers.
    pub id: &'static str,
    /// For which heaps.
    pub method: WhichMethod,
    /// At which temperature.
    pub band: Band,
    /// What it asks.
    pub need: Need,
    /// What it asks of the vessel.
    pub condition: Option<Condition>,
}

impl Rule {
    /// True when the rule is written for such a heap.
    #[must_use]
    pub fn applies_to(&self, method: Method) -> bool {
        match self.method {
            WhichMethod::Any => true,
            WhichMethod::Only(only) => only == method,
        }
    }

    /// How many turnings it asks.
    #[must_use]
    pub fn turns(&self) -> u32 {
        match self.need {
            Need::Hold { turns, .. } | Need::BeforeEachTurn { turns, .. } => turns,
            Need::HoldWithPeak { .. } => 0,
        }
    }
}

const STATIC: WhichMethod = WhichMethod::Only(Method::Static);
const TURNED: WhichMethod = WhichMethod::Only(Method::Turned);

const fn hold(id: &'static str, method: WhichMethod, least_c: f64, days: f64) -> Rule {
    Rule {
        id,
        method,
        band: Band::from(least_c),
        need: Need::Hold {
            seconds: days * DAY_S,
            breaks: match method {
                WhichMethod::Only(Method::Static) => Breaks::Untouched,
                _ => Breaks::None,
            },
            turns: 0,
            apart_s: 0.0,
        },
        condition: match method {
            WhichMethod::Only(Method::Static) => Some(Condition::ClosedOrCovered),
            _ => None,
        },
    }
}

/// The same, with what lets it be broken.
const fn broken(rule: Rule, by: Breaks) -> Rule {
    match rule.need {
        Need::Hold {
            seconds,
            turns,
            apart_s,
            ..
        } => Rule {
            need: Need::Hold {
                seconds,
                breaks: by,
                turns,
                apart_s,
            },
            ..rule
        },
        _ => rule,
    }
}

/// The same, with turnings.
const fn turned(rule: Rule, count: u32, apart_s: f64) -> Rule {
    match rule.need {
        Need::Hold {
            seconds, breaks, ..
        } => Rule {
            need: Need::Hold {
                seconds,
                breaks,
                turns: count,
                apart_s,
            },
            ..rule
        },
        _ => rule,
    }
}

const AT_TURNS: Breaks = Breaks::AtTurns(Allowed {
    each_s: BREAK_S,
    of_hold: BREAKS_SHARE,
});
const TURNINGS_ASKED: Breaks = Breaks::AtTurns(Allowed {
    each_s: BREAK_S,
    of_hold: BREAKS_SHARE_TURNED,
});
const CONTINUOUS: Breaks = Breaks::UpTo(Allowed {
    each_s: BREAK_S,
    of_hold: BREAKS_SHARE,
});

/// 131 to 170 degrees Fahrenheit.
/// From 7 CFR 205.203(c)(2), in the table of sources as NOP-205.203.
const ORGANIC: Band = Band {
    least_c: 55.0,
    // 170 degrees Fahrenheit: (170 - 32) / 1.8.
    most_c: 230.0 / 3.0,
    over: false,
};

/// Every rule, in the order in which it is shown.
///
/// Source: EPA503-B for `us_psrp`, `us_pfrp_static`, `us_pfrp_turned`
/// From NOP-205.203 for `us_organic_static`, `us_organic_turned`
/// Source: EU142-V for `eu_70c_1h`
/// Source: `EU1009m` for `eu_fpr_55`, `eu_fpr_60`, `eu_fpr_65`, `eu_fpr_70`
/// Source: BIOABFV22 for `de_55`, `de_60`, `de_65`
/// Source: UK-ABPR06 for `uk_closed_60`, `uk_windrow_60`
/// Source: `CCME05m` for `ca_static`, `ca_turned`
/// Source: `AS4454m` for `au_standard`, `au_high_risk`
/// Source: `WHO06m` for `who_50`
pub const RULES: [Rule; 20] = [
    Rule {
        id: "us_psrp",
        method: WhichMethod::Any,
        band: Band::from(40.0),
        need: Need::HoldWithPeak {
            seconds: 5.0 * DAY_S,
            // The rule says "exceeds".
            peak: Band {
                least_c: 55.0,
                most_c: f64::INFINITY,
                over: true,
            },
            peak_seconds: 4.0 * HOUR_S,
        },
        condition: None,
    },
    hold("us_pfrp_static", STATIC, 55.0, 3.0),
    turned(
        broken(hold("us_pfrp_turned", TURNED, 55.0, 15.0), TURNINGS_ASKED),
        5,
        0.0,
    ),
    Rule {
        band: ORGANIC,
        ..hold("us_organic_static", STATIC, 55.0, 3.0)
    },
    Rule {
        band: ORGANIC,
        ..turned(
            broken(
                hold("us_organic_turned", TURNED, 55.0, 15.0),
                TURNINGS_ASKED,
            ),
            5,
            0.0,
        )
    },
    hold("eu_70c_1h", WhichMethod::Any, 70.0, 1.0 / 24.0),
    broken(hold("eu_fpr_55", WhichMethod::Any, 55.0, 14.0), AT_TURNS),
    broken(hold("eu_fpr_60", WhichMethod::Any, 60.0, 7.0), AT_TURNS),
    broken(hold("eu_fpr_65", WhichMethod::Any, 65.0, 5.0), AT_TURNS),
    broken(hold("eu_fpr_70", WhichMethod::Any, 70.0, 3.0), AT_TURNS),
    broken(hold("de_55", WhichMethod::Any, 55.0, 14.0), CONTINUOUS),
    broken(hold("de_60", WhichMethod::Any, 60.0, 6.0), CONTINUOUS),
    broken(hold("de_65", WhichMethod::Any, 65.0, 3.0), CONTINUOUS),
    Rule {
        condition: Some(Condition::ClosedVessel),
        ..hold("uk_closed_60", STATIC, 60.0, 2.0)
    },
    turned(
        broken(hold("uk_windrow_60", TURNED, 60.0, 8.0), TURNINGS_ASKED),
        3,
        2.0 * DAY_S,
    ),
    hold("ca_static", STATIC, 55.0, 3.0),
    turned(
        broken(hold("ca_turned", TURNED, 55.0, 15.0), Breaks::Any),
        5,
        0.0,
    ),
    Rule {
        need: Need::BeforeEachTurn {
            seconds: 3.0 * DAY_S,
            turns: 3,
        },
        ..hold("au_standard", TURNED, 55.0, 3.0)
    },
    turned(
        broken(hold("au_high_risk", TURNED, 55.0, 15.0), TURNINGS_ASKED),
        5,
        0.0,
    ),
    broken(hold("who_50", WhichMethod::Any, 50.0, 7.0), AT_TURNS),
];

/// How a record stands to a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Its time, temperature and turnings are met at the probe.
    Met,
    /// They are not.
    NotMet,
    /// The rule is for heaps that are kept otherwise.
    NotApplicable,
}

/// What is still missing to meet a rule.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Missing {
    /// Time at the temperature of the rule [s].
    pub seconds: f64,
    /// Time at its higher temperature [s]; 0 for rules that have none.
    pub peak_seconds: f64,
    /// Turnings.
    pub turns: u32,
}

/// What a record gives for a rule.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Outcome {
    /// How much is done, 0 to 1: the mean over the rule's demands, each at most 1; 1 when, and only
    /// when, the rule is met.
    pub progress: f64,
    /// What is missing.
    pub missing: Missing,
}

impl Outcome {
    /// True when nothing is missing.
    #[must_use]
    pub fn is_met(&self) -> bool {
        self.missing == Missing::default()
    }
}
