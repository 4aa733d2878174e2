//! Was this request meant for us?
//!
//! A program that listens on loopback can still be reached by a hostile web site: it lets its own name resolve to 127.0.0.1,
//! and the visitor's browser then takes our page for the site's own (DNS rebinding). Such a request names the site in its
//! `Host`, so on loopback only loopback names are answered. On any other address the names are the operator's affair, but for
//! what a journal says: that is answered only to who asks by a number or by a name that no web site can have.

use std::net::{IpAddr, SocketAddr};

/// Whether a request whose `Host` header is `host` may be answered on `address`.
///
/// On loopback: `localhost`, names below it, 127.0.0.0/8 and `[::1]`, each with or without a port. Elsewhere: any host.
#[must_use]
pub fn is_meant_for(address: SocketAddr, host: &str) -> bool {
    !address.ip().is_loopback() || is_loopback_name(without_port(host))
}

/// Whether what a journal says may be told to who asks for it as `host`: an address in numbers, `localhost`, or a name of the
/// house (`.local`, RFC 6762; `.home.arpa`, RFC 8375). A web site that lets its own name lead here has none of these.
#[must_use]
pub fn is_of_the_house(host: &str) -> bool {
    let name = without_port(host);
    let name = name.strip_suffix('.').unwrap_or(name).to_ascii_lowercase();
    let bare = name
        .strip_prefix('[')
        .and_then(|rest| rest.strip_suffix(']'))
        .unwrap_or(&name);
    bare.parse::<IpAddr>().is_ok()
        || is_loopback_name(&name)
        || [".local", ".home.arpa"]
            .iter()
            .any(|ending| name.ends_with(ending))
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
    fn a_journal_is_told_of_only_within_the_house() {
        for host in [
            "192.0.2.1:8420",
            "[2001:db8::1]:8420",
            "localhost",
            "shed.local:8420",
            "Shed.Home.Arpa.",
        ] {
            assert!(is_of_the_house(host), "{host}");
        }
        for host in [
            "",
            "heap.example",
            "192.0.2.1.example",
            "local",
            "[",
            "evil.local.example",
        ] {
            assert!(!is_of_the_house(host), "{host}");
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
