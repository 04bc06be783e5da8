//! The words of the command line. Each fault says what to type instead.

use std::fmt;

use anyhow::Result;

/// The command line makes no sense.
#[derive(Debug)]
pub struct UsageError(pub String);

impl fmt::Display for UsageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for UsageError {}

/// An error as a person reads it: what to do about it first, its cause behind it.
pub fn told(error: &anyhow::Error) -> String {
    let causes = error.chain().skip(1).map(|cause| format!("\n  Cause: {cause}"));
    format!("{error}{}", causes.collect::<String>())
}

/// The words that were not taken yet.
pub struct Words(Vec<String>);

impl Words {
    /// The words after the name of the program.
    pub fn of_command_line() -> Self {
        // A word that is no Unicode names no chore, and as a file name it only loses its odd characters.
        Words(
            std::env::args_os()
                .skip(1)
                .map(|word| word.to_string_lossy().into())
                .collect(),
        )
    }

    /// The words of a line, for tests.
    #[cfg(test)]
    pub fn of_line(line: &str) -> Self {
        Words(line.split_whitespace().map(String::from).collect())
    }

    /// Takes the first word.
    pub fn next_word(&mut self) -> Option<String> {
        (!self.0.is_empty()).then(|| self.0.remove(0))
    }

    /// Takes a flag wherever it stands, and tells whether it stood there.
    pub fn flag(&mut self, flag: &str) -> bool {
        let place = self.0.iter().position(|word| word == flag);
        place.is_some_and(|place| {
            self.0.remove(place);
            true
        })
    }

    /// Takes the word behind a flag wherever it stands.
    pub fn value(&mut self, flag: &str, example: &str) -> Result<Option<String>> {
        let Some(place) = self.0.iter().position(|word| word == flag) else {
            return Ok(None);
        };
        self.0.remove(place);
        if place < self.0.len() {
            Ok(Some(self.0.remove(place)))
        } else {
            Err(UsageError(format!("`{flag}` needs a word behind it. Type: {example}")).into())
        }
    }

    /// Takes the port number behind a flag.
    pub fn number(&mut self, flag: &str, example: &str) -> Result<Option<u16>> {
        self.value(flag, example)?
            .map(|word| {
                word.parse().map_err(|_| {
                    UsageError(format!(
                        "`{flag} {word}` is not a number from 0 to 65535. Type: {example}"
                    ))
                    .into()
                })
            })
            .transpose()
    }

    /// Takes the first word, which must not be missing.
    pub fn required(&mut self, what: &str, usage: &str) -> Result<String> {
        self.next_word()
            .ok_or_else(|| UsageError(format!("Name {what}. Type: {usage}")).into())
    }

    /// Fails if a word is left over.
    pub fn end(&self, usage: &str) -> Result<()> {
        match self.0.first() {
            None => Ok(()),
            Some(word) => Err(UsageError(format!("`{word}` is not understood here. Type: {usage}")).into()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(line: &str) -> Words {
        Words::of_line(line)
    }

    #[test]
    fn the_cause_stands_behind_what_to_do() {
        let error = anyhow::anyhow!("taken").context("Name another port.");
        assert_eq!(told(&error), "Name another port.\n  Cause: taken");
    }

    #[test]
    fn flags_may_stand_anywhere() {
        let mut line = words("serve-dist --port 0 dist --json");
        assert!(line.flag("--json"));
        assert!(!line.flag("--json"));
        assert_eq!(line.number("--port", "").unwrap(), Some(0));
        assert_eq!(line.next_word().as_deref(), Some("serve-dist"));
        assert_eq!(line.required("a folder", "").unwrap(), "dist");
        assert!(line.end("").is_ok());
    }

    #[test]
    fn faults_say_what_to_type() {
        let fault = |error: anyhow::Error| error.to_string();
        let example = "cargo xtask serve --port 8765";
        assert_eq!(
            fault(words("--port").number("--port", example).unwrap_err()),
            "`--port` needs a word behind it. Type: cargo xtask serve --port 8765"
        );
        assert_eq!(
            fault(words("--port 70000").number("--port", example).unwrap_err()),
            "`--port 70000` is not a number from 0 to 65535. Type: cargo xtask serve --port 8765"
        );
        assert_eq!(
            fault(
                words("")
                    .required("the save file", "cargo xtask takeoff FILE")
                    .unwrap_err()
            ),
            "Name the save file. Type: cargo xtask takeoff FILE"
        );
        assert_eq!(
            fault(words("now").end("cargo xtask setup").unwrap_err()),
            "`now` is not understood here. Type: cargo xtask setup"
        );
    }
}
