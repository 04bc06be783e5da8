//! Starts the page.

fn main() {
    app::start("app");
}
