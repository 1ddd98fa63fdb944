//! Journeys: what a person does from one end to the other, written once and played twice, on a phone-sized browser
//! against the harness and in the shell's real window.
//!
//! A journey knows the page as a person does, by roles and names; `page.rs` and `accessible.js` alone know how that is
//! found, `stage.rs` and its folder how the programs are started and killed.

mod crank;
mod failure;
mod page;
mod patience;
mod stage;
mod throttle;
mod vee_8;
mod worn_engine;

mod axe;
mod backup;
mod before_opening;
mod camera;
mod complaint;
mod crank_by_keyboard;
mod crank_by_micrometer;
mod crank_by_thumb;
mod customers_yes;
mod drawn_photo;
mod first_job;
mod found_again;
mod half_entered;
mod keyboard_only;
mod label;
mod look;
mod marks;
mod one_trip;
mod opened_files;
mod put_away;
mod refusals;
mod screen_lengths;
mod tap_counts;
mod taps;
mod transport;
mod turned;
mod walk;
mod web_page;
