//! The server as a browser meets it: real sockets, raw requests.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use heapwright_site::headers::ON_EVERY_ANSWER;
use heapwright_site::{CALENDAR, Calendar, Page, serve_until};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::oneshot;

const INDEX: &str =
    "<!doctype html><link rel=\"stylesheet\" href=\"./app-0123456789abcdef.css\"><p>Heapwright</p>";

struct Running {
    port: u16,
    stop: oneshot::Sender<()>,
    ended: tokio::task::JoinHandle<std::io::Result<()>>,
}

struct Reply {
    status: u16,
    headers: BTreeMap<String, String>,
    body: Vec<u8>,
}

impl Reply {
    fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", String::as_str)
    }
}

fn page() -> Page {
    let file = |name: &str, bytes: &[u8]| (name.to_owned(), bytes.to_vec());
    Page::of_files(BTreeMap::from([
        file("index.html", INDEX.as_bytes()),
        file("index.html.br", b"squeezed index"),
        file("app-0123456789abcdef.css", b"p { color: inherit }"),
        file("page_bg-0123456789abcdef.wasm", b"\0asm plain"),
        file("page_bg-0123456789abcdef.wasm.br", b"squeezed wasm"),
        file("page_bg-0123456789abcdef.wasm.gz", b"zipped wasm"),
        file("manifest.webmanifest", b"{}"),
        file("sw.js", b"// worker"),
    ]))
}

async fn start(page: Page) -> Running {
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let port = listener.local_addr().unwrap().port();
    let (stop, stopped) = oneshot::channel::<()>();
    let ended = tokio::spawn(serve_until(listener, page, None, async {
        let _ = stopped.await;
    }));
    Running { port, stop, ended }
}

async fn raw(port: u16, request: &str) -> Reply {
    let mut stream = TcpStream::connect(("127.0.0.1", port)).await.unwrap();
    stream.write_all(request.as_bytes()).await.unwrap();
    let mut bytes = Vec::new();
    stream.read_to_end(&mut bytes).await.unwrap();
    let end = bytes
        .windows(4)
        .position(|window| window == b"\r\n\r\n")
        .unwrap();
    let head = String::from_utf8(bytes[..end].to_vec()).unwrap();
    let mut lines = head.split("\r\n");
    let status = lines
        .next()
        .unwrap()
        .split(' ')
        .nth(1)
        .unwrap()
        .parse()
        .unwrap();
    let headers = lines
        .map(|line| line.split_once(':').unwrap())
        .map(|(name, value)| (name.to_ascii_lowercase(), value.trim().to_owned()))
        .collect();
    Reply {
        status,
        headers,
        body: bytes[end + 4..].to_vec(),
    }
}

async fn ask(port: u16, method: &str, path: &str, extra: &str) -> Reply {
    raw(
        port,
        &format!(
            "{method} {path} HTTP/1.1\r\nHost: localhost:{port}\r\nConnection: close\r\n{extra}\r\n"
        ),
    )
    .await
}

#[tokio::test]
async fn each_file_comes_with_its_type_and_its_time_to_live() {
    let running = start(page()).await;
    for (path, content_type, cache_control) in [
        ("/", "text/html; charset=utf-8", "no-cache"),
        ("/index.html", "text/html; charset=utf-8", "no-cache"),
        ("/sw.js", "text/javascript; charset=utf-8", "no-cache"),
        (
            "/manifest.webmanifest",
            "application/manifest+json",
            "no-cache",
        ),
        (
            "/app-0123456789abcdef.css",
            "text/css; charset=utf-8",
            "public, max-age=31536000, immutable",
        ),
        (
            "/page_bg-0123456789abcdef.wasm",
            "application/wasm",
            "public, max-age=31536000, immutable",
        ),
    ] {
        let reply = ask(running.port, "GET", path, "").await;
        assert_eq!(reply.status, 200, "{path}");
        assert_eq!(reply.header("content-type"), content_type, "{path}");
        assert_eq!(reply.header("cache-control"), cache_control, "{path}");
        assert_eq!(reply.header("vary"), "accept-encoding", "{path}");
    }
}

/// S2: exact headers on every answer, faults included, and no word about the server's make.
#[tokio::test]
async fn s2_every_answer_carries_the_rules() {
    let running = start(page()).await;
    let policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; \
        connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; \
        object-src 'none'; frame-ancestors 'none'";
    for (method, path, status) in [
        ("GET", "/", 200),
        ("GET", "/heap/3", 200),
        ("HEAD", "/sw.js", 200),
        ("GET", "/no.js", 404),
        ("POST", "/", 405),
    ] {
        let reply = ask(running.port, method, path, "").await;
        assert_eq!(reply.status, status, "{method} {path}");
        assert_eq!(
            reply.header("content-security-policy"),
            policy,
            "{method} {path}"
        );
        for (name, value) in ON_EVERY_ANSWER {
            assert_eq!(reply.header(name), value, "{method} {path} {name}");
        }
        assert!(!reply.headers.contains_key("server"), "{method} {path}");
    }
}

