//! `heapwright serve`: the web page on this computer.

use std::io::Write;
use std::net::SocketAddr;
use std::sync::Arc;

use heapwright_site::{CALENDAR, Calendar};
use tokio::net::TcpListener;

use crate::arguments::ServeArguments;
use crate::commands::calendar::reminders;
use crate::failure::Failure;
use crate::keeping::journal_path;

/// What hands out reminders, when there is a journal and it may be told of at that address.
fn calendar_of(arguments: &ServeArguments) -> Option<Calendar> {
    if !arguments.address.is_loopback() && !arguments.share_calendar {
        return None;
    }
    let path = journal_path(arguments.garden.as_deref()).ok()?;
    let language = arguments.language;
    path.is_file().then(|| {
        let calendar: Calendar = Arc::new(move || {
            reminders(Some(path.clone()), None, language).map_err(|error| error.to_string())
        });
        calendar
    })
}

/// Runs the command until it is interrupted.
pub fn run(arguments: &ServeArguments, out: &mut impl Write) -> Result<(), Failure> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .map_err(|error| Failure::Outside(format!("the server cannot start ({error})")))?;
    runtime.block_on(async {
        let address = SocketAddr::new(arguments.address, arguments.port);
        let failed = |error: std::io::Error| {
            Failure::Outside(format!(
                "{address} cannot be listened on ({error}): choose another with --port, or 0 for any free one"
            ))
        };
        let listener = TcpListener::bind(address).await.map_err(failed)?;
        let bound = listener.local_addr().map_err(failed)?;
        writeln!(out, "Heapwright is at http://{bound}/ with an invented demo garden. Ctrl-C ends it.")?;
        let calendar = calendar_of(arguments);
        if calendar.is_some() {
            writeln!(out, "A calendar program can follow reminders at http://{bound}{CALENDAR}.")?;
        }
        if !bound.ip().is_loopback() {
            writeln!(out, "Whoever is in this network can open it there. It speaks plain HTTP: a browser then keeps nothing for use without a signal.")?;
        }
        out.flush()?;
        heapwright_site::serve(listener, calendar)
            .await
            .map_err(|error| Failure::Outside(format!("the server stopped ({error}): start it again")))
    })
}
