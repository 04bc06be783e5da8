//! Writes the solids of the pieces of `tests/outside/src/seen.rs`, one piece a line, for `tests/cad/seen.py`.

use std::io::{BufWriter, Write};

fn main() -> std::io::Result<()> {
    let mut out = BufWriter::new(std::io::stdout().lock());
    for (name, piece) in outside::seen::pieces() {
        if let Some(solids) = outside::seen::solids(&name, &piece) {
            writeln!(out, "{solids}")?;
        }
    }
    out.flush()
}
