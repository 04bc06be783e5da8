//! The page.

fn main() {}
