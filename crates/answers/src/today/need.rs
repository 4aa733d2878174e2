//! What can be needed, why, how urgently, and what one tap writes down once it is done.

use heapwright_engine::finish::verdict::Judgement;
use heapwright_garden::FoundPart;
use heapwright_journal::content::{Creature, Look, Smell, Squeeze, Thoroughness};
use heapwright_journal::{Content, EventId, Moment};
use heapwright_quantity::Amount;
use heapwright_terms::MaterialId;
use jiff::civil::Date;

use crate::before_use::BeforeUse;
use crate::what_to_add::{Help, RecipeAnswer};

/// What all heaps of a garden need.
#[derive(Clone, Debug, PartialEq)]
pub struct TodayAnswer {
    /// What the clock says.
    pub now: Moment,
    /// What is needed, first things first.
    pub needs: Vec<Need>,
    /// Heaps that need nothing today, in the order of the garden.
    pub quiet: Vec<Quiet>,
    /// What is due when, the soonest first: all needs, and what comes later.
    pub dates: Vec<DatedNeed>,
}

impl TodayAnswer {
    /// What of it concerns one heap.
    #[must_use]
    pub fn of_heap(mut self, heap: EventId) -> Self {
        self.needs.retain(|need| need.heap == Some(heap));
        self.quiet.retain(|quiet| quiet.heap == heap);
        self.dates.retain(|date| date.heap == Some(heap));
        self
    }
}

/// Something that is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// Which heap; `None` for what concerns the stores.
    pub heap: Option<EventId>,
    /// What to do.
    pub what: What,
    /// Why: at least one reason, the weightiest first.
    pub because: Vec<Because>,
    /// How soon.
    pub urgency: Urgency,
    /// By when, where that can be told; a moment that is past is overdue.
    pub due: Option<Moment>,
    /// What is written down once it is done; `None` where something must be typed or seen first.
    pub entry: Option<Content>,
    /// What can hurt while it is done.
    pub cautions: Vec<Caution>,
}

/// How soon something is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Urgency {
    /// Today: harm is near.
    Now,
    /// In the next days: time or nitrogen is lost.
    Soon,
    /// When it is convenient.
    Whenever,
}

/// What to do.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// Stay away, watch, and call for help.
    StandBack,
    /// Open, turn and water a heap that is too hot.
    CoolDown,
    /// Drive rats or mice out and keep them out.
    KeepAnimalsOut {
        /// True when it is wet by a handful, or too wet by what was fed: then it is not kept moist.
        is_wet: bool,
    },
    /// Mix in browns.
    AddBrowns {
        /// From the stores; `None` when they do not reach that far.
        recipe: Option<Box<RecipeAnswer>>,
        /// What else would help, when there is no recipe.
        help: Vec<Help>,
    },
    /// Water.
    Water {
        /// How much at once [L].
        water_l: f64,
        /// All that is lacking, as far as that can be told [L].
        lacking_l: f64,
    },
    /// Lay browns over what draws flies.
    CoverWithBrowns {
        /// Of what and how much, from the stores.
        layer: Box<FoundPart>,
    },
    /// Turn.
    Turn {
        /// How.
        how: Thoroughness,
    },
    /// Take the temperature of the core.
    ReadHeat,
    /// Mix in greens.
    AddGreens {
        /// From the stores; `None` when they do not reach that far.
        recipe: Option<Box<RecipeAnswer>>,
    },
    /// Feel, smell and look.
    Look,
    /// Take the compost out.
    Harvest {
        /// What must be seen to before it is used.
        before_use: Vec<BeforeUse>,
    },
    /// Test whether it is ready.
    Test {
        /// What tests said so far.
        judgement: Judgement,
    },
    /// Feed no more, and let it ripen.
    LetRipen,
    /// Lay a cover over ripening compost.
    Cover,
    /// Fill up a store.
    Restock {
        /// Of what.
        material: MaterialId,
        /// In which conditions it lies there.
        conditions: Vec<String>,
        /// What is left; `None` when it is used up.
        left: Option<Amount>,
    },
}

/// What kind of need it is, without its figures. The order is that of importance: harm, then what
/// loses days, then what is convenient.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// [`What::StandBack`].
    StandBack,
    /// [`What::CoolDown`].
    CoolDown,
    /// [`What::KeepAnimalsOut`].
    KeepAnimalsOut,
    /// [`What::AddBrowns`].
    AddBrowns,
    /// [`What::CoverWithBrowns`].
    CoverWithBrowns,
    /// [`What::Water`].
    Water,
    /// [`What::Turn`].
    Turn,
    /// [`What::ReadHeat`].
    ReadHeat,
    /// [`What::AddGreens`].
    AddGreens,
    /// [`What::Harvest`].
    Harvest,
    /// [`What::LetRipen`].
    LetRipen,
    /// [`What::Test`].
    Test,
    /// [`What::Cover`].
    Cover,
    /// [`What::Look`].
    Look,
    /// [`What::Restock`].
    Restock,
}

