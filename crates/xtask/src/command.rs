//! Running other programs.

use std::ffi::OsStr;
use std::process::{Command, Output};

use anyhow::{Context, Result, ensure};

/// The cargo that runs this chore.
pub(crate) fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Runs a program to its end; it may print.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let status = command.status().with_context(|| not_started(command))?;
    ensure!(status.success(), "`{}` failed ({status})", words(command));
    Ok(())
}

/// What a program prints.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    Ok(String::from_utf8_lossy(&bytes(command)?).into())
}

/// What a program prints that is no text.
pub(crate) fn bytes(command: &mut Command) -> Result<Vec<u8>> {
    let Output {
        status,
        stdout,
        stderr,
    } = command.output().with_context(|| not_started(command))?;
    ensure!(
        status.success(),
        "`{}` failed ({status})\n{}",
        words(command),
        String::from_utf8_lossy(&stderr)
    );
    Ok(stdout)
}

fn not_started(command: &Command) -> String {
    format!("Couldn't start `{}`", words(command))
}

/// The command as one would type it, without the folder of the program.
fn words(command: &Command) -> String {
    let program = std::path::Path::new(command.get_program());
    let name = program.file_name().unwrap_or(command.get_program());
    std::iter::once(name)
        .chain(command.get_args())
        .map(OsStr::to_string_lossy)
        .collect::<Vec<_>>()
        .join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failure_names_the_command() {
        let message = output(cargo().arg("no-such-command")).unwrap_err().to_string();
        assert!(message.contains("no-such-command` failed"), "{message}");
        let message = run(&mut Command::new("no-such-program")).unwrap_err().to_string();
        assert_eq!(message, "Couldn't start `no-such-program`");
    }
}
