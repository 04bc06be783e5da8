//! The fuzz target of [`fuzz::build_piece`]; without a fuzzing compiler it runs on the files that are named.
#![cfg_attr(fuzzing, no_main)]

#[cfg(fuzzing)]
libfuzzer_sys::fuzz_target!(|data: &[u8]| {
    fuzz::build_piece(data);
});

#[cfg(not(fuzzing))]
fn main() -> std::io::Result<()> {
    for path in std::env::args().skip(1) {
        fuzz::build_piece(&std::fs::read(path)?);
    }
    Ok(())
}