#[tokio::test]
async fn each_gets_the_smallest_form_that_it_takes() {
    let running = start(page()).await;
    let path = "/page_bg-0123456789abcdef.wasm";
    let squeezed = ask(running.port, "GET", path, "Accept-Encoding: gzip, br\r\n").await;
    assert_eq!(
        (
            squeezed.header("content-encoding"),
            squeezed.body.as_slice()
        ),
        ("br", b"squeezed wasm".as_slice())
    );
    assert_eq!(squeezed.header("content-type"), "application/wasm");
    let zipped = ask(running.port, "GET", path, "Accept-Encoding: gzip\r\n").await;
    assert_eq!(
        (zipped.header("content-encoding"), zipped.body.as_slice()),
        ("gzip", b"zipped wasm".as_slice())
    );
    assert_ne!(squeezed.header("etag"), zipped.header("etag"));
    let plain = ask(running.port, "GET", path, "Accept-Encoding: identity\r\n").await;
    assert_eq!(
        (plain.header("content-encoding"), plain.body.as_slice()),
        ("", b"\0asm plain".as_slice())
    );
    assert_ne!(squeezed.header("etag"), plain.header("etag"));
    let only_plain = ask(running.port, "GET", "/sw.js", "Accept-Encoding: br\r\n").await;
    assert_eq!(
        (
            only_plain.header("content-encoding"),
            only_plain.body.as_slice()
        ),
        ("", b"// worker".as_slice())
    );
}

#[tokio::test]
async fn an_unchanged_file_is_not_sent_again() {
    let running = start(page()).await;
    let first = ask(running.port, "GET", "/", "").await;
    let tag = first.header("etag");
    assert!(tag.starts_with('"') && tag.ends_with('"'), "{tag}");
    for asked in [
        tag.to_owned(),
        format!("W/{tag}"),
        format!("\"other\", {tag}"),
        "*".to_owned(),
    ] {
        let again = ask(
            running.port,
            "GET",
            "/",
            &format!("If-None-Match: {asked}\r\n"),
        )
        .await;
        assert_eq!((again.status, again.body.len()), (304, 0), "{asked}");
        assert_eq!(again.header("etag"), tag);
    }
    assert_eq!(
        ask(running.port, "GET", "/", "If-None-Match: \"other\"\r\n")
            .await
            .status,
        200
    );
}

#[tokio::test]
async fn head_tells_the_length_and_sends_nothing() {
    let running = start(page()).await;
    let reply = ask(running.port, "HEAD", "/", "").await;
    assert_eq!((reply.status, reply.body.len()), (200, 0));
    assert_eq!(reply.header("content-length"), INDEX.len().to_string());
}

#[tokio::test]
async fn a_place_inside_the_page_gets_the_index_with_references_that_hold_there() {
    let running = start(page()).await;
    for (path, prefix) in [
        ("/balance", "./"),
        ("/heap/3", "../"),
        ("/heap/3/", "../../"),
        ("/heap/3?when=now", "../"),
    ] {
        let reply = ask(running.port, "GET", path, "").await;
        let body = String::from_utf8(reply.body).unwrap();
        assert_eq!(reply.status, 200, "{path}");
        assert!(
            body.contains(&format!("href=\"{prefix}app-0123456789abcdef.css\"")),
            "{path}: {body}"
        );
    }
}

#[tokio::test]
async fn what_is_not_there_says_so() {
    let running = start(page()).await;
    for path in [
        "/gone.js",
        "/index.html.br",
        "/page_bg-0123456789abcdef.wasm.gz",
        "/..%2fCargo.toml",
        "/%2e%2e%2f%2e%2e%2fetc%2fhosts.txt",
        "//etc/hosts.txt",
        "/a/./app.css",
        "/../Cargo.toml",
        "/%2e%2e/Cargo.toml",
        "/.env.txt",
        "/heap/app.css",
    ] {
        let reply = ask(running.port, "GET", path, "").await;
        assert_eq!(reply.status, 404, "{path}");
        assert_eq!(reply.header("cache-control"), "no-store");
        assert!(
            String::from_utf8(reply.body)
                .unwrap()
                .contains("There is nothing here")
        );
    }
    let posted = ask(running.port, "POST", "/", "Content-Length: 0\r\n").await;
    assert_eq!((posted.status, posted.header("allow")), (405, "GET, HEAD"));
}

#[tokio::test]
async fn on_loopback_a_request_for_another_host_is_refused() {
    let running = start(page()).await;
    let get = |host: &str| format!("GET / HTTP/1.1\r\n{host}Connection: close\r\n\r\n");
    assert_eq!(
        raw(running.port, &get("Host: heap.example\r\n"))
            .await
            .status,
        421
    );
    assert_eq!(
        raw(running.port, &get("Host: 127.0.0.1\r\n")).await.status,
        200
    );
    assert_eq!(raw(running.port, &get("")).await.status, 400);
}

