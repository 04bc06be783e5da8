//! The fuzz target of [`fuzz::show_piece`]; without a fuzzing compiler it runs on the files that are named.
#![cfg_attr(fuzzing, no_main)]

#[cfg(fuzzing)]
libfuzzer_sys::fuzz_target!(|data: &[u8]| {
    fuzz::show_piece(data);
});

#[cfg(not(fuzzing))]
fn main() -> std::io::Result<()> {
    for path in std::env::args().skip(1) {
        fuzz::show_piece(&std::fs::read(path)?);
    }
    Ok(())
}
