//! How heavy the page is on the line.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};

use crate::brotli;
use crate::table::{Align, Table};

/// What all files of the page may weigh together, compressed with brotli: bytes.
///
/// The design wants 700 kB for everything, most of it in the background, and 150 kB for a start that can be used. The page is
/// over that and still one file. The computation alone, with no screen, is half of it (`cargo xtask module`). By the sizes of
/// functions a quarter of the code builds what the screens show, 15% is geometry, a tenth Yew itself; no function stands
/// out. Geometry built for size (`opt-level = "z"`) would save 12 kB and slow every key press. Other options of `wasm-opt` give
/// two kilobytes at most; inlining nothing, outlining and hoisting in the compiler give nothing. It was 652 kB before the page
/// had a font of its own (19), stages with a drawing to touch, statuses, guesses for a first verdict, labels that open on
/// what a can says, and mixes by volume.
const BUDGET: usize = 725_000;

/// Prints the size of each file of the page; fails if all together are over the budget.
pub(crate) fn report(dist: &Path) -> Result<()> {
    let total = print(dist)?;
    within_budget(total)
}

/// Prints the size of each file of the page, or of another folder, and gives that of all together, compressed: bytes.
pub(crate) fn print(dist: &Path) -> Result<usize> {
    let files = files(dist)?;
    let compressed: Vec<usize> = brotli::compressed(&files)?.iter().map(Vec::len).collect();
    let raw = files
        .iter()
        .map(|file| Ok(fs::metadata(file)?.len() as usize))
        .collect::<Result<Vec<usize>>>()?;
    let total: usize = compressed.iter().sum();
    let name = dist.file_name().unwrap_or_default().to_string_lossy();
    let mut table = Table::new(&[
        (&format!("{name}/"), Align::Left),
        ("bytes", Align::Right),
        ("brotli", Align::Right),
    ]);
    for ((file, raw), compressed) in files.iter().zip(&raw).zip(&compressed) {
        let name = file.strip_prefix(dist).unwrap_or(file);
        table.row([
            name.display().to_string(),
            raw.to_string(),
            compressed.to_string(),
        ]);
    }
    table.row([
        "together".into(),
        raw.iter().sum::<usize>().to_string(),
        total.to_string(),
    ]);
    print!("{table}");
    Ok(total)
}

fn within_budget(total: usize) -> Result<()> {
    ensure!(
        total <= BUDGET,
        "The page weighs {total} bytes compressed; the budget is {BUDGET}. Find what grew, or propose a new budget."
    );
    println!(
        "Within the budget of {BUDGET} bytes: {}% of it.",
        total * 100 / BUDGET
    );
    Ok(())
}

/// Every file in a folder and the folders below it, in the order of their names.
pub(crate) fn files(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    let entries = fs::read_dir(folder).with_context(|| format!("Can't read {}", folder.display()))?;
    for entry in entries {
        let path = entry?.path();
        if path.is_dir() {
            found.extend(files(&path)?);
        } else {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_byte_over_the_budget_fails() {
        assert!(within_budget(BUDGET).is_ok());
        let message = within_budget(BUDGET + 1).unwrap_err().to_string();
        assert!(
            message.starts_with(&format!("The page weighs {} bytes", BUDGET + 1)),
            "{message}"
        );
    }
}