#[tokio::test]
async fn stops_when_told_even_while_a_slow_client_hangs_on() {
    let running = start(page()).await;
    let mut slow = TcpStream::connect(("127.0.0.1", running.port))
        .await
        .unwrap();
    slow.write_all(b"GET / HTTP/1.1\r\nHost: loc")
        .await
        .unwrap();
    assert_eq!(ask(running.port, "GET", "/", "").await.status, 200);
    running.stop.send(()).unwrap();
    tokio::time::timeout(Duration::from_secs(5), running.ended)
        .await
        .unwrap()
        .unwrap()
        .unwrap();
    assert!(
        TcpStream::connect(("127.0.0.1", running.port))
            .await
            .is_err()
    );
}

/// A client that asks letter by letter is let go after ten seconds; others are answered meanwhile.
#[tokio::test]
async fn who_never_finishes_asking_is_let_go() {
    let running = start(page()).await;
    let mut slow = TcpStream::connect(("127.0.0.1", running.port))
        .await
        .unwrap();
    slow.write_all(b"GET / HTTP/1.1\r\nHost: loc")
        .await
        .unwrap();
    let begun = std::time::Instant::now();
    assert_eq!(ask(running.port, "GET", "/", "").await.status, 200);
    let mut rest = Vec::new();
    tokio::time::timeout(Duration::from_secs(20), slow.read_to_end(&mut rest))
        .await
        .unwrap()
        .unwrap();
    let text = String::from_utf8_lossy(&rest);
    assert!(
        rest.is_empty() || text.starts_with("HTTP/1.1 408"),
        "{text}"
    );
    assert!(begun.elapsed() >= Duration::from_secs(9));
}

/// Many who connect and say nothing take no place from who asks, as long as they are fewer than there are places.
#[tokio::test]
async fn silent_clients_do_not_hold_up_others() {
    let running = start(page()).await;
    let mut silent = Vec::new();
    for _ in 0..200 {
        silent.push(
            TcpStream::connect(("127.0.0.1", running.port))
                .await
                .unwrap(),
        );
    }
    let reply = tokio::time::timeout(Duration::from_secs(5), ask(running.port, "GET", "/", ""));
    assert_eq!(reply.await.unwrap().status, 200);
    drop(silent);
}

#[tokio::test]
async fn every_method_but_two_is_refused_and_no_body_is_waited_for() {
    let running = start(page()).await;
    for method in ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "BREW"] {
        let reply = ask(running.port, method, "/", "Content-Length: 1000\r\n").await;
        assert_eq!(reply.status, 405, "{method}");
        assert_eq!(reply.header("allow"), "GET, HEAD", "{method}");
    }
    let long = format!("X-Long: {}\r\n", "a".repeat(1 << 20));
    assert!(ask(running.port, "GET", "/", &long).await.status >= 400);
    // A part of a file is never needed: the whole is sent, as the standard allows.
    let part = ask(running.port, "GET", "/sw.js", "Range: bytes=0-1\r\n").await;
    assert_eq!((part.status, part.body.len()), (200, b"// worker".len()));
}

/// Whether or not a bundle was built before, the embedded page answers with HTML.
#[tokio::test]
async fn the_embedded_page_opens() {
    let running = start(Page::embedded()).await;
    let reply = ask(running.port, "GET", "/", "").await;
    assert_eq!(reply.status, 200);
    assert!(
        String::from_utf8(reply.body)
            .unwrap()
            .contains("Heapwright")
    );
}

/// On an address of the network a web site that lets its name lead here gets the page, never the journal; and who asks
/// again at once costs nothing.
#[tokio::test]
async fn reminders_are_for_the_house_and_worked_out_once() {
    let listener = TcpListener::bind("0.0.0.0:0").await.unwrap();
    let port = listener.local_addr().unwrap().port();
    let asked = Arc::new(AtomicUsize::new(0));
    let counted = Arc::clone(&asked);
    let calendar: Calendar = Arc::new(move || {
        counted.fetch_add(1, Ordering::SeqCst);
        Ok("BEGIN:VCALENDAR".to_owned())
    });
    let (stop, stopped) = oneshot::channel::<()>();
    let ended = tokio::spawn(serve_until(listener, page(), Some(calendar), async {
        let _ = stopped.await;
    }));
    let of = async |host: &str, path: &str| {
        raw(
            port,
            &format!("GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"),
        )
        .await
    };
    assert_eq!(of("heap.example", "/").await.status, 200);
    let refused = of("heap.example", CALENDAR).await;
    assert_eq!(refused.status, 403);
    assert_eq!(asked.load(Ordering::SeqCst), 0);
    for host in ["127.0.0.1", "shed.local:8420", "[::1]"] {
        let told = of(host, CALENDAR).await;
        assert_eq!(
            (told.status, told.body.as_slice()),
            (200, &b"BEGIN:VCALENDAR"[..]),
            "{host}"
        );
    }
    assert_eq!(asked.load(Ordering::SeqCst), 1);
    stop.send(()).unwrap();
    ended.await.unwrap().unwrap();
}
