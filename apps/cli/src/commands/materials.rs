//! `heapwright materials`: what is known of them?

use std::io::Write;

use heapwright_catalogue::{Catalogue, Resolution};
use heapwright_quantity::{Range, significant};
use heapwright_terms::Material;
use heapwright_texts::Locale;
use heapwright_wire::material_json;
use heapwright_wording as wording;

use crate::arguments::MaterialsArguments;
use crate::commands::mix::WIDTH;
use crate::failure::Failure;
use crate::table::{write_paragraph, write_rows};

/// How many materials a search lists.
const MOST_MATCHES: usize = 12;

/// Runs the command.
pub fn run(arguments: &MaterialsArguments, out: &mut impl Write) -> Result<(), Failure> {
    let catalogue = Catalogue::built_in();
    let words = arguments.words.join(" ");
    if words.trim().is_empty() {
        let all: Vec<&Material> = catalogue.materials().iter().collect();
        return if arguments.json {
            list_json(catalogue, &all, out)
        } else {
            list_text(catalogue, &all, out)
        };
    }
    let one = catalogue
        .material(words.trim())
        .or_else(|| match catalogue.resolve(&words) {
            Resolution::One(found) => catalogue.material(found.material.as_str()),
            _ => None,
        });
    if let Some(material) = one {
        if arguments.json {
            serde_json::to_writer_pretty(&mut *out, &material_json(catalogue, material))
                .map_err(std::io::Error::from)?;
            writeln!(out)?;
            return Ok(());
        }
        return one_text(catalogue, material, out, Locale::default());
    }
    let found: Vec<&Material> = catalogue
        .search(&words, MOST_MATCHES)
        .iter()
        .filter_map(|found| catalogue.material(found.material.as_str()))
        .collect();
    if found.is_empty() {
        return Err(Failure::Input(format!(
            "no material is called \"{}\": try a plainer word, or list all with `heapwright materials`",
            words.chars().take(40).collect::<String>()
        )));
    }
    if arguments.json {
        list_json(catalogue, &found, out)
    } else {
        list_text(catalogue, &found, out)
    }
}

fn list_json(
    catalogue: &Catalogue,
    materials: &[&Material],
    out: &mut impl Write,
) -> Result<(), Failure> {
    let all: Vec<_> = materials
        .iter()
        .map(|material| material_json(catalogue, material))
        .collect();
    serde_json::to_writer_pretty(&mut *out, &all).map_err(std::io::Error::from)?;
    writeln!(out)?;
    Ok(())
}

fn list_text(
    catalogue: &Catalogue,
    materials: &[&Material],
    out: &mut impl Write,
) -> Result<(), Failure> {
    let mut rows = vec![
        ["id", "name", "C:N", "moisture", "kg/L"]
            .map(str::to_owned)
            .to_vec(),
    ];
    rows.extend(materials.iter().map(|material| {
        let typical = |range: Option<Range>, text: &dyn Fn(f64) -> String| {
            range.map_or_else(|| "–".to_owned(), |range| text(range.typical))
        };
        vec![
            material.id.as_str().to_owned(),
            material.name.clone(),
            heapwright_garden::handbook_carbon_to_nitrogen(catalogue, material)
                .map_or_else(|| "–".to_owned(), &|value| {
                    wording::ratio_text(value, Locale::default())
                }),
            typical(material.moisture_wet_basis, &|value| {
                wording::percent_text(value, Locale::default())
            }),
            typical(material.bulk_density_kg_m3, &|density| {
                significant(density / 1000.0, 2)
            }),
        ]
    }));
    write_rows(out, &rows)?;
    Ok(())
}

fn one_text(
    catalogue: &Catalogue,
    material: &Material,
    out: &mut impl Write,
    locale: Locale,
) -> Result<(), Failure> {
    writeln!(out, "{}  ({})", material.name, material.id.as_str())?;
    let names: Vec<&str> = catalogue
        .names(material.id.as_str())
        .iter()
        .map(|name| name.text.as_str())
        .collect();
    if !names.is_empty() {
        write_paragraph(
            out,
            "",
            &format!("Also called: {}", names.join(", ")),
            WIDTH,
        )?;
    }
    writeln!(out)?;
    let row = |name: &str, range: Option<Range>, text: &dyn Fn(f64) -> String| {
        range.map(|range| {
            let spread = if range.is_exact() {
                String::new()
            } else {
                format!("{} to {}", text(range.low), text(range.high))
            };
            vec![name.to_owned(), text(range.typical), spread]
        })
    };
    let share = |share: Option<f64>| share.map(Range::exact);
    let pct = |value: f64| format!("{}\u{a0}%", significant(value * 100.0, 3));
    let mut rows = vec![
        ["", "typical", "found in practice"]
            .map(str::to_owned)
            .to_vec(),
    ];
    rows.extend(
        heapwright_garden::handbook_carbon_to_nitrogen(catalogue, material).map(|ratio| {
            vec![
                "C:N, handbook scale".to_owned(),
                wording::ratio_text(ratio, locale),
                String::new(),
            ]
        }),
    );
    rows.extend(
        [
            row(
                "C:N, measured carbon",
                material.carbon_to_nitrogen_measured,
                &|value| wording::ratio_text(value, locale),
            ),
            row("moisture", material.moisture_wet_basis, &pct),
            row(
                "bulk density, kg/m³",
                material.bulk_density_kg_m3,
                &|value| significant(value, 3),
            ),
            row("nitrogen, of dry matter", material.nitrogen_dry_basis, &pct),
            row(
                "carbon, measured",
                share(material.carbon_measured_dry_basis),
                &pct,
            ),
            row("ash", share(material.ash_dry_basis), &pct),
            row("lignin", share(material.lignin_dry_basis), &pct),
            row("phosphorus", share(material.phosphorus_dry_basis), &pct),
            row("potassium", share(material.potassium_dry_basis), &pct),
            row("calcium", share(material.calcium_dry_basis), &pct),
            row("magnesium", share(material.magnesium_dry_basis), &pct),
            row("sodium", share(material.sodium_dry_basis), &pct),
            row("pH", share(material.ph), &|value| significant(value, 2)),
        ]
        .into_iter()
        .flatten(),
    );
    write_rows(out, &rows)?;
    for caution in catalogue.cautions_for(material) {
        writeln!(out)?;
        write_paragraph(
            out,
            "",
            &format!("Take care: {}", wording::caution_line(caution)),
            WIDTH,
        )?;
    }
    if !material.notes.is_empty() {
        writeln!(out)?;
        write_paragraph(out, "", &material.notes, WIDTH)?;
    }
    writeln!(out, "\nSources")?;
    let mut seen: Vec<&str> = Vec::new();
    for key in material
        .sources
        .iter()
        .flat_map(|source| &source.source_keys)
    {
        if seen.contains(&key.as_str()) {
            continue;
        }
        seen.push(key);
        if let Some(source) = catalogue.source(key) {
            write_paragraph(
                out,
                "  ",
                &format!("{key}: {}. {}", source.citation, source.address),
                WIDTH,
            )?;
        }
    }
    Ok(())
}
