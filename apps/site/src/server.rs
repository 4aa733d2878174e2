//! Listens, hands requests to the page, puts the rules on every answer, and stops when told to.

use std::borrow::Cow;
use std::future::Future;
use std::io;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::{Duration, Instant};

use axum::Router;
use axum::body::Body;
use axum::extract::State;
use axum::http::{
    HeaderMap, HeaderName, HeaderValue, Method, Request, Response, StatusCode, header,
};
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use tokio::net::TcpListener;
use tokio::sync::Mutex;

use crate::headers::ON_EVERY_ANSWER;
use crate::host::{is_meant_for, is_of_the_house};
use crate::page::{Answer, Page, Takes};
use crate::places::Places;

/// How long a client may take to ask: who sends a request letter by letter holds a place no longer.
const LONGEST_ASKING: Duration = Duration::from_secs(10);

/// How long a connection lasts at most: time enough for the page over the slowest link.
const LONGEST_CONNECTION: Duration = Duration::from_secs(600);

/// How long to wait when no connection can be taken.
const BREATH: Duration = Duration::from_millis(200);

/// How long an answer that is under way may still take after the program was told to stop.
const LAST_ANSWERS: Duration = Duration::from_secs(1);

const NOT_FOUND: &str = "<!doctype html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n\
    <meta name=\"viewport\" content=\"width=device-width\">\n<title>Not found: Heapwright</title>\n\
    <h1>There is nothing here</h1>\n<p>Check the address, or go back to the page you came from.</p>\n</html>\n";

const CALENDAR_TYPE: &str = "text/calendar; charset=utf-8";

/// Where reminders are.
pub const CALENDAR: &str = "/calendar.ics";

/// What works out reminders anew for each request: the file, or why there is none.
pub type Calendar = Arc<dyn Fn() -> Result<String, String> + Send + Sync>;

/// For how long reminders that were worked out are handed out again: whoever asks more often costs nothing.
const CALENDAR_HOLDS: Duration = Duration::from_secs(1);

/// Reminders, worked out by one request at a time.
struct Reminders {
    calendar: Calendar,
    last: Mutex<Option<(Instant, Result<String, String>)>>,
}

#[derive(Clone)]
struct Site {
    page: Page,
    address: SocketAddr,
    reminders: Option<Arc<Reminders>>,
}

/// Serves the embedded page, and reminders where there are any, on `listener` until Ctrl-C (or, on Unix, a polite request to
/// end).
///
/// # Errors
/// When the listener has no address.
pub async fn serve(listener: TcpListener, calendar: Option<Calendar>) -> io::Result<()> {
    serve_until(listener, Page::embedded(), calendar, told_to_stop()).await
}

/// Serves `page` on `listener` until `stop` is done; answers under way then have one second to finish.
///
/// # Errors
/// When the listener has no address.
pub async fn serve_until<Stop>(
    listener: TcpListener,
    page: Page,
    calendar: Option<Calendar>,
    stop: Stop,
) -> io::Result<()>
where
    Stop: Future<Output = ()> + Send + 'static,
{
    let site = Site {
        page,
        address: listener.local_addr()?,
        reminders: calendar.map(|calendar| {
            Arc::new(Reminders {
                calendar,
                last: Mutex::new(None),
            })
        }),
    };
    let service = TowerToHyperService::new(Router::new().fallback(answer).with_state(site));
    let under_way = GracefulShutdown::new();
    let places = Places::new();
    tokio::pin!(stop);
    loop {
        // A place first: who finds none waits in the system's queue, and costs nothing here.
        let (place, accepted) = tokio::select! {
            () = &mut stop => break,
            next = async {
                let place = places.next().await;
                (place, listener.accept().await)
            } => next,
        };
        let Ok((stream, client)) = accepted else {
            // Mostly too many open files: some will be closed.
            tokio::time::sleep(BREATH).await;
            continue;
        };
        // Who holds too many is hung up on, and the place is free for others.
        let Some(place) = place.ok().and_then(|place| places.of(place, client.ip())) else {
            continue;
        };
        let connection = http1::Builder::new()
            .timer(TokioTimer::new())
            .header_read_timeout(LONGEST_ASKING)
            .serve_connection(TokioIo::new(stream), service.clone());
        let connection = under_way.watch(connection);
        tokio::spawn(async move {
            // However it ends, the place is free again; a browser asks anew.
            let _ = tokio::time::timeout(LONGEST_CONNECTION, connection).await;
            drop(place);
        });
    }
    drop(listener);
    tokio::select! {
        () = under_way.shutdown() => {}
        () = tokio::time::sleep(LAST_ANSWERS) => {}
    }
    Ok(())
}

async fn told_to_stop() {
    let interrupted = async {
        if tokio::signal::ctrl_c().await.is_err() {
            std::future::pending::<()>().await;
        }
    };
    #[cfg(unix)]
    let ended = async {
        match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
            Ok(mut signal) => {
                signal.recv().await;
            }
            Err(_) => std::future::pending::<()>().await,
        }
    };
    #[cfg(not(unix))]
    let ended = std::future::pending::<()>();
    tokio::select! {
        () = interrupted => {}
        () = ended => {}
    }
}

