//! A server for the built page, for this machine only.
//!
//! It sends what a public host would have to send too, so the page is tried under the same rules.

mod files;
mod headers;

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::Path;
use std::thread;
use std::time::Duration;

use anyhow::{Context, Result};

use crate::build;
use crate::repository::Repository;
use files::{Folder, Sent};

/// The port that is tried first, and how many after it.
const PORT: u16 = 8765;
const PORTS: u16 = 20;

/// The longest request that is read; the browsers' own are a tenth of it.
const LONGEST_REQUEST: u64 = 16 * 1024;

/// Browsers open connections that they may never use; after this they are closed.
const PATIENCE: Duration = Duration::from_secs(10);

/// Builds the page and serves it until the program is ended.
pub fn built_page(port: Option<u16>) -> Result<()> {
    // The port comes first: nobody wants to hear after a minute of building that it is taken.
    let listener = port.map_or_else(first_free, listen)?;
    build::page()?;
    let folder = Folder::open(&Repository::find()?.dist())?;
    announce(&format!(
        "Coatwright is at {} until you press Ctrl+C.",
        address(&listener)?
    ))?;
    serve(&folder, listener)
}

/// Serves a folder until the program is ended. Port 0, which is what is taken if none is named, is any free one.
/// Compressing takes some seconds, so it is done only for those who want to know how long the page is on its way.
pub fn folder(folder: &Path, port: Option<u16>, compressed: bool) -> Result<()> {
    let folder = Folder::open(folder)?;
    let folder = if compressed { folder.compressed()? } else { folder };
    let listener = listen(port.unwrap_or(0))?;
    announce(&address(&listener)?)?;
    serve(&folder, listener)
}

fn listen(port: u16) -> Result<TcpListener> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).with_context(|| {
        format!("Port {port} cannot be had. Name another one, or --port 0 for any that is free.")
    })
}

fn first_free() -> Result<TcpListener> {
    let last = PORT + PORTS - 1;
    (PORT..=last)
        .find_map(|port| listen(port).ok())
        .with_context(|| format!("Ports {PORT} to {last} are all taken. Type: cargo xtask serve --port 0"))
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

/// One thread for each connection, and one request on each: the small servers that keep connections open hand
/// them to a few threads, and a browser that opens six at once then waits for ever.
fn serve(folder: &Folder, listener: TcpListener) -> Result<()> {
    thread::scope(|scope| {
        for stream in listener.incoming().flatten() {
            scope.spawn(move || {
                // A browser that went away in the middle is none of the server's business.
                let _ = answer(folder, stream);
            });
        }
    });
    Ok(())
}

fn answer(folder: &Folder, mut stream: TcpStream) -> std::io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    let mut lines = BufReader::new(stream.try_clone()?.take(LONGEST_REQUEST)).lines();
    let Some(request) = lines.next().transpose()? else {
        return Ok(());
    };
    // The rest of the head is read, so that closing the connection does not cut off the answer.
    let mut takes_brotli = false;
    for line in lines {
        let line = line?;
        if line.is_empty() {
            break;
        }
        takes_brotli = takes_brotli || names_brotli(&line);
    }
    let mut words = request.split(' ');
    let (method, address) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let plain = |text: &str| Sent {
        kind: headers::TEXT,
        is_compressed: false,
        body: text.into(),
    };
    let (status, sent) = match method {
        "GET" | "HEAD" => match folder.read(address, takes_brotli) {
            Some(sent) => ("200 OK", sent),
            None => ("404 Not Found", plain("There is no such file.\n")),
        },
        _ => ("405 Method Not Allowed", plain("Only GET and HEAD.\n")),
    };
    write!(stream, "HTTP/1.1 {status}\r\n")?;
    for (name, value) in headers::of(sent.kind) {
        write!(stream, "{name}: {value}\r\n")?;
    }
    if sent.is_compressed {
        write!(stream, "Content-Encoding: br\r\n")?;
    }
    write!(
        stream,
        "Content-Length: {}\r\nConnection: close\r\n\r\n",
        sent.body.len()
    )?;
    if method != "HEAD" {
        stream.write_all(&sent.body)?;
    }
    stream.flush()
}

/// Whether a line of a request says that the browser takes brotli.
fn names_brotli(line: &str) -> bool {
    let Some((name, encodings)) = line.split_once(':') else {
        return false;
    };
    // With a weight behind it, it is taken too, unless the weight is nothing at all; no browser writes that.
    let mut names = encodings
        .split(',')
        .filter_map(|encoding| encoding.split(';').next());
    name.eq_ignore_ascii_case("accept-encoding") && names.any(|name| name.trim() == "br")
}

#[cfg(test)]
mod tests {
    use super::*;

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
        thread::spawn(move || serve(&folder, listener));
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
            "Content-Type: text/html; charset=utf-8",
            "X-Content-Type-Options: nosniff",
            "Referrer-Policy: no-referrer",
            "Cache-Control: no-cache",
        ] {
            assert!(answer.contains(header), "{header} is not in {answer}");
        }
        assert!(answer.contains(&format!("Content-Security-Policy: {}", headers::POLICY)));
        assert!(ask(address, "GET /app.wasm?v=1").contains("Content-Type: application/wasm\r\n"));
    }

    /// Browsers take a worker only as a script, and would look after it by an old copy for a day.
    #[test]
    fn the_service_worker_is_a_script_that_is_asked_for_each_time() {
        let answer = ask(start("worker"), "GET /service-worker.js");
        for header in [
            "Content-Type: text/javascript; charset=utf-8\r\n",
            "Cache-Control: no-cache\r\n",
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

        assert!(names_brotli("Accept-Encoding: gzip, deflate, br, zstd"));
        assert!(names_brotli("accept-encoding: br;q=0.8"));
        assert!(!names_brotli("Accept-Encoding: gzip") && !names_brotli("Accept: br") && !names_brotli("br"));
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
        assert!(head.contains("Content-Length: 15"), "{head}");
        assert!(ask(address, "POST /").starts_with("HTTP/1.1 405"));
        assert!(ask(address, "GET /../Cargo.toml").starts_with("HTTP/1.1 404"));
    }
}