impl Kind {
    /// All kinds, the most important first.
    pub const ALL: [Self; 15] = [
        Self::StandBack,
        Self::CoolDown,
        Self::KeepAnimalsOut,
        Self::AddBrowns,
        Self::CoverWithBrowns,
        Self::Water,
        Self::Turn,
        Self::ReadHeat,
        Self::AddGreens,
        Self::Harvest,
        Self::LetRipen,
        Self::Test,
        Self::Cover,
        Self::Look,
        Self::Restock,
    ];

    /// Its word in files: it never changes, for calendars know reminders by it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::StandBack => "stand_back",
            Self::CoolDown => "cool_down",
            Self::KeepAnimalsOut => "keep_animals_out",
            Self::AddBrowns => "add_browns",
            Self::CoverWithBrowns => "cover_with_browns",
            Self::Water => "water",
            Self::Turn => "turn",
            Self::ReadHeat => "read_heat",
            Self::AddGreens => "add_greens",
            Self::Harvest => "harvest",
            Self::LetRipen => "let_ripen",
            Self::Test => "test",
            Self::Cover => "cover",
            Self::Look => "look",
            Self::Restock => "restock",
        }
    }
}

impl What {
    /// Which kind it is.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        match self {
            Self::StandBack => Kind::StandBack,
            Self::CoolDown => Kind::CoolDown,
            Self::KeepAnimalsOut { .. } => Kind::KeepAnimalsOut,
            Self::AddBrowns { .. } => Kind::AddBrowns,
            Self::Water { .. } => Kind::Water,
            Self::CoverWithBrowns { .. } => Kind::CoverWithBrowns,
            Self::Turn { .. } => Kind::Turn,
            Self::ReadHeat => Kind::ReadHeat,
            Self::AddGreens { .. } => Kind::AddGreens,
            Self::Look => Kind::Look,
            Self::Harvest { .. } => Kind::Harvest,
            Self::Test { .. } => Kind::Test,
            Self::LetRipen => Kind::LetRipen,
            Self::Cover => Kind::Cover,
            Self::Restock { .. } => Kind::Restock,
        }
    }
}

/// Why something is needed.
#[derive(Clone, Debug, PartialEq)]
pub enum Because {
    /// The core is so hot that chemical heat may have taken over.
    Alarm {
        /// The hottest that a probe showed [degC].
        temperature_c: f64,
        /// When.
        at: Moment,
    },
    /// A high heap is too hot and dry.
    HotAndDry {
        /// The hottest that a probe showed [degC].
        temperature_c: f64,
        /// When.
        at: Moment,
    },
    /// The core is too hot.
    TooHot {
        /// The hottest that a probe showed [degC].
        temperature_c: f64,
        /// When.
        at: Moment,
    },
    /// The core is so hot that most of what lives there slows down.
    Hot {
        /// The hottest that a probe showed [degC].
        temperature_c: f64,
        /// When.
        at: Moment,
    },
    /// Something was seen there.
    Creature {
        /// What.
        creature: Creature,
        /// When.
        at: Moment,
    },
    /// It smelt.
    Smell {
        /// Of what.
        smell: Smell,
        /// When.
        at: Moment,
    },
    /// A handful felt so.
    Squeeze {
        /// How.
        squeeze: Squeeze,
        /// When.
        at: Moment,
    },
    /// It looked so.
    Look {
        /// How.
        look: Look,
        /// When.
        at: Moment,
    },
    /// What was fed lately is too wet by its figures.
    FedTooWet {
        /// Wet basis.
        moisture: f64,
    },
    /// What was fed lately is too dry by its figures.
    FedTooDry {
        /// Wet basis.
        moisture: f64,
    },
    /// What was fed lately is too rich in nitrogen by its figures.
    FedTooRich {
        /// Handbook scale.
        carbon_to_nitrogen: f64,
    },
    /// What was fed lately is too poor in nitrogen by its figures.
    FedTooPoor {
        /// Handbook scale.
        carbon_to_nitrogen: f64,
    },
    /// The core cooled since it was hottest.
    Cooling {
        /// The hottest [degC].
        from_c: f64,
        /// Now [degC].
        to_c: f64,
        /// When it was read last.
        at: Moment,
    },
    /// It was hot when it was read last, which is a while ago.
    HotUnread {
        /// What the probe showed [degC].
        temperature_c: f64,
        /// When.
        at: Moment,
    },
    /// A published rule is under way: it asks for more time at its temperature.
    RuleTime {
        /// Id of the rule.
        rule: &'static str,
        /// Time that is missing [s].
        missing_s: f64,
        /// At this temperature or more [degC].
        least_c: f64,
        /// True when something went in that calls for heat.
        raw: bool,
    },
    /// A published rule is under way: it asks for more turnings.
    RuleTurns {
        /// Id of the rule.
        rule: &'static str,
        /// How many are missing.
        turns: u32,
        /// True when something went in that calls for heat.
        raw: bool,
    },
    /// Nobody looked for a while.
    NotLookedAt {
        /// When somebody last did, since something lies there.
        last: Option<Moment>,
    },
    /// Nothing was fed for a while.
    NotFed {
        /// When something last came in.
        since: Moment,
    },
    /// It looks done.
    LooksDone,
    /// It has ripened long enough to be tested.
    Ripened {
        /// Since when.
        since: Moment,
    },
    /// Two independent signs say that it is ready.
    Ready,
    /// Nothing keeps the rain off what ripens.
    Uncovered,
    /// At the pace of the last weeks it will not last long.
    RunsOut {
        /// So long [d].
        days: f64,
    },
    /// It was used up.
    UsedUp,
}

