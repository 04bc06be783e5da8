//! A server for the built page, for this machine only.
//!
//! It sends what a public host would have to send too, so the page is tried under the same rules.

mod files;
mod headers;

use std::convert::Infallible;
use std::io::Write;
use std::net::{Ipv4Addr, TcpListener};
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use anyhow::{Context, Result};
use http_body_util::Full;
use hyper::body::Bytes;
use hyper::header::{ACCEPT_ENCODING, CONTENT_ENCODING, HeaderMap, HeaderValue};
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper::{Method, Request, Response, StatusCode};
use hyper_util::rt::{TokioIo, TokioTimer};

use crate::build;
use crate::repository::Repository;
use files::{Folder, Sent};

/// The port that is tried first, and how many after it.
const PORT: u16 = 8765;
const PORTS: u16 = 20;

/// Browsers open connections that they may never use; after this they are closed.
const PATIENCE: Duration = Duration::from_secs(10);

/// Serves the page until the program is ended; builds it first if its sources changed.
pub(crate) fn built_page(port: Option<u16>) -> Result<()> {
    // The port comes first: nobody wants to hear after a minute of building that it is taken.
    let listener = port.map_or_else(first_free, listen)?;
    build::page_if_older()?;
    let folder = Folder::open(&Repository::find()?.dist())?;
    announce(&format!(
        "Coatwright is at {} until you press Ctrl+C.",
        address(&listener)?
    ))?;
    serve(folder, listener)
}

/// Serves a folder until the program is ended. Port 0 is any free one.
/// Compressing takes some seconds, so it is done only for those who want to know how long the page is on its way.
pub(crate) fn folder(folder: &Path, port: u16, compressed: bool) -> Result<()> {
    let folder = Folder::open(folder)?;
    let folder = if compressed { folder.compressed()? } else { folder };
    let listener = listen(port)?;
    announce(&address(&listener)?)?;
    serve(folder, listener)
}

fn listen(port: u16) -> Result<TcpListener> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port))
        .with_context(|| format!("Use another port, or --port 0 for any free one. Port {port} is taken."))
}

fn first_free() -> Result<TcpListener> {
    let last = PORT + PORTS - 1;
    (PORT..=last)
        .find_map(|port| listen(port).ok())
        .with_context(|| format!("Run: cargo xtask serve --port 0. Ports {PORT} to {last} are all taken."))
}

fn address(listener: &TcpListener) -> Result<String> {
    Ok(format!("http://{}/", listener.local_addr()?))
}

fn announce(line: &str) -> Result<()> {
    let mut out = std::io::stdout();
    writeln!(out, "{line}")?;
    // Whoever started this as a child waits for the line.
    Ok(out.flush()?)
}

/// Answers until the program is ended. One thread is enough: the files are small and on this machine.
fn serve(folder: Folder, listener: TcpListener) -> Result<()> {
    let folder = Arc::new(folder);
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()?;
    listener.set_nonblocking(true)?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener)?;
        loop {
            let (stream, _) = listener.accept().await?;
            let folder = Arc::clone(&folder);
            let service = service_fn(move |request| {
                let answer = answer(&folder, &request);
                async { Ok::<_, Infallible>(answer) }
            });
            tokio::spawn(async move {
                let mut connection = http1::Builder::new();
                connection.timer(TokioTimer::new()).header_read_timeout(PATIENCE);
                // A browser that goes away in the middle is no fault of the server.
                let _ = connection.serve_connection(TokioIo::new(stream), service).await;
            });
        }
    })
}

fn answer<B>(folder: &Folder, request: &Request<B>) -> Response<Full<Bytes>> {
    let plain = |text: &str| Sent {
        kind: headers::TEXT,
        is_compressed: false,
        body: text.into(),
    };
    let (status, sent) = match *request.method() {
        Method::GET | Method::HEAD => {
            let address = request.uri().to_string();
            match folder.read(&address, takes_brotli(request.headers())) {
                Some(sent) => (StatusCode::OK, sent),
                None => (StatusCode::NOT_FOUND, plain("No such file.\n")),
            }
        }
        _ => (StatusCode::METHOD_NOT_ALLOWED, plain("Use GET or HEAD.\n")),
    };
    let mut response = Response::new(Full::from(sent.body));
    *response.status_mut() = status;
    for (name, value) in headers::of(sent.kind) {
        response
            .headers_mut()
            .insert(name, HeaderValue::from_static(value));
    }
    if sent.is_compressed {
        let brotli = HeaderValue::from_static("br");
        response.headers_mut().insert(CONTENT_ENCODING, brotli);
    }
    response
}

