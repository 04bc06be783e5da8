//! Tools that cargo builds from source, pinned, in `.tools/bin`.

use std::fs;

use anyhow::{Context, Result};

use crate::repository::Repository;
use crate::{command, pins};

struct Tool {
    package: &'static str,
    version: &'static str,
    programs: &'static [&'static str],
    options: &'static [&'static str],
    about: &'static str,
}

const TOOLS: [Tool; 2] = [
    Tool {
        package: "trunk",
        version: pins::TRUNK,
        programs: &["trunk"],
        // Without its check for newer versions: the version is pinned.
        options: &["--no-default-features", "--features", "rustls"],
        about: "bundles the page; about 3 minutes",
    },
    Tool {
        package: "wasm-bindgen-cli",
        version: pins::WASM_BINDGEN,
        programs: &["wasm-bindgen", "wasm-bindgen-test-runner"],
        options: &[],
        about: "joins wasm and browser; about 2 minutes",
    },
];

/// Installs what is missing or has another version.
pub(super) fn set_up(repository: &Repository) -> Result<()> {
    let recorded = fs::read_to_string(repository.at(".tools/.crates.toml")).unwrap_or_default();
    let missing: Vec<&Tool> = TOOLS
        .iter()
        .filter(|tool| !is_there(repository, &recorded, tool))
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let build = repository.at(".tools/build");
    for tool in missing {
        let Tool {
            package,
            version,
            about,
            ..
        } = tool;
        println!("Building {package} {version} into .tools ({about})");
        command::run(
            command::cargo()
                .args([
                    "install",
                    "--quiet",
                    "--locked",
                    "--force",
                    "--version",
                    version,
                    package,
                ])
                .args(tool.options)
                .arg("--root")
                .arg(repository.at(".tools"))
                // The tools run for seconds, so what optimising them costs never comes back.
                .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0")
                .env("CARGO_PROFILE_RELEASE_LTO", "off")
                .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
                .env("CARGO_TARGET_DIR", &build)
                .current_dir(repository.root()),
        )?;
    }
    if build.is_dir() {
        fs::remove_dir_all(&build).context("Can't delete .tools/build")?;
    }
    Ok(())
}

fn is_there(repository: &Repository, recorded: &str, tool: &Tool) -> bool {
    let entry = format!("\"{} {} ", tool.package, tool.version);
    recorded.contains(&entry)
        && tool.programs.iter().all(|program| {
            let file = format!(".tools/bin/{program}{}", std::env::consts::EXE_SUFFIX);
            repository.at(&file).is_file()
        })
}