impl Because {
    /// A word for the reason, without its figures.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        match self {
            Self::Alarm { .. } => "alarm",
            Self::HotAndDry { .. } => "hot_and_dry",
            Self::TooHot { .. } => "too_hot",
            Self::Hot { .. } => "hot",
            Self::Creature { .. } => "creature",
            Self::Smell { .. } => "smell",
            Self::Squeeze { .. } => "squeeze",
            Self::Look { .. } => "look",
            Self::FedTooWet { .. } => "fed_too_wet",
            Self::FedTooDry { .. } => "fed_too_dry",
            Self::FedTooRich { .. } => "fed_too_rich",
            Self::FedTooPoor { .. } => "fed_too_poor",
            Self::Cooling { .. } => "cooling",
            Self::HotUnread { .. } => "hot_unread",
            Self::RuleTime { .. } => "rule_time",
            Self::RuleTurns { .. } => "rule_turns",
            Self::NotLookedAt { .. } => "not_looked_at",
            Self::NotFed { .. } => "not_fed",
            Self::LooksDone => "looks_done",
            Self::Ripened { .. } => "ripened",
            Self::Ready => "ready",
            Self::Uncovered => "uncovered",
            Self::RunsOut { .. } => "runs_out",
            Self::UsedUp => "used_up",
        }
    }
}

/// What can hurt while it is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    /// Fire.
    Fire,
    /// Steam and hot stuff.
    Steam,
    /// Dust of moulds.
    MouldDust,
    /// What rats and mice leave behind.
    Animals,
    /// Gases of a heap that smells bad.
    Fumes,
    /// Heavy loads.
    Lifting,
}

/// A heap that needs nothing today.
#[derive(Clone, Debug, PartialEq)]
pub struct Quiet {
    /// Which heap.
    pub heap: EventId,
    /// Why.
    pub why: Rest,
    /// When to look again; `None` for an empty one.
    pub again: Option<Date>,
}

/// Why a heap needs nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rest {
    /// Nothing lies in it.
    Empty,
    /// It works.
    Working,
    /// It ripens.
    Ripening,
}

/// Something with its day.
#[derive(Clone, Debug, PartialEq)]
pub struct DatedNeed {
    /// Which heap; `None` for what concerns the stores.
    pub heap: Option<EventId>,
    /// What kind of need; there is at most one of a kind for a heap, and for a material.
    pub kind: Kind,
    /// Of which material, for stores: id and conditions.
    pub material: Option<(MaterialId, Vec<String>)>,
    /// When.
    pub on: On,
    /// Why, where that is known today.
    pub because: Vec<Because>,
    /// What can hurt while it is done.
    pub cautions: Vec<Caution>,
}

/// When something is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum On {
    /// Some time of a day.
    Day(Date),
    /// At a time.
    Time(Moment),
}

impl On {
    /// The day.
    #[must_use]
    pub fn day(self) -> Date {
        match self {
            Self::Day(day) => day,
            Self::Time(moment) => moment.local().date(),
        }
    }
}
