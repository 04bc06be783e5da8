//! Journeys in a real browser.
