//! How an error reads.

/// An error as a person reads it: what to do about it first, then its causes.
pub(crate) fn told(error: &anyhow::Error) -> String {
    let causes = error.chain().skip(1).map(|cause| format!("\n  Cause: {cause}"));
    format!("{error}{}", causes.collect::<String>())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cause_stands_behind_what_to_do() {
        let error = anyhow::anyhow!("taken").context("Name another port.");
        assert_eq!(told(&error), "Name another port.\n  Cause: taken");
    }
}
