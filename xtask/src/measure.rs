//! Measures the page in a real browser: quality targets U7 to U10 (U11 is weighed by `bundle`).

use crate::Outcome;
use crate::browser::{Missing, Rig};
use crate::bundle::bundle;
use crate::workspace::run;

/// Bundles, then runs the measuring script, which prints its figures; `--write` keeps them in `docs/measurements`.
pub fn measure(options: &[String]) -> Outcome {
    if let Some(unknown) = options.iter().find(|option| *option != "--write") {
        return Err(format!(
            "there is no option `{unknown}`; the only one is --write"
        ));
    }
    let rig = Rig::find().map_err(|Missing(what)| format!("nothing can be measured: {what}"))?;
    bundle()?;
    rig.prepare()?;
    run(rig.node()?.arg("measure.mjs").args(options))
}