/// Whether the browser says that it takes brotli.
fn takes_brotli(headers: &HeaderMap) -> bool {
    let lines = headers.get_all(ACCEPT_ENCODING).into_iter();
    // With a weight behind it, it is taken too, unless the weight is zero; no browser writes that.
    lines
        .filter_map(|line| line.to_str().ok())
        .flat_map(|line| line.split(','))
        .filter_map(|encoding| encoding.split(';').next())
        .any(|name| name.trim() == "br")
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;
    use std::net::TcpStream;
    use std::thread;

    /// Starts a server on a folder with a page and a wasm file, and gives its address. It ends with the tests.
    fn start(name: &str) -> std::net::SocketAddr {
        let dist = std::env::temp_dir().join(format!("coatwright-serve-{name}"));
        std::fs::create_dir_all(&dist).unwrap();
        std::fs::write(dist.join("index.html"), "<!doctype html>").unwrap();
        std::fs::write(dist.join("app.wasm"), "wasm").unwrap();
        std::fs::write(dist.join("service-worker.js"), "").unwrap();
        let listener = listen(0).unwrap();
        let address = listener.local_addr().unwrap();
        let folder = Folder::open(&dist).unwrap();
        thread::spawn(move || serve(folder, listener));
        address
    }

    fn ask(address: std::net::SocketAddr, line: &str) -> String {
        let mut stream = TcpStream::connect(address).unwrap();
        write!(stream, "{line} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }

    #[test]
    fn the_page_comes_with_its_headers() {
        let address = start("headers");
        let answer = ask(address, "GET /");
        assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
        assert!(answer.ends_with("\r\n\r\n<!doctype html>"), "{answer}");
        for header in [
            "content-type: text/html; charset=utf-8",
            "x-content-type-options: nosniff",
            "referrer-policy: no-referrer",
            "cache-control: no-cache",
        ] {
            assert!(answer.contains(header), "{header} is not in {answer}");
        }
        assert!(answer.contains(&format!("content-security-policy: {}", headers::POLICY)));
        assert!(ask(address, "GET /app.wasm?v=1").contains("content-type: application/wasm\r\n"));
    }

    /// Browsers take a worker only as a script, and would look after it by an old copy for a day.
    #[test]
    fn the_service_worker_is_a_script_that_is_asked_for_each_time() {
        let answer = ask(start("worker"), "GET /service-worker.js");
        for header in [
            "content-type: text/javascript; charset=utf-8\r\n",
            "cache-control: no-cache\r\n",
        ] {
            assert!(answer.contains(header), "{header} is not in {answer}");
        }
    }

    #[test]
    fn brotli_is_sent_to_those_who_take_it_and_to_no_one_else() {
        let dist = std::env::temp_dir().join(format!("coatwright-serve-brotli-{}", std::process::id()));
        std::fs::create_dir_all(&dist).unwrap();
        let page = "<!doctype html>".repeat(100);
        std::fs::write(dist.join("index.html"), &page).unwrap();
        let folder = Folder::open(&dist).unwrap().compressed().unwrap();
        let small = folder.read("/", true).unwrap();
        assert!(
            small.is_compressed && small.body.len() < 100,
            "{}",
            small.body.len()
        );
        let plain = folder.read("/", false).unwrap();
        assert!(!plain.is_compressed && plain.body == page.as_bytes());
        std::fs::remove_dir_all(dist).unwrap();

        for (encodings, takes) in [
            ("gzip, deflate, br, zstd", true),
            ("br;q=0.8", true),
            ("gzip", false),
        ] {
            let mut headers = HeaderMap::new();
            headers.insert(ACCEPT_ENCODING, HeaderValue::from_static(encodings));
            assert_eq!(takes_brotli(&headers), takes, "{encodings}");
        }
        assert!(!takes_brotli(&HeaderMap::new()));
    }

    #[test]
    fn connections_that_ask_for_nothing_hold_up_no_one() {
        let address = start("idle");
        let idle: Vec<TcpStream> = (0..12).map(|_| TcpStream::connect(address).unwrap()).collect();
        assert!(ask(address, "GET /").starts_with("HTTP/1.1 200"));
        drop(idle);
    }

    #[test]
    fn nothing_but_reading_files_is_answered() {
        let address = start("methods");
        let head = ask(address, "HEAD /");
        assert!(
            head.starts_with("HTTP/1.1 200") && head.ends_with("\r\n\r\n"),
            "{head}"
        );
        assert!(head.contains("content-length: 15"), "{head}");
        assert!(ask(address, "POST /").starts_with("HTTP/1.1 405"));
        for outside in ["/../Cargo.toml", "/%2e%2e/Cargo.toml", "http://elsewhere/"] {
            let answer = ask(address, &format!("GET {outside}"));
            assert!(answer.starts_with("HTTP/1.1 404"), "{outside}: {answer}");
        }
    }
}
