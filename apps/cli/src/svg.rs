//! A picture as a file of its own: the shapes with the colours of this face.

use heapwright_drawings::Picture;

/// Colours of the steps, from low to high: dark to light tells them apart without colour too.
const WARM: [&str; 10] = [
    "#dfe9e6", "#cfdfd3", "#cdd7ac", "#d9ca85", "#dfb562", "#da9a48", "#cb7a38", "#b35a2f",
    "#923d29", "#6b2424",
];
const WET: [&str; 10] = [
    "#f4ecd8", "#e6dcc0", "#d3d0b4", "#b7c4b0", "#97b6b1", "#77a4b0", "#588eaa", "#3d749d",
    "#2a588a", "#1c3b6c",
];
const AIR: [&str; 10] = [
    "#4a2545", "#7a3050", "#a8514f", "#c97f58", "#dba96e", "#e6cb90", "#dcdfae", "#bfdcb8",
    "#99cdb6", "#74b9b0",
];

const STYLE: &str = "\
text{font:12px system-ui,sans-serif;fill:#222}\
polyline{fill:none}\
.time-ground,.cut-room{fill:#fbfaf6;stroke:#cfcabd}\
.time-grid,.time-lane{stroke:#e6e2d6}\
.time-zero{stroke:#b9b4a4}\
.time-edge{stroke:#777}\
.time-done{fill:#333}\
.time-plan{fill:#fff;stroke:#333;stroke-width:1.5}\
.time-tick,.time-axis,.cut-label{fill:#555}\
.time-mark{stroke:#a33;stroke-dasharray:5 4}\
.time-wide{fill:#c9d8b6}\
.time-half{fill:#96b578}\
.time-middle{stroke:#2f4f1f;stroke-width:2}\
.time-other-0{stroke:#7a4fa0;stroke-width:2;stroke-dasharray:7 4}\
.time-other-1{stroke:#b0631b;stroke-width:2;stroke-dasharray:2 4}\
.time-other-2{stroke:#1f6a8a;stroke-width:2;stroke-dasharray:9 3 2 3}\
.time-now{stroke:#222;stroke-width:1.5}\
.time-reading,.cut-probe{fill:#fff;stroke:#222;stroke-width:1.5}\
.cut-outline{fill:none;stroke:#333;stroke-width:1.5}\
.cut-ground{stroke:#6b4f2f;stroke-width:3}\
.cut-earth{stroke:#6b4f2f}\
.cut-wall{fill:#6b4f2f}\
.cut-grain{stroke:#333;stroke-width:.75;stroke-dasharray:9 5 3 7 14 4 2 6;opacity:.45}\
.cut-rod{stroke:#222;stroke-width:1.5}\
.cut-tip{fill:#222}\
.cut-key{fill:none;stroke:#777}\
.cut-tick{stroke:#777}";

/// The whole file: a title, the colours, the shapes and, below them, what lines are.
pub fn complete(picture: &Picture, title: &str, key: &[String]) -> String {
    let mut style = STYLE.to_owned();
    for (name, colours) in [("warm", &WARM), ("wet", &WET), ("air", &AIR)] {
        for (step, colour) in colours.iter().enumerate() {
            style.push_str(&format!(".{name}-{step}{{fill:{colour}}}"));
        }
    }
    const HEAD: f64 = 30.0;
    const LINE: f64 = 18.0;
    let rows = u32::try_from(key.len()).unwrap_or(0);
    let (width, height) = (
        picture.width,
        picture.height + HEAD + LINE * f64::from(rows),
    );
    let mut words = String::new();
    let mut y = picture.height + HEAD + 8.0;
    for line in key {
        words.push_str(&format!(
            "<text x=\"12\" y=\"{y}\">{}</text>",
            escaped(line)
        ));
        y += LINE;
    }
    let title = escaped(title);
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" role=\"img\"><title>{title}</title><style>{style}</style><rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/><text x=\"12\" y=\"20\" style=\"font-weight:600;font-size:14px\">{title}</text><g transform=\"translate(0 {HEAD})\">{}</g>{words}</svg>\n",
        picture.svg_inside()
    )
}

fn escaped(words: &str) -> String {
    words
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_has_its_words_escaped_and_its_colours_inside() {
        let picture = Picture {
            width: 10.0,
            height: 10.0,
            shapes: Vec::new(),
        };
        let text = complete(&picture, "A <heap> & \"more\"", &["x < y".to_owned()]);
        assert!(text.contains("<title>A &lt;heap&gt; &amp; &quot;more&quot;</title>"));
        assert!(text.contains("x &lt; y"));
        assert!(text.contains(&format!(".warm-9{{fill:{}}}", WARM[9])));
        assert!(text.starts_with("<svg") && text.ends_with("</svg>\n"));
    }
}
