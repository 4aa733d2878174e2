//! `heapwright garden`: the garden's description and people.

use std::io::Write;

use heapwright_journal::content::{GardenDescribed, PersonDescribed, Place, Role, UnitsSaid};
use heapwright_journal::store::facts;
use heapwright_wire::{length_m, temperature_c};

use crate::arguments::{DescribeArguments, GardenCommand, PersonArguments, UnitsArgument};
use crate::failure::Failure;
use crate::keeping::{Keeping, say};
use crate::naming;
use crate::telling::{Besides, record_and_tell, tell};

/// Runs the command.
pub fn run(command: &GardenCommand, out: &mut impl Write) -> Result<(), Failure> {
    match command {
        GardenCommand::Describe(arguments) => describe(arguments, out),
        GardenCommand::Person(arguments) => person(arguments, out),
    }
}

fn describe(arguments: &DescribeArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let described = GardenDescribed {
        name: arguments.name.as_deref().map(|name| name.trim().to_owned()),
        place: place(&keeping, arguments)?,
        units: arguments.speak.map(|speak| match speak {
            UnitsArgument::Metric => UnitsSaid::Metric,
            UnitsArgument::Us => UnitsSaid::UsCustomary,
        }),
        invented: None,
    };
    if described == GardenDescribed::default() {
        return Err(Failure::Input(
            "say something of the garden: give --name, --latitude and --longitude, or --speak"
                .to_owned(),
        ));
    }
    record_and_tell(&mut keeping, &arguments.record, vec![described.into()], out)
}

/// The place as it is described now; what is left out stays as it was.
fn place(keeping: &Keeping, arguments: &DescribeArguments) -> Result<Option<Place>, Failure> {
    let locale = keeping.locale();
    let temperature = |text: &Option<String>, option: &str| {
        text.as_deref()
            .map(|text| temperature_c(text, locale.units, option))
            .transpose()
    };
    let elevation_m = arguments
        .elevation
        .as_deref()
        .map(|text| length_m(text, "--elevation"))
        .transpose()?;
    let coldest = temperature(&arguments.coldest_month, "--coldest-month")?;
    let warmest = temperature(&arguments.warmest_month, "--warmest-month")?;
    let nothing = arguments.place.is_none()
        && arguments.latitude.is_none()
        && arguments.longitude.is_none()
        && elevation_m.is_none()
        && coldest.is_none()
        && warmest.is_none();
    if nothing {
        return Ok(None);
    }
    let was = keeping.state.garden().place.as_ref();
    let latitude = arguments.latitude.or(was.map(|place| place.latitude_deg));
    let longitude = arguments.longitude.or(was.map(|place| place.longitude_deg));
    let (Some(latitude_deg), Some(longitude_deg)) = (latitude, longitude) else {
        return Err(Failure::Input(
            "a place needs --latitude and --longitude, such as --latitude 52.5 --longitude 13.4"
                .to_owned(),
        ));
    };
    Ok(Some(Place {
        name: arguments
            .place
            .clone()
            .or_else(|| was.and_then(|place| place.name.clone())),
        latitude_deg,
        longitude_deg,
        elevation_m: elevation_m.or(was.and_then(|place| place.elevation_m)),
        coldest_month_c: coldest.or(was.and_then(|place| place.coldest_month_c)),
        warmest_month_c: warmest.or(was.and_then(|place| place.warmest_month_c)),
    }))
}

fn person(arguments: &PersonArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let name = arguments.name.trim().to_owned();
    let role = match arguments.role.as_deref().map(str::to_lowercase).as_deref() {
        None => None,
        Some("keeper") => Some(Role::Keeper),
        Some("helper") => Some(Role::Helper),
        Some(other) => {
            return Err(Failure::Input(format!(
                "--role: \"{}\" is none of keeper, helper",
                naming::shown(other)
            )));
        }
    };
    // Who is known already only comes to this device.
    let known = naming::person_called(&keeping.state, &name).filter(|_| role.is_none());
    let (id, ids) = match known {
        Some(id) => (Some(id), Vec::new()),
        None => {
            let described = PersonDescribed { name, role };
            let ids = keeping.record(&arguments.record, vec![described.into()])?;
            (ids.first().copied(), ids)
        }
    };
    if let Some(id) = id.filter(|_| !arguments.elsewhere) {
        keeping.set_fact(facts::PERSON, &id.to_string())?;
        if known.is_some() {
            say("from now on this device writes in their name");
        }
    }
    tell(
        &keeping,
        &arguments.record.journal,
        &ids,
        &Besides::default(),
        out,
    )
}