async fn answer(State(site): State<Site>, request: Request<Body>) -> Response<Body> {
    let mut response = match (refused(&site, &request), &site.reminders) {
        (Some(refusal), _) => refusal,
        (None, Some(held)) if request.uri().path() == CALENDAR => {
            match text(request.headers(), header::HOST) {
                Some(host) if is_of_the_house(host) => reminders(held).await,
                _ => plain(
                    StatusCode::FORBIDDEN,
                    "Reminders are told only to who asks for this computer by its address or by a name ending in .local.\n",
                ),
            }
        }
        (None, _) => choose(&site, &request),
    };
    for (name, value) in ON_EVERY_ANSWER {
        response.headers_mut().insert(
            HeaderName::from_static(name),
            HeaderValue::from_static(value),
        );
    }
    if request.method() == Method::HEAD {
        *response.body_mut() = Body::empty();
    }
    response
}

/// Reminders as they are now. They are worked out beside the server, which goes on answering.
async fn reminders(reminders: &Reminders) -> Response<Body> {
    let mut last = reminders.last.lock().await;
    let held = last
        .as_ref()
        .filter(|(at, _)| at.elapsed() < CALENDAR_HOLDS)
        .map(|(_, told)| told.clone());
    let told = match held {
        Some(told) => told,
        None => {
            let calendar = Arc::clone(&reminders.calendar);
            let told = tokio::task::spawn_blocking(move || calendar())
                .await
                .unwrap_or_else(|error| Err(error.to_string()));
            *last = Some((Instant::now(), told.clone()));
            told
        }
    };
    match told {
        Ok(file) => said(StatusCode::OK, CALENDAR_TYPE, file),
        // Why it failed names files of this computer; whoever started the program can ask it.
        _ => plain(
            StatusCode::SERVICE_UNAVAILABLE,
            "The journal cannot be read: see what `heapwright today` says.\n",
        ),
    }
}

/// Why a request is not answered, if it is not.
fn refused(site: &Site, request: &Request<Body>) -> Option<Response<Body>> {
    let Some(host) = text(request.headers(), header::HOST) else {
        return Some(plain(
            StatusCode::BAD_REQUEST,
            "The request does not name a host.\n",
        ));
    };
    if !is_meant_for(site.address, host) {
        return Some(plain(
            StatusCode::MISDIRECTED_REQUEST,
            "Open this page by the address that the program printed.\n",
        ));
    }
    if request.method() != Method::GET && request.method() != Method::HEAD {
        let mut response = plain(
            StatusCode::METHOD_NOT_ALLOWED,
            "This page can only be read.\n",
        );
        response
            .headers_mut()
            .insert(header::ALLOW, HeaderValue::from_static("GET, HEAD"));
        return Some(response);
    }
    None
}

fn choose(site: &Site, request: &Request<Body>) -> Response<Body> {
    let takes = text(request.headers(), header::ACCEPT_ENCODING).map(Takes::from_header);
    match site
        .page
        .answer(request.uri().path(), takes.unwrap_or_default())
    {
        Some(found) => with_body(found, request.headers()),
        None => html(StatusCode::NOT_FOUND, NOT_FOUND),
    }
}

fn with_body(found: Answer, asked: &HeaderMap) -> Response<Body> {
    let unchanged =
        text(asked, header::IF_NONE_MATCH).is_some_and(|tags| names(tags, &found.entity_tag));
    let length = found.body.len();
    let body = if unchanged {
        Body::empty()
    } else {
        Body::from(found.body.into_owned())
    };
    let mut response = Response::new(body);
    let headers = response.headers_mut();
    headers.insert(
        header::CACHE_CONTROL,
        HeaderValue::from_static(found.cache_control),
    );
    headers.insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    if let Ok(tag) = HeaderValue::from_str(&found.entity_tag) {
        headers.insert(header::ETAG, tag);
    }
    if unchanged {
        *response.status_mut() = StatusCode::NOT_MODIFIED;
        return response;
    }
    headers.insert(
        header::CONTENT_TYPE,
        HeaderValue::from_static(found.content_type),
    );
    headers.insert(header::CONTENT_LENGTH, HeaderValue::from(length));
    if let Some(encoding) = found.encoding {
        headers.insert(header::CONTENT_ENCODING, HeaderValue::from_static(encoding));
    }
    response
}

/// Whether an `If-None-Match` list names `tag`, compared weakly as the standard asks (RFC 9110, 13.1.2).
fn names(list: &str, tag: &str) -> bool {
    list.split(',')
        .map(str::trim)
        .any(|each| each == "*" || each.strip_prefix("W/").unwrap_or(each) == tag)
}

fn text(headers: &HeaderMap, name: HeaderName) -> Option<&str> {
    headers.get(name)?.to_str().ok()
}

fn plain(status: StatusCode, sentence: &'static str) -> Response<Body> {
    said(status, "text/plain; charset=utf-8", sentence)
}

fn html(status: StatusCode, page: &'static str) -> Response<Body> {
    said(status, "text/html; charset=utf-8", page)
}

fn said(
    status: StatusCode,
    content_type: &'static str,
    body: impl Into<Cow<'static, str>>,
) -> Response<Body> {
    let body = body.into().into_owned();
    let length = body.len();
    let mut response = Response::new(Body::from(body));
    *response.status_mut() = status;
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(content_type));
    headers.insert(header::CONTENT_LENGTH, HeaderValue::from(length));
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
    response
}
