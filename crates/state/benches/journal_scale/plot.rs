//! The figures as a picture: both axes logarithmic, a straight line of slope 1 is linear growth.

use std::fmt::Write as _;
use std::time::Duration;

use crate::measure::Opened;
use crate::report::grouped;

const WIDTH: f64 = 640.0;
const HEIGHT: f64 = 420.0;
const LEFT: f64 = 80.0;
const RIGHT: f64 = 130.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = 56.0;

/// Powers of ten at the ends of the axes: events, and milliseconds.
const EVENTS: (i32, i32) = (3, 6);
const TIME_MS: (i32, i32) = (-1, 4);

fn x(events: f64) -> f64 {
    let (first, last) = (f64::from(EVENTS.0), f64::from(EVENTS.1));
    LEFT + (events.log10() - first) / (last - first) * (WIDTH - LEFT - RIGHT)
}

fn y(time_ms: f64) -> f64 {
    let (first, last) = (f64::from(TIME_MS.0), f64::from(TIME_MS.1));
    HEIGHT - BOTTOM - (time_ms.log10() - first) / (last - first) * (HEIGHT - TOP - BOTTOM)
}

/// The picture.
pub fn svg(opened: &[Opened]) -> String {
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" font-family=\"sans-serif\" font-size=\"13\" fill=\"#222\">\n\
         <title>Time to open a journal by its number of events</title>\n\
         <rect width=\"{WIDTH}\" height=\"{HEIGHT}\" fill=\"#fff\"/>\n"
    );
    grid(&mut svg);
    line(&mut svg, opened, "opened", "#3b5b2a", -1.0, |of| of.whole);
    line(&mut svg, opened, "read", "#8a5a1c", 11.0, |of| of.read);
    line(&mut svg, opened, "digest", "#4a6a8a", 4.5, |of| of.digest);
    svg.push_str("</svg>\n");
    svg
}

fn grid(svg: &mut String) {
    let (right, bottom) = (WIDTH - RIGHT, HEIGHT - BOTTOM);
    for power in EVENTS.0..=EVENTS.1 {
        let at = x(10_f64.powi(power));
        let events = grouped(10_usize.pow(power.unsigned_abs()));
        let below = bottom + 20.0;
        let _ = writeln!(
            svg,
            "<path d=\"M{at:.1} {TOP}V{bottom}\" stroke=\"#ddd\"/><text x=\"{at:.1}\" y=\"{below}\" text-anchor=\"middle\">{events}</text>"
        );
    }
    for power in TIME_MS.0..=TIME_MS.1 {
        let time_ms = 10_f64.powi(power);
        let at = y(time_ms);
        let time_ms = match u32::try_from(power) {
            Ok(power) => grouped(10_usize.pow(power)),
            Err(_) => time_ms.to_string(),
        };
        let (before, low) = (LEFT - 8.0, at + 4.5);
        let _ = writeln!(
            svg,
            "<path d=\"M{LEFT} {at:.1}H{right}\" stroke=\"#ddd\"/><text x=\"{before}\" y=\"{low:.1}\" text-anchor=\"end\">{time_ms}</text>"
        );
    }
    let (middle_x, middle_y) = ((LEFT + right) / 2.0, (TOP + bottom) / 2.0);
    let foot = HEIGHT - 14.0;
    let _ = writeln!(
        svg,
        "<text x=\"{middle_x}\" y=\"{foot}\" text-anchor=\"middle\">events in the journal</text>\n\
         <text transform=\"translate(22 {middle_y}) rotate(-90)\" text-anchor=\"middle\">time [ms]</text>\n\
         <path d=\"M{LEFT} {TOP}V{bottom}H{right}\" fill=\"none\" stroke=\"#222\"/>"
    );
    // The gate: 200,000 events in a second.
    let (gate_x, gate_y) = (x(200_000.0), y(1000.0));
    let (text_x, text_y) = (gate_x - 8.0, gate_y - 8.0);
    let _ = writeln!(
        svg,
        "<path d=\"M{:.1} {gate_y:.1}h16m-8 -8v16\" stroke=\"#a22\" stroke-width=\"2\"/><text x=\"{text_x:.1}\" y=\"{text_y:.1}\" text-anchor=\"end\" fill=\"#a22\">gate: 200,000 in 1 s</text>",
        gate_x - 8.0
    );
}

fn line(
    svg: &mut String,
    opened: &[Opened],
    name: &str,
    colour: &str,
    below: f64,
    time: fn(&Opened) -> Duration,
) {
    let points: Vec<(f64, f64)> = opened
        .iter()
        .map(|of| (x(of.events as f64), y(time(of).as_secs_f64() * 1000.0)))
        .collect();
    let path: Vec<String> = points
        .iter()
        .map(|(x, y)| format!("{x:.1},{y:.1}"))
        .collect();
    let _ = writeln!(
        svg,
        "<polyline points=\"{}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2\"/>",
        path.join(" ")
    );
    for (x, y) in &points {
        let _ = writeln!(
            svg,
            "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3.5\" fill=\"{colour}\"/>"
        );
    }
    if let Some((x, y)) = points.last() {
        let (right, low) = (x + 10.0, y + below);
        let _ = writeln!(
            svg,
            "<text x=\"{right:.1}\" y=\"{low:.1}\" fill=\"{colour}\">{name}</text>"
        );
    }
}
