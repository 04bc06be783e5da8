//! Checks of the whole against published values and outside tools.
