//! How fast do errors fall: with the length of even steps (the method's order, as a table and a
//! plot), and with the tolerance over a season.

use std::fmt::Write as _;

use heapwright_numerics::Chebyshev;

use crate::growth::{season, seconds_of};
use crate::heap_inside::heap::{Options, Parameters, Run, simulate};
use crate::stretch::{LOOKS, Stretch};

/// Days of the stretch with even steps: the steep rise of a new heap.
const DAYS: f64 = 2.0;
/// Steps per day of the path that the others are held against.
const CLOSE: f64 = 4096.0;

/// Temperatures of all cells at the end of a stretch in even steps [degrees Celsius].
fn even(layers: usize, rings: usize, per_day: f64) -> Vec<f64> {
    let mut stretch = Stretch::new(layers, rings);
    // No estimate of the error shortens a step.
    stretch.heap.tolerance = 1e9;
    let mut y = stretch.y.clone();
    let mut integrator = Chebyshev::new(1.0 / per_day, 10_000_000);
    let mut day = 0.0;
    while day < DAYS {
        let end = day + 1.0 / per_day;
        integrator
            .integrate(&mut stretch.heap, day, end, &mut y, |_, _| {})
            .expect("the engine goes on");
        day = end;
    }
    stretch.seen(DAYS, &y).0
}

fn apart(one: &[f64], other: &[f64]) -> f64 {
    one.iter()
        .zip(other)
        .fold(0.0, |most, (a, b)| most.max((a - b).abs()))
}

/// Prints steps and errors; writes the plot where asked.
pub fn with_steps(plot: Option<&str>) {
    println!("even steps over {DAYS} days: layers x rings | steps a day | any cell, K | order");
    let mut lines = Vec::new();
    for (layers, rings) in [(1, 1), (4, 3), (6, 4)] {
        let close = even(layers, rings, CLOSE);
        let mut points: Vec<(f64, f64)> = Vec::new();
        for per_day in [8.0, 16.0, 32.0, 64.0, 128.0, 256.0, 512.0] {
            let error = apart(&even(layers, rings, per_day), &close);
            let order = points
                .last()
                .map_or(f64::NAN, |(_, before)| (before / error).log2());
            println!("{layers} x {rings} | {per_day} | {error:.2e} | {order:.2}");
            points.push((per_day, error));
        }
        lines.push((format!("{layers} x {rings}"), points));
    }
    if let Some(path) = plot {
        std::fs::write(path, drawn(&lines)).expect("the plot can be written");
    }
}

/// A log-log plot as SVG: steps a day across, error upward, and the slope of second order.
fn drawn(lines: &[(String, Vec<(f64, f64)>)]) -> String {
    let x = |per_day: f64| 60.0 + 45.0 * (per_day / 8.0).log2();
    let y = |error: f64| 40.0 - 40.0 * error.log10();
    let mut svg = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 420 340\" font-family=\"sans-serif\" font-size=\"11\">\n\
         <rect width=\"420\" height=\"340\" fill=\"white\"/>\n",
    );
    for decade in -6..=0 {
        let level = y(10_f64.powi(decade));
        let _ = writeln!(
            svg,
            "<path d=\"M60 {level}H330\" stroke=\"#ddd\"/><text x=\"54\" y=\"{}\" text-anchor=\"end\">1e{decade}</text>",
            level + 4.0
        );
    }
    for per_day in [8.0, 16.0, 32.0, 64.0, 128.0, 256.0, 512.0] {
        let _ = writeln!(
            svg,
            "<text x=\"{}\" y=\"300\" text-anchor=\"middle\">{per_day}</text>",
            x(per_day)
        );
    }
    svg.push_str(
        "<text x=\"195\" y=\"322\" text-anchor=\"middle\">steps a day</text>\n\
         <text x=\"60\" y=\"22\">largest error of any cell after two days [K]</text>\n",
    );
    let _ = writeln!(
        svg,
        "<path d=\"M{} {}L{} {}\" stroke=\"#888\" stroke-dasharray=\"4 3\" fill=\"none\"/>\
         <text x=\"{}\" y=\"{}\" fill=\"#666\">order 2</text>",
        x(8.0),
        y(0.1),
        x(512.0),
        y(0.1 / 4096.0),
        x(512.0) + 6.0,
        y(0.1 / 4096.0)
    );
    for ((name, points), colour) in lines.iter().zip(["#b5541c", "#2f6f4f", "#2b4c8c"]) {
        let way: Vec<String> = points
            .iter()
            // Steps too long to mean anything lie above the plot.
            .filter(|(_, error)| *error <= 1.0)
            .map(|(per_day, error)| format!("{:.1} {:.1}", x(*per_day), y(*error)))
            .collect();
        let (per_day, error) = points[points.len() - 1];
        let _ = writeln!(
            svg,
            "<path d=\"M{}\" stroke=\"{colour}\" fill=\"none\" stroke-width=\"2\"/>\
             <text x=\"{}\" y=\"{}\" fill=\"{colour}\">{name}</text>",
            way.join("L"),
            x(per_day) + 6.0,
            y(error) + 4.0
        );
    }
    svg.push_str("</svg>\n");
    svg
}

/// Prints what a season costs and how exact it is, by tolerance.
pub fn with_tolerance() {
    println!(
        "a season by tolerance: layers x rings | tolerance | ms | steps | slopes | any cell, K"
    );
    let run = |layers, rings, tolerance| -> Run {
        let options = Options {
            every_h: 2.4,
            fields: true,
            tolerance,
        };
        simulate(
            &season(layers, rings, 120.0),
            &Parameters::default(),
            &options,
        )
        .expect("the case has a meaning")
    };
    for (layers, rings) in [(1, 1), (6, 4), (10, 10)] {
        let close = run(layers, rings, 1e-3);
        for tolerance in [16.0, 4.0, 1.0, 0.25, 0.06] {
            let found = run(layers, rings, tolerance);
            let options = Options {
                every_h: 240.0,
                fields: false,
                tolerance,
            };
            let case = season(layers, rings, 120.0);
            let seconds = seconds_of(3, || {
                simulate(&case, &Parameters::default(), &options).expect("the case has a meaning");
            });
            let mut worst = 0.0_f64;
            for (row, (a, b)) in found
                .series
                .iter()
                .zip(found.fields.iter().zip(&close.fields))
            {
                if LOOKS.iter().any(|day| (day - row.time_d).abs() < 1e-6) {
                    for (a, b) in a.iter().zip(b) {
                        worst = worst.max((a.temperature_c - b.temperature_c).abs());
                    }
                }
            }
            println!(
                "{layers} x {rings} | {tolerance} | {:.2} | {} + {} | {} | {worst:.1e}",
                1e3 * seconds,
                found.cost.steps,
                found.cost.rejected,
                found.cost.slopes
            );
        }
    }
}
