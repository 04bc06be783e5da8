//! The parts of the compiler: the wasm target, the formatter, the lints.
//!
//! `rust-toolchain.toml` names them too, but where automatic installing is off they are not fetched by it.

use std::path::Path;
use std::process::Command;

use anyhow::{Result, bail};

use crate::command;
use crate::repository::program;

const TARGET: &str = "wasm32-unknown-unknown";

/// Installs what is missing.
pub(super) fn set_up() -> Result<()> {
    let sysroot = command::output(Command::new("rustc").args(["--print", "sysroot"]))?;
    let sysroot = Path::new(sysroot.trim());
    if !sysroot.join("lib/rustlib").join(TARGET).is_dir() {
        install(&["target", "add", TARGET])?;
    }
    for (component, file) in [("rustfmt", "cargo-fmt"), ("clippy", "cargo-clippy")] {
        let file = format!("{file}{}", std::env::consts::EXE_SUFFIX);
        if !sysroot.join("bin").join(file).is_file() {
            install(&["component", "add", component])?;
        }
    }
    Ok(())
}

fn install(words: &[&str]) -> Result<()> {
    let words_text = words.join(" ");
    if program("rustup").is_none() {
        bail!("Install rustup, then run `rustup {words_text}`. The compiler is missing a part.");
    }
    println!("Adding a compiler part (about 10 seconds): rustup {words_text}");
    command::run(Command::new("rustup").args(words))
}
