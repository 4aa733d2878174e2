//! `heapwright serve`: the web page on this computer.

use std::io::Write;
use std::net::SocketAddr;

use tokio::net::TcpListener;

use crate::arguments::ServeArguments;
use crate::failure::Failure;

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
        if !bound.ip().is_loopback() {
            writeln!(out, "Whoever is in this network can open it there. It speaks plain HTTP: a browser then keeps nothing for use without a signal.")?;
        }
        out.flush()?;
        heapwright_site::serve(listener)
            .await
            .map_err(|error| Failure::Outside(format!("the server stopped ({error}): start it again")))
    })
}
