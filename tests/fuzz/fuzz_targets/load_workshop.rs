//! The fuzz target of [`fuzz::load_workshop`]; without a fuzzing compiler it runs on the files that are named.
#![cfg_attr(fuzzing, no_main)]

#[cfg(fuzzing)]
libfuzzer_sys::fuzz_target!(|data: &[u8]| {
    fuzz::load_workshop(data);
});

#[cfg(not(fuzzing))]
fn main() -> std::io::Result<()> {
    for path in std::env::args().skip(1) {
        fuzz::load_workshop(&std::fs::read(path)?);
    }
    Ok(())
}
