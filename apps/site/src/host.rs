//! Was this request meant for us?
//!
//! A program that listens on loopback can still be reached by a hostile web site: it lets its own name resolve to 127.0.0.1,
//! and the visitor's browser then takes our page for the site's own (DNS rebinding). Such a request names the site in its
//! `Host`, so on loopback only loopback names are answered. On any other address the names are the operator's affair.

use std::net::{IpAddr, SocketAddr};

/// Whether a request whose `Host` header is `host` may be answered on `address`.
///
/// On loopback: `localhost`, names below it, 127.0.0.0/8 and `[::1]`, each with or without a port. Elsewhere: any host.
#[must_use]
pub fn is_meant_for(address: SocketAddr, host: &str) -> bool {
    !address.ip().is_loopback() || is_loopback_name(without_port(host))
}

fn without_port(host: &str) -> &str {
    if host.starts_with('[') {
        return host.find(']').map_or(host, |end| &host[..=end]);
    }
    host.split_once(':').map_or(host, |(name, _)| name)
}

fn is_loopback_name(name: &str) -> bool {
    let name = name.strip_suffix('.').unwrap_or(name).to_ascii_lowercase();
    if name == "localhost" || name.ends_with(".localhost") {
        return true;
    }
    let bare = name
        .strip_prefix('[')
        .and_then(|rest| rest.strip_suffix(']'))
        .unwrap_or(&name);
    bare.parse::<IpAddr>().is_ok_and(|ip| ip.is_loopback())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn on_loopback_only_loopback_names_are_answered() {
        let loopback: SocketAddr = "127.0.0.1:80".parse().unwrap();
        for host in [
            "localhost",
            "localhost:8000",
            "LOCALHOST.",
            "heap.localhost:1",
            "127.0.0.1:8000",
            "127.1.2.3",
            "[::1]:9",
            "[::1]",
        ] {
            assert!(is_meant_for(loopback, host), "{host}");
        }
        for host in [
            "",
            "heap.example",
            "localhost.example",
            "127.0.0.1.example:80",
            "10.0.0.1",
            "notlocalhost",
            "[::2]",
            "[",
            "0.0.0.0",
        ] {
            assert!(!is_meant_for(loopback, host), "{host}");
        }
    }

    #[test]
    fn elsewhere_every_name_is_answered() {
        assert!(is_meant_for(
            "192.0.2.1:80".parse().unwrap(),
            "heap.example"
        ));
    }
}
