//! Lists of faults that are known and still to be mended. They may only become shorter.

/// The lines of a list. Empty lines, and those that begin with `#`, are for people.
pub(crate) fn lines(list: &str) -> impl Iterator<Item = &str> {
    list.lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
}

/// What is found and not on the list, and what is on the list and not found; nothing if the two agree. `what` says what is
/// wrong and what to do, `file` where the list is.
pub(super) fn faults(found: &[String], list: &str, what: &str, file: &str) -> String {
    let known: Vec<&str> = lines(list).collect();
    let listed = |head: String, lines: Vec<&str>| match lines.is_empty() {
        true => String::new(),
        false => format!("{head}:\n  {}\n", lines.join("\n  ")),
    };
    let new = found
        .iter()
        .map(String::as_str)
        .filter(|line| !known.contains(line))
        .collect();
    let gone = known
        .iter()
        .copied()
        .filter(|line| !found.iter().any(|found| found == line))
        .collect();
    format!(
        "{}{}",
        listed(what.to_owned(), new),
        listed(format!("Delete these lines from {file}. They're fixed"), gone)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_new_and_what_is_gone_are_both_told() {
        let list = "# Why.\nold\nmended\n";
        let found = ["old".to_owned(), "new".to_owned()];
        assert_eq!(
            faults(&found, list, "Mend this", "list.txt"),
            "Mend this:\n  new\nDelete these lines from list.txt. They're fixed:\n  mended\n"
        );
        assert_eq!(faults(&["old".into(), "mended".into()], list, "", ""), "");
    }
}
