//! From what was computed to what the page shows.

use heapwright_answers::{ForecastAnswer, PlanAnswer};
use heapwright_state::State;
use heapwright_texts::Locale;
use heapwright_wire::{AheadShown, OptionShown, TableShown};
use heapwright_wording::{self as wording, Word, ahead};

use crate::charts::charts;
use crate::frames;
use crate::spoken::catalogue;

/// How it is shown.
pub struct Options {
    /// Where the way to go on of each turning stands among all.
    pub by_turn: [usize; 3],
    /// True when nothing more is to come.
    pub whole: bool,
    /// True when the cross-section was told before.
    pub framed: bool,
    /// How much water is meant.
    pub water: String,
    /// Width of the pictures [px].
    pub width_px: f64,
    /// Which units.
    pub locale: Locale,
}

/// All of it.
pub fn shown(state: &State, forecast: &ForecastAnswer, options: &Options) -> AheadShown {
    let locale = options.locale;
    let plans: Vec<&PlanAnswer> = forecast.plans.iter().collect();
    let Some(first) = plans.first().copied() else {
        return AheadShown::default();
    };
    let when = |day: f64| wording::date_of(forecast, day, locale);
    let catalogue = catalogue();
    // Of several ways to go on, figures come from the many runs of all or from one run of each.
    let is_mixed = plans.iter().any(|plan| plan.answer.bands.is_none());
    let bare: Vec<PlanAnswer> = plans
        .iter()
        .map(|plan| {
            let mut plan = (*plan).clone();
            if is_mixed {
                plan.answer.spread = None;
            }
            plan
        })
        .collect();
    let compared: Vec<&PlanAnswer> = bare.iter().collect();
    let heads = std::iter::once(ahead::compared_head(locale).to_owned())
        .chain(compared.iter().map(|plan| plan.plan.name.clone()))
        .collect();
    let differences = match compared.split_first() {
        Some((leave, others)) => others
            .iter()
            .map(|plan| ahead::difference_line(&plan.plan.name, plan, leave, locale))
            .collect(),
        None => Vec::new(),
    };
    let fields = &first.answer.fields;
    let frame_now = fields
        .iter()
        .enumerate()
        .min_by(|(_, one), (_, other)| {
            let far = |time_d: f64| (time_d - forecast.now_d).abs();
            far(one.time_d).total_cmp(&far(other.time_d))
        })
        .map_or(0, |(index, _)| index);
    let notices: Vec<_> = forecast
        .notices
        .iter()
        .filter(|notice| !ahead::is_about_weather(notice))
        .cloned()
        .collect();
    AheadShown {
        options: plans
            .iter()
            .enumerate()
            .map(|(which, plan)| OptionShown {
                name: plan.plan.name.clone(),
                sentences: wording::plan_lines(forecast, plan, locale),
                charts: charts(forecast, which, options.width_px, locale),
                frames: if options.framed {
                    Vec::new()
                } else {
                    frames::frames(forecast, plan, locale)
                },
            })
            .collect(),
        by_turn: options.by_turn,
        whole: options.whole,
        table: TableShown {
            heads,
            rows: ahead::compared_rows(&compared, &when, locale),
        },
        differences,
        water: options.water.clone(),
        weather: ahead::weather_line(state.garden().place.as_ref(), &forecast.notices, locale),
        gainsaid: wording::gainsaid_line(forecast, locale).unwrap_or_default(),
        readings: wording::readings_line(forecast, locale).unwrap_or_default(),
        read: read(forecast, locale),
        notices: wording::simulation_notices(catalogue, &notices, locale),
        room_m: frames::room_m(forecast),
        sides: frames::sides(first),
        fields: frames::fields(first, locale),
        frame_now,
    }
}

/// What the probes showed, beside what was computed.
fn read(forecast: &ForecastAnswer, locale: Locale) -> TableShown {
    TableShown {
        heads: wording::pictures_read::reading_heads(locale)
            .map(str::to_owned)
            .to_vec(),
        rows: forecast
            .readings
            .iter()
            .rev()
            .map(|reading| {
                vec![
                    wording::date_of(forecast, reading.day, locale),
                    reading
                        .place
                        .map_or(wording::pictures_read::place_not_told(locale), |place| {
                            place.word(locale)
                        })
                        .to_owned(),
                    locale.temperature(reading.temperature_c),
                    reading.computed_core_c.map_or_else(
                        || "\u{2013}".to_owned(),
                        |computed| locale.temperature(computed),
                    ),
                ]
            })
            .collect(),
    }
}
