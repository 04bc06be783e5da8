//! Checks of the lints: `.clippy.toml`.

use crate::repository::Repository;

/// The functions of the standard library that say of themselves that their precision is not specified.
const NOT_EXACT: [&str; 26] = [
    "sin", "cos", "tan", "sin_cos", "asin", "acos", "atan", "atan2", "sinh", "cosh", "tanh", "asinh",
    "acosh", "atanh", "exp", "exp2", "exp_m1", "ln", "log", "log2", "log10", "ln_1p", "powf", "powi", "cbrt",
    "hypot",
];

fn missing(lints: &str) -> Vec<String> {
    let paths = ["f64", "f32"]
        .iter()
        .flat_map(|kind| NOT_EXACT.map(|name| format!("{kind}::{name}")));
    paths
        .filter(|path| !lints.contains(&format!("{{ path = \"{path}\", reason = ")))
        .collect()
}

#[test]
fn every_function_that_is_not_exact_is_disallowed() {
    let lints = Repository::find().unwrap().read(".clippy.toml").unwrap();
    assert_eq!(missing(&lints), [""; 0]);
    assert_eq!(missing(&lints.replace("f64::tanh", "f64::tan")), ["f64::tanh"]);
}
