//! Chores of the project.

fn main() {}
