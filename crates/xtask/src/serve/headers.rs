//! What the server says about each file.

use std::path::Path;

/// What the page may load and do. `www/index.html` repeats it for hosts that cannot send headers.
///
/// Yew needs no inline style or script; `wasm-unsafe-eval` lets wasm be compiled and nothing else. Photos and files
/// that the maker picks or saves are `blob:` and `data:`.
pub(super) const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; font-src 'self'; \
                          img-src 'self' blob: data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
                          base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// The kind of a plain answer.
pub(super) const TEXT: &str = "text/plain; charset=utf-8";

/// The kind of a file by the ending of its name.
pub(super) fn kind(path: &Path) -> &'static str {
    match path.extension().and_then(|ending| ending.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        Some("txt") => TEXT,
        _ => "application/octet-stream",
    }
}

/// The headers of an answer of this kind, as name and value.
pub(super) fn of(kind: &'static str) -> [(&'static str, &'static str); 7] {
    [
        ("content-type", kind),
        ("allow", "GET, HEAD"),
        ("content-security-policy", POLICY),
        ("x-content-type-options", "nosniff"),
        ("referrer-policy", "no-referrer"),
        ("cache-control", "no-cache"),
        ("vary", "Accept-Encoding"),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::repository::Repository;

    #[test]
    fn the_page_repeats_the_policy() {
        let page = Repository::find().unwrap().read("www/index.html").unwrap();
        // A policy in the page cannot say who may frame it.
        let policy = POLICY.strip_suffix("; frame-ancestors 'none'").unwrap();
        let line = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
        assert!(page.contains(&line), "www/index.html lacks {line}");
    }

    #[test]
    fn scripts_and_wasm_have_the_kinds_that_browsers_insist_on() {
        let kinds = ["a.js", "a.wasm", "a.webmanifest", "a"].map(|name| kind(Path::new(name)));
        assert_eq!(
            kinds,
            [
                "text/javascript; charset=utf-8",
                "application/wasm",
                "application/manifest+json",
                "application/octet-stream"
            ]
        );
    }
}
