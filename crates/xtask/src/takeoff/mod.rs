//! `cargo xtask takeoff FILE`: the areas and materials of a save file, without a browser.

mod text;

use std::fs;
use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use std::rc::Rc;

use anyhow::Result;
use workshop::Analysis;
use workshop::format::{LoadError, Loaded, MAX_BYTES, load};
use workshop::out::report;

/// The file could not be read; distinct from a file of which some piece cannot be.
const NOT_READ: u8 = 2;

/// In which form a takeoff is printed.
#[derive(Clone, Copy, Default, clap::Args)]
pub(crate) struct Form {
    /// Print all of it as JSON, for programs
    #[arg(long)]
    pub json: bool,
    /// Add every face, the groups and the lengths of edges
    #[arg(long, conflicts_with = "json")]
    pub faces: bool,
    /// Add the ranges, their causes, the tools side by side, the formulas and their sources
    #[arg(long)]
    pub math: bool,
}

/// Prints the takeoff of a file. Notices, and measurements that do not fit, go to the standard error.
pub(crate) fn of_file(path: &Path, form: Form) -> Result<ExitCode> {
    let loaded = match read(path) {
        Ok(loaded) => loaded,
        Err(message) => {
            eprintln!("{}: {message}", path.display());
            return Ok(ExitCode::from(NOT_READ));
        }
    };
    let Loaded { workshop, notices } = &loaded;
    for notice in notices {
        eprintln!("{}", plain(&notice.to_string()));
    }
    let mut code = ExitCode::SUCCESS;
    let analysis = Analysis::of(Rc::new(workshop.clone()));
    for piece in &workshop.pieces {
        let takeoff = analysis.takeoff(piece);
        for problem in takeoff.as_ref().as_ref().err().into_iter().flatten() {
            let sentence = problem.message(|length| units::show_length(length, workshop.units));
            eprintln!("{}: {sentence}", plain(&piece.name));
            code = ExitCode::FAILURE;
        }
    }
    let text = if form.json {
        format!("{}\n", serde_json::to_string_pretty(&report(&loaded, form.math))?)
    } else {
        text::of(&analysis, form)
    };
    match io::stdout().write_all(text.as_bytes()) {
        // Whoever reads, `head` for one, may stop when it has seen enough.
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(error.into()),
        _ => Ok(code),
    }
}

fn read(path: &Path) -> Result<Loaded, String> {
    let size = fs::metadata(path).map_err(|error| error.to_string())?.len();
    if size > MAX_BYTES as u64 {
        let bytes = usize::try_from(size).unwrap_or(usize::MAX);
        return Err(LoadError::TooLarge { bytes }.to_string());
    }
    let bytes = fs::read(path).map_err(|error| error.to_string())?;
    let text =
        String::from_utf8(bytes).map_err(|_| "Choose a UTF-8 text file. This isn't one.".to_owned())?;
    load(&text).map_err(|error| error.to_string())
}

/// A text from a file without control characters, which a terminal might obey.
fn plain(text: &str) -> String {
    text.replace(char::is_control, " ")
}

#[cfg(test)]
mod tests;
